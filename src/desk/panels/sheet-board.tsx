import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { MM_PER_INCH } from '../../base/units.ts';
import { winnerAt } from '../../render/compare-facts.ts';
import { compareAllSheets, compareWithGap, gapOnDesk, takeSheet, termsOnDesk, type Taken } from '../comparing.ts';
import type { Compared } from '../desk.ts';
import { useDesk } from '../desk-context.ts';
import type { CompareAnswer, QuoteAsk } from '../engine/protocol.ts';
import { useWords, type Words } from '../words/words.ts';
import { download } from '../files/files.ts';
import { BoardChart } from './board-chart.tsx';
import { inOrder, ORIGINS, type Filter, type Order } from './board-order.ts';
import { SheetCard } from './sheet-card.tsx';
import { ChoiceField } from './fields.tsx';
import { sameButSheet } from '../job/inputs.ts';
import { nameOfRecord, sheetLists } from '../job/records.ts';
import { takeFile } from '../taking.ts';
import { FilePicker } from './file-picker.tsx';
import { IssueList } from './issue-list.tsx';
import { SheetVerdict } from './sheet-verdict.tsx';
import { OwnRecords } from './own-records.tsx';
import { SliderField } from './slider-field.tsx';
import { StateMark } from './state-mark.tsx';
import { useAnswer } from './use-answer.ts';

/** All sheets that could be bought, as small pictures with ups, board and money. */
export function SheetBoard() {
  const { desk } = useDesk();
  const { say } = useWords();
  const comparison = desk.comparison.value;
  const ready = desk.inputs.value !== undefined;
  const canCount = !ready || termsOnDesk(desk) !== undefined;
  const board = useRef<HTMLElement>(null);
  const isAsked = useRef(false);
  const compare = () => {
    isAsked.current = true;
    void compareAllSheets(desk);
  };
  // What is asked for comes below the fold of a small window: whoever asks is taken there at once, never when it comes.
  useLayoutEffect(() => {
    if (isAsked.current && comparison.kind === 'waiting') board.current?.scrollIntoView({ block: 'start' });
    isAsked.current = false;
  }, [comparison.kind]);
  return (
    <section ref={board} class={`block sheet-board ${SHOWN_AS[comparison.kind] ?? 'on-screen'}`} aria-label={say('all-sheets')}>
      <h3>{say('all-sheets')}</h3>
      <p class="hint">{say('hint-all-sheets')}</p>
      <SheetLists />
      <div class="buttons">
        <button type="button" disabled={!ready || !canCount || comparison.kind === 'waiting'} onClick={compare}>{say('compare-sheets')}</button>
        {comparison.kind === 'waiting' && <button type="button" onClick={() => desk.helper.tell('stop')}>{say('stop')}</button>}
      </div>
      {!canCount && <p class="warning">{say('money-holds-up')} <button type="button" class="small" onClick={() => (desk.panel.value = 'money')}>{say('panel-money')}</button></p>}
      {comparison.kind === 'waiting' && <p role="status">{say('comparing')}</p>}
      {comparison.kind === 'issues' && <IssueList issues={comparison.issues} />}
      {comparison.kind === 'answer' && comparison.inputs !== desk.inputs.value && !sameButSheet(comparison.inputs, desk.inputs.value) && <p class="warning">{say('comparison-out-of-date')}</p>}
      {comparison.kind === 'answer' && comparison.quote && <Board answer={comparison.answer} quote={comparison.quote} />}
    </section>
  );
}

/** On paper stands what has an answer; while it is awaited there is room for it already. */
const SHOWN_AS: Readonly<Partial<Record<Compared['kind'], string>>> = { answer: '', waiting: 'on-screen awaited' };

/** Which lists are compared; one's own can be chosen and removed. */
function SheetLists() {
  const { desk } = useDesk();
  const { say } = useWords();
  const lists = sheetLists(desk.records.value);
  const isOwn = lists.some(({ own }) => own !== undefined);
  return (
    <>
      <p class="hint holds">{isOwn ? say('lists-own') : say('lists-invented', { list: lists.map(nameOfRecord).join(', ') })}</p>
      <OwnRecords kinds={['sheets']} />
      <FilePicker accept=".json,.csv" label={say('choose-list')} hint={say('hint-list')} onFile={(name, content) => void takeFile(desk, name, content)} />
    </>
  );
}

const LEAST_QUANTITY = 500;
const MOST_QUANTITY = 1_000_000;
const FIRST_QUANTITY = 20_000;

/** Sliders move the winner live: quantity and price are only counted anew, another gap is laid out anew. */
function Board({ answer, quote }: { readonly answer: CompareAnswer; readonly quote: QuoteAsk }) {
  const { desk } = useDesk();
  const words = useWords();
  const { say, format } = words;
  const [quantity, setQuantity] = useState(FIRST_QUANTITY);
  const [price, setPrice] = useState<number>();
  const [wantedOrder, setOrder] = useState<Order>('cost');
  const [grain, setGrain] = useState<Filter['grain']>('');
  const [press, setPress] = useState('');
  const [list, setList] = useState('');
  const [origin, setOrigin] = useState<Filter['origin']>('');
  // While a money field cannot be read, what was compared stands.
  const terms = termsOnDesk(desk) ?? quote;
  const asked = useMemo(() => withTerms(terms, quantity, price), [JSON.stringify(terms), quantity, price]);
  const recost = { name: answer.facts.name, comparison: answer.comparison, notes: answer.facts.notes, quote: asked };
  const recounted = useAnswer(async () => ({ of: answer, ...(await desk.engine.ask('recost', recost)) }), [answer, asked, format]);
  // What was counted for the comparison before is of other sheets.
  const { facts, brief, verdict } = recounted.kind === 'answer' && recounted.answer.of === answer ? recounted.answer : { ...answer, brief: '', verdict: '' };
  const { currency } = facts;
  // Nothing can be put in order by a cost that is open.
  const order = facts.measure === 'board' && wantedOrder === 'cost' ? 'board' : wantedOrder;
  const { presses } = desk.records.value;
  const { lists } = answer;
  const shown = inOrder(facts, order, { grain, press: presses.find(({ id }) => id === press), listed: lists.find(({ id }) => id === list)?.sheets, origin });
  const winner = winnerAt(facts, facts.quantities[0]!);
  return (
    <>
      <SheetVerdict brief={brief} verdict={verdict} />
      {facts.measure === 'board' && <p class="hint holds">{say('compare-board-only')}</p>}
      <div class="row">
        <GapSlider />
        <SliderField label={say('at-quantity')} value={quantity} least={LEAST_QUANTITY} most={MOST_QUANTITY} text={format.number(quantity, 0)} onInput={setQuantity} />
        <SliderField label={say('at-price', { currency })} value={price ?? USUAL_PRICE} least={200} most={4000} text={price === undefined ? say('from-board') : format.number(price, 0)} onInput={setPrice} />
        <ChoiceField label={say('sort-by')} value={order} onChange={setOrder} options={[...(facts.measure === 'money' ? [['cost', say('sort-cost')] as const] : []), ['board', say('sort-board')], ['ups', say('sort-ups')], ['size', say('sort-size')]]} />
        <ChoiceField label={say('filter-grain')} value={grain} onChange={setGrain} options={[['', say('filter-all')], ['x', say('grain-x')], ['y', say('grain-y')]]} />
        <ChoiceField label={say('filter-origin')} value={origin} onChange={setOrigin} options={[['', say('filter-all')], ...ORIGINS.map((kind) => [kind, say(`origin-${kind}`)] as const)]} />
        <ChoiceField label={say('filter-press')} value={press} onChange={setPress} options={[['', say('filter-all')] as const, ...presses.map((one) => [one.id, nameOfRecord(one)] as const)]} />
        {lists.length > 1 && <ChoiceField label={say('filter-list')} value={list} onChange={setList} options={[['', say('filter-all')] as const, ...lists.map(({ id, name }) => [id, name] as const)]} />}
      </div>
      <GapOnItsWay />
      {shown.length === 0 && <p class="empty" role="status">{say('no-sheet-shown')}</p>}
      <ol class={desk.comparison.value.next ? 'sheets outdated' : 'sheets'}>
        {shown.map((index) => (
          <SheetCard key={index} facts={facts} index={index} isWinner={index === winner} onTake={() => {
            desk.notice.value = takenWords(takeSheet(desk, answer, index), words);
          }} />
        ))}
      </ol>
      <BoardChart facts={facts} />
      <div class="buttons">
        <button type="button" onClick={() => void desk.engine.ask('comparePage', recost).then((page) => download('comparison.html', page))}>{say('save-comparison')}</button>
      </div>
    </>
  );
}

/** What a sheet brought with it onto the desk. */
function takenWords({ sheet, gap, bleed }: Taken, { say, format }: Words): string {
  const size = format.size(sheet.width, sheet.height);
  if (gap === undefined) return say('sheet-taken', { size });
  return say(bleed === undefined ? 'sheet-taken-with-gap' : 'sheet-taken-with-gap-and-bleed', { size, gap: format.length(gap), ...(bleed !== undefined && { bleed: format.length(bleed) }) });
}

const MOST_GAP = 20;
/** Round figures in either unit. */
const GAP_STEP_MM = { mm: 0.5, in: 0.02 * MM_PER_INCH } as const;
/** A gap is laid out when the slider has stood still for so long, milliseconds. */
const STANDS_STILL_MS = 350;

function GapSlider() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  const { gap, next } = desk.comparison.value;
  const { bleed, bleedMeeting } = desk.job.value.limits;
  // A bleed that is typed wants its room on both sides; one that is not follows the gap.
  const least = bleed.trim() === '' || bleedMeeting === 'cut' || desk.frame.value.kind !== 'answer' ? 0 : 2 * desk.frame.value.answer.bleed;
  const value = next?.gap ?? gap ?? gapOnDesk(desk) ?? least;
  const move = (wanted: number) => {
    desk.comparison.value = { ...desk.comparison.value, next: { gap: wanted } };
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void compareWithGap(desk, wanted), STANDS_STILL_MS);
  };
  return <SliderField label={say('at-gap')} value={value} least={Math.min(least, value)} most={Math.max(MOST_GAP, value)} by={GAP_STEP_MM[format.unit]} text={format.length(value)} onInput={move} />;
}

/** The board shows the gap before until the new one is laid out, and says so. */
function GapOnItsWay() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { gap, next } = desk.comparison.value;
  if (!next) return null;
  return (
    <div class="warning" role="status">
      <p><StateMark state="out of date" /> {say(next.issues ? 'gap-not-possible' : 'gap-on-its-way', { gap: format.length(next.gap), before: format.length(gap ?? 0) })}</p>
      {next.issues && <IssueList issues={next.issues} />}
    </div>
  );
}

/** Where the slider stands before anybody moved it, per tonne. */
const USUAL_PRICE = 1000;

function withTerms({ job, ...terms }: QuoteAsk, quantity: number, price: number | undefined): QuoteAsk {
  return { ...terms, job: { ...job, quantities: [quantity], ...(price !== undefined && { boardPricePerTonne: price }) } };
}
