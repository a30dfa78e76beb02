import { winnerAt, type CompareFacts, type ComparedSheetFacts } from '../compare-facts.ts';
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
  /** In which the winner stays the same. */
  readonly range: { readonly from: number; readonly to: number | undefined } | undefined;
}

/** What is to be said of the sheet that wins. */
export type Verdict = Asked & ({ readonly kind: 'none' } | Won<'only'> | Won<'usual'> | Won<'usual-unknown'> | Saving);

export function verdictOf(facts: CompareFacts): Verdict {
  const { sheets, winners, quantities, leastBoard, measure } = facts;
  const quantity = quantities.at(-1);
  const best = quantity === undefined ? leastBoard : winnerAt(facts, quantity);
  if (best === undefined) return { kind: 'none', quantity, range: undefined };
  const at = quantity === undefined ? -1 : winners.findLastIndex(({ fromQuantity }) => fromQuantity <= quantity);
  // Where two sheets take turns, no range can be named for the one that wins just here.
  const range = winners[at]?.candidate === best ? winningRange(winners, at) : undefined;
  const [usual, winner] = [sheets[0]!, sheets[best]!];
  if (best === 0) return { kind: sheets.length === 1 ? 'only' : 'usual', winner, quantity, range };
  const figures = figuresOf(facts, quantity, measure);
  const [from, to] = [figures(usual), figures(winner)];
  if (from === null || to === null) return { kind: 'usual-unknown', winner, quantity, range };
  return { kind: 'saves', winner, usual, share: 1 - to / from, perThousand: from - to, quantity, range };
}

/** Cost or board per thousand at the quantity; board with nothing lost where no quantity is asked. */
function figuresOf({ quantities }: CompareFacts, quantity: number | undefined, measure: CompareFacts['measure']): (sheet: ComparedSheetFacts) => number | null {
  if (quantity === undefined) return ({ boardM2PerThousand }) => boardM2PerThousand;
  const at = quantities.indexOf(quantity);
  return measure === 'money' ? ({ costPerThousand }) => costPerThousand[at]! : ({ boardM2WithWaste }) => boardM2WithWaste[at]!;
}
