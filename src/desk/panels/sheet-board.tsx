import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { MM_PER_INCH } from '../../base/units.ts';
import { winnerAt, type CompareFacts, type ComparedSheetFacts } from '../../render/compare-facts.ts';
import { compareAllSheets, compareWithGap, gapOnDesk, takeSheet, termsOnDesk } from '../comparing.ts';
import { useDesk } from '../desk-context.ts';
import type { CompareAnswer, QuoteAsk } from '../engine/protocol.ts';
import { Picture } from '../picture/picture.tsx';
import { useWords } from '../words/words.ts';
import { ChoiceField } from './fields.tsx';
import { IssueList } from './issue-list.tsx';
import { SheetVerdict } from './sheet-verdict.tsx';
import { SliderField } from './slider-field.tsx';
import { StateMark } from './state-mark.tsx';
import { useAnswer } from './use-answer.ts';

/** All sheets that could be bought, as small pictures with ups, board and money. */
export function SheetBoard() {
  const { desk } = useDesk();
  const { say } = useWords();
  const comparison = desk.comparison.value;
  const ready = desk.inputs.value !== undefined;
  return (
    <section class={comparison.kind === 'answer' ? 'block sheet-board' : 'block sheet-board on-screen'} aria-label={say('all-sheets')}>
      <h3>{say('all-sheets')}</h3>
      <p class="hint">{say('hint-all-sheets')}</p>
      <div class="buttons">
        <button type="button" disabled={!ready || comparison.kind === 'waiting'} onClick={() => void compareAllSheets(desk)}>{say('compare-sheets')}</button>
        {comparison.kind === 'waiting' && <button type="button" onClick={() => desk.helper.tell('stop')}>{say('stop')}</button>}
      </div>
      {comparison.kind === 'waiting' && <p role="status">{say('comparing')}</p>}
      {comparison.kind === 'issues' && <IssueList issues={comparison.issues} />}
      {comparison.kind === 'answer' && comparison.inputs !== desk.inputs.value && !sameButSheet(comparison.inputs, desk.inputs.value) && <p class="warning">{say('comparison-out-of-date')}</p>}
      {comparison.kind === 'answer' && comparison.quote && <Board answer={comparison.answer} quote={comparison.quote} />}
    </section>
  );
}

/** Inputs that differ in the sheet alone: the comparison is about every sheet. */
function sameButSheet(before: string | undefined, now: string | undefined): boolean {
  const without = (inputs: string | undefined) => {
    const [fingerprint, scale, options, drawnFrom, laying] = JSON.parse(inputs ?? '[]') as [unknown, unknown, unknown, unknown, object?];
    return JSON.stringify([fingerprint, scale, options, drawnFrom, { ...laying, sheet: undefined, sheetGrain: undefined }]);
  };
  return without(before) === without(now);
}

type Order = 'cost' | 'board' | 'ups' | 'size';
type Grain = '' | 'x' | 'y';
/** How sheets are bought. */
const ORIGINS = ['stock', 'parent', 'reel', 'made-to-order'] as const;
type Origin = '' | (typeof ORIGINS)[number];

function isWanted({ grain, origin }: ComparedSheetFacts, wantedGrain: Grain, wantedOrigin: Origin): boolean {
  return (wantedGrain === '' || grain === wantedGrain) && (wantedOrigin === '' || origin.kind === wantedOrigin);
}

const LEAST_QUANTITY = 500;
const MOST_QUANTITY = 1_000_000;
const FIRST_QUANTITY = 20_000;

/** Sliders move the winner live: quantity and price are only counted anew, another gap is laid out anew. */
function Board({ answer, quote }: { readonly answer: CompareAnswer; readonly quote: QuoteAsk }) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const [quantity, setQuantity] = useState(FIRST_QUANTITY);
  const [price, setPrice] = useState<number>();
  const [order, setOrder] = useState<Order>('cost');
  const [grain, setGrain] = useState<Grain>('');
  const [origin, setOrigin] = useState<Origin>('');
  // While a money field cannot be read, what was compared stands.
  const terms = termsOnDesk(desk) ?? quote;
  const asked = useMemo(() => withTerms(terms, quantity, price), [JSON.stringify(terms), quantity, price]);
  const recounted = useAnswer(async () => ({ of: answer, ...(await desk.engine.ask('recost', { name: answer.facts.name, comparison: answer.comparison, quote: asked })) }), [answer, asked, format]);
  // What was counted for the comparison before is of other sheets.
  const { facts, brief, verdict } = recounted.kind === 'answer' && recounted.answer.of === answer ? recounted.answer : { ...answer, brief: '', verdict: '' };
  const { currency } = facts;
  const shown = [...facts.sheets.keys()].filter((index) => isWanted(facts.sheets[index]!, grain, origin)).toSorted(comparing(facts, order));
  const winner = winnerAt(facts, facts.quantities[0]!);
  return (
    <>
      <SheetVerdict brief={brief} verdict={verdict} />
      {facts.measure === 'board' && <p class="hint">{say('compare-board-only')}</p>}
      <div class="row">
        <GapSlider />
        <SliderField label={say('at-quantity')} value={quantity} least={LEAST_QUANTITY} most={MOST_QUANTITY} text={format.number(quantity, 0)} onInput={setQuantity} />
        <SliderField label={say('at-price', { currency })} value={price ?? USUAL_PRICE} least={200} most={4000} text={price === undefined ? say('from-board') : format.number(price, 0)} onInput={setPrice} />
        <ChoiceField label={say('sort-by')} value={order} onChange={setOrder} options={[['cost', say('sort-cost')], ['board', say('sort-board')], ['ups', say('sort-ups')], ['size', say('sort-size')]]} />
        <ChoiceField label={say('filter-grain')} value={grain} onChange={setGrain} options={[['', say('filter-all')], ['x', say('grain-x')], ['y', say('grain-y')]]} />
        <ChoiceField label={say('filter-origin')} value={origin} onChange={setOrigin} options={[['', say('filter-all')], ...ORIGINS.map((kind) => [kind, say(`origin-${kind}`)] as const)]} />
      </div>
      <GapOnItsWay />
      <ol class={desk.comparison.value.next ? 'sheets outdated' : 'sheets'}>
        {shown.map((index) => (
          <SheetCard key={index} facts={facts} index={index} isWinner={index === winner} onTake={() => {
            takeSheet(desk, answer, index);
            desk.notice.value = say('sheet-taken', { size: format.size(facts.sheets[index]!.sheet.width, facts.sheets[index]!.sheet.height) });
          }} />
        ))}
      </ol>
    </>
  );
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

function withTerms({ job, inventedRates }: QuoteAsk, quantity: number, price: number | undefined): QuoteAsk {
  return { inventedRates, job: { ...job, quantities: [quantity], ...(price !== undefined && { boardPricePerTonne: price }) } };
}

function comparing({ sheets }: CompareFacts, order: Order): (a: number, b: number) => number {
  const figure: Readonly<Record<Order, (sheet: ComparedSheetFacts) => number>> = {
    cost: (sheet) => sheet.costPerThousand[0] ?? sheet.boardM2PerThousand * 1e6,
    board: (sheet) => sheet.boardM2PerThousand,
    ups: (sheet) => -sheet.ups,
    size: ({ sheet }) => sheet.width * sheet.height,
  };
  return (a, b) => figure[order](sheets[a]!) - figure[order](sheets[b]!) || a - b;
}

interface CardProps {
  readonly facts: CompareFacts;
  readonly index: number;
  readonly isWinner: boolean;
  readonly onTake: () => void;
}

function SheetCard({ facts, index, isWinner, onTake }: CardProps) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { sheet, ups, boardM2PerThousand, costPerThousand, layout, upperBound, grain, origin, fromCartons } = facts.sheets[index]!;
  const picture = useAnswer(() => desk.engine.ask('picture', { file: layout, grain, small: true }), [layout, format]);
  const size = format.size(sheet.width, sheet.height);
  const cost = costPerThousand[0];
  return (
    <li class={isWinner ? 'card chosen' : 'card'}>
      {picture.kind === 'answer' && <Picture still scene={picture.answer} name={`compared${index}`} label={say('picture-of-layout', { ups, size })} />}
      <p class="card-ups">{say('ups', { ups })}</p>
      <p>{size}</p>
      {grain && <p class="card-facts">{say('filter-grain')}: {say(`grain-${grain}`)}</p>}
      <p class="card-facts">{say('at-most', { limit: upperBound })}</p>
      <p class="card-facts">{say(`origin-${origin.kind}`)}{fromCartons !== undefined && fromCartons > 0 && `, ${say('from-cartons', { count: format.number(fromCartons, 0) })}`}</p>
      <p class="card-facts">{say('board-per-thousand', { area: format.area(boardM2PerThousand * 1e6) })}</p>
      <p class="card-facts">{cost === null || cost === undefined ? say('cost-open') : say('cost-per-thousand', { cost: format.money(cost, facts.currency) })}</p>
      {isWinner && <p class="state">✓ {say('winner-here')}</p>}
      {index === 0 ? <p class="card-facts">{say('the-usual-sheet')}</p> : <button type="button" class="small" onClick={onTake} aria-label={`${say('take-sheet')}: ${size}`}>{say('take-sheet')}</button>}
    </li>
  );
}
