import { decidingFigure, winnerAt, type CompareFacts, type ComparedSheetFacts } from '../compare-facts.ts';
import type { Format } from '../format.ts';
import { winningRange } from './quote-figures.ts';

/** `1020 (M) × 720`: ISO 217 marks the side that runs with the fibres. */
export function comparedSize({ sheet, grain }: Pick<ComparedSheetFacts, 'sheet' | 'grain'>, format: Format): string {
  const mark = (axis: 'x' | 'y') => (grain === axis ? ' (M)' : '');
  return `${format.bareLength(sheet.width)}${mark('x')} × ${format.bareLength(sheet.height)}${mark('y')}`;
}

/** Issue code: colours or stages were not given. */
export const ROUTE_ASSUMED = 'compare-route-assumed';

/** Puts `word` behind that of colours and stages which nobody gave. */
export function routeWord(notes: CompareFacts['notes'], word: string): (what: 'colours' | 'stages') => string {
  return (what) => (notes.some(({ code, facts }) => code === ROUTE_ASSUMED && facts?.['what'] === what) ? word : '');
}

interface Won<Kind extends string> {
  readonly kind: Kind;
  readonly winner: ComparedSheetFacts;
}

interface Saving extends Won<'saves'> {
  readonly usual: ComparedSheetFacts;
  /** Less than the usual one, as a fraction and by the thousand. */
  readonly share: number;
  readonly perThousand: number;
}

interface Asked {
  /** The largest; undefined where none is asked and least board wins. */
  readonly quantity: number | undefined;
  /** In which the winner stays the same, or takes turns with others. */
  readonly range: { readonly from: number; readonly to: number | undefined; readonly turns: readonly ComparedSheetFacts[] } | undefined;
}

/** What is to be said of the sheet that wins. */
export type Verdict = Asked & ({ readonly kind: 'none' } | Won<'only'> | Won<'usual'> | Won<'usual-unknown'> | Saving);

export function verdictOf(facts: CompareFacts): Verdict {
  const { sheets, quantities, leastBoard } = facts;
  const quantity = quantities.at(-1);
  const best = quantity === undefined ? leastBoard : winnerAt(facts, quantity);
  if (best === undefined) return { kind: 'none', quantity, range: undefined };
  const range = quantity === undefined ? undefined : rangeAt(facts, quantity, best);
  const [usual, winner] = [sheets[0]!, sheets[best]!];
  if (best === 0) return { kind: sheets.length === 1 ? 'only' : 'usual', winner, quantity, range };
  const [from, to] = quantity === undefined ? [usual.boardM2PerThousand, winner.boardM2PerThousand] : [0, best].map((index) => decidingFigure(facts, index, quantities.indexOf(quantity)));
  if (from == null || to == null) return { kind: 'usual-unknown', winner, quantity, range };
  return { kind: 'saves', winner, usual, share: 1 - to / from, perThousand: from - to, quantity, range };
}

function rangeAt({ sheets, winners }: CompareFacts, quantity: number, best: number): Asked['range'] {
  const index = winners.findLastIndex(({ fromQuantity }) => fromQuantity <= quantity);
  return { ...winningRange(winners, index), turns: (winners[index]!.turns ?? []).filter((one) => one !== best).map((one) => sheets[one]!) };
}

/** What a sheet is beside the usual one, as people say it on the phone. */
export type Relation = 'die' | 'larger' | 'smaller' | 'turned' | 'other';

/** Areas that differ by less than this share are alike. */
const ALIKE = 0.005;

export function relationOf(winner: ComparedSheetFacts, usual: ComparedSheetFacts): Relation {
  if (winner.die) return 'die';
  const [area, before] = [winner, usual].map(({ sheet }) => sheet.width * sheet.height) as [number, number];
  if (Math.abs(area / before - 1) > ALIKE) return area > before ? 'larger' : 'smaller';
  return winner.sheet.width === usual.sheet.width && winner.grain !== usual.grain ? 'turned' : 'other';
}
