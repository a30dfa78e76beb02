import { useEffect, useMemo } from 'preact/hooks';
import { DeskContext, type DeskParts } from './desk-context.ts';
import { Head } from './head/head.tsx';
import { listenToDrops } from './head/drops.ts';
import { listenToKeys } from './head/keys.ts';
import { DrawingPanel } from './panels/drawing-panel.tsx';
import { NotTaken } from './panels/drawing-notes.tsx';
import { HandoverPanel } from './panels/handover-panel.tsx';
import { LayoutsPanel } from './panels/layouts-panel.tsx';
import { LimitsPanel } from './panels/limits-panel.tsx';
import { MoneyPanel } from './panels/money-panel.tsx';
import { OtherDrawing } from './panels/other-drawing.tsx';
import { OutOfDate } from './panels/out-of-date.tsx';
import { PanelHead } from './panels/panel-head.tsx';
import { SheetPanel } from './panels/sheet-panel.tsx';
import { WhyPanel } from './panels/why-panel.tsx';
import { Notice } from './head/notice.tsx';
import { SilentThreads } from './head/silent-threads.tsx';
import { CautionOnPaper, SheetOnPaper } from './panels/paper.tsx';
import { Ticket } from './head/ticket.tsx';
import { takeFile } from './taking.ts';
import { wordsIn, WordsContext } from './words/words.ts';
import type { Panel } from './desk.ts';

const BODIES: Readonly<Record<Panel, () => preact.JSX.Element>> = {
  drawing: DrawingPanel,
  sheet: SheetPanel,
  limits: LimitsPanel,
  layouts: LayoutsPanel,
  why: WhyPanel,
  money: MoneyPanel,
  handover: HandoverPanel,
};

/** Panels that show or use the chosen layout. */
const JUDGED: ReadonlySet<Panel> = new Set(['layouts', 'why', 'money', 'handover']);

export function App({ parts }: { readonly parts: DeskParts }) {
  const { desk } = parts;
  const locale = desk.locale.value;
  const unit = desk.unit.value;
  const words = useMemo(() => wordsIn(locale, unit), [locale, unit]);
  const panel = desk.panel.value;
  const Body = BODIES[panel];
  useEffect(() => {
    document.documentElement.lang = locale;
  }, [locale]);
  useEffect(openAtTop, [panel]);
  useEffect(() => listenToKeys(parts), [parts]);
  useEffect(() => listenToDrops((name, content) => void takeFile(desk, name, content)), [desk]);
  return (
    <DeskContext.Provider value={parts}>
      <WordsContext.Provider value={words}>
        <Head />
        <SilentThreads />
        <div class="desk">
          <Ticket />
          <main id="panel" tabIndex={-1}>
            <PanelHead />
            {JUDGED.has(panel) && <OtherDrawing />}
            <NotTaken />
            <OutOfDate />
            <SheetOnPaper />
            <Body />
            <CautionOnPaper />
          </main>
        </div>
        <Notice />
      </WordsContext.Provider>
    </DeskContext.Provider>
  );
}

/** Whatever was looked at before, a panel begins with its title: below the ticket where the window is narrow, else at the very top. */
function openAtTop(): void {
  const top = document.getElementById('panel')?.offsetTop ?? 0;
  scrollTo(0, top < innerHeight / 2 ? 0 : top);
}
