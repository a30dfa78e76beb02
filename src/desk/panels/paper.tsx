import { useDesk } from '../desk-context.ts';
import type { Panel } from '../desk.ts';
import { claimOf, upsOf } from '../job/layouts.ts';
import { LayoutPicture } from '../picture/layout-picture.tsx';
import { useWords } from '../words/words.ts';

/** Panels whose figures are of the layout, which is drawn with them on paper; the others bring a picture of their own. */
const OF_LAYOUT: readonly Panel[] = ['layouts', 'money'];
/** These say the caution on the screen too. */
const CAUTIOUS: readonly Panel[] = ['why', 'handover'];

/** What only the printed panel shows: the sheet, with what is known of it. */
export function SheetOnPaper() {
  const { desk } = useDesk();
  const { say, format, foundBy } = useWords();
  const chosen = desk.chosen.value;
  if (!chosen || !OF_LAYOUT.includes(desk.panel.value) || desk.face.value !== 'layouts') return null;
  const { sheet } = chosen.file;
  const claim = claimOf(chosen);
  return (
    <section class="on-paper sheet-on-paper">
      <LayoutPicture layout={chosen} name="paper" />
      <p class="under">
        {[say('ups', { ups: upsOf(chosen) }), claim && say(claim.word, claim.facts), say('found-by', { source: foundBy(chosen) }), format.size(sheet.width, sheet.height)].filter(Boolean).join(', ')}
      </p>
    </section>
  );
}

export function CautionOnPaper() {
  const { desk } = useDesk();
  const { say } = useWords();
  return CAUTIOUS.includes(desk.panel.value) ? null : <p class="caution on-paper">{say('caution')}</p>;
}
