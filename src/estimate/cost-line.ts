/** Something that can be bought in any quantity, with what it costs: so much each, with stairs of whole sheets. */
export interface Priced {
  /** Never falls as the quantity rises. Undefined where so few, or so many, cannot be had. */
  readonly costAt: (quantity: number) => number | undefined;
  /** Cartons a sheet: one more sheet is one more step of the cost. */
  readonly ups: number;
}

/** A cost as a straight line with stairs: it stays within `spread` of `fixed + each × quantity`, from `from` to `to`. */
export interface CostLine {
  readonly from: number;
  readonly to: number;
  readonly fixed: number;
  readonly each: number;
  readonly spread: number;
}

/** Quantities looked at for where a thing can be had grow by this factor. */
const GROWTH = 1.15;
/** Stages that round up to whole sheets: what is cut, and four that lose some. */
const ROUNDED_SHEETS = 5;

/** Undefined for what cannot be had at any quantity looked at. */
export function costLine(priced: Priced, most: number): CostLine | undefined {
  const range = rangeOf(priced, most);
  if (!range) return undefined;
  const { from, to } = range;
  const low = Math.max(from, Math.floor(to / 2));
  const [atLow, atHigh] = [priced.costAt(low)!, priced.costAt(to)!];
  const each = to > low ? (atHigh - atLow) / (to - low) : 0;
  // Two points of a line with stairs: at its other end the line may be out by the stairs of both.
  return { from, to, fixed: atHigh - each * to, each, spread: 2 * ROUNDED_SHEETS * Math.abs(each) * priced.ups };
}

/** From the first to the last quantity at which it can be had. */
function rangeOf({ costAt }: Priced, most: number): { from: number; to: number } | undefined {
  const looked = growing(most);
  const had = looked.map((quantity) => costAt(quantity) !== undefined);
  const [first, last] = [had.indexOf(true), had.lastIndexOf(true)];
  if (first === -1) return undefined;
  const isHad = (quantity: number) => costAt(quantity) !== undefined;
  return {
    from: first === 0 ? looked[0]! : between(looked[first - 1]!, looked[first]!, isHad),
    to: last === looked.length - 1 ? most : between(looked[last]!, looked[last + 1]!, (quantity) => !isHad(quantity)) - 1,
  };
}

/** From 1 to `most`. */
function growing(most: number): number[] {
  const quantities = [1];
  while (quantities.at(-1)! < most) quantities.push(Math.min(most, Math.max(quantities.at(-1)! + 1, Math.floor(quantities.at(-1)! * GROWTH))));
  return quantities;
}

/** The first quantity above `low` at which it holds; it holds at `high`, not at `low`. */
function between(low: number, high: number, holds: (quantity: number) => boolean): number {
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Who may cost least somewhere in it; everybody else costs more throughout. */
  readonly rivals: readonly number[];
}

/** Who may cost least, by quantity, as far as the lines tell: stretches without gap from 1 to `most`; those in which nothing can be had are left out. */
export function rivalsByQuantity(lines: readonly (CostLine | undefined)[], most: number): Stretch[] {
  const known = lines.flatMap((line, index) => (line ? [{ ...line, index }] : []));
  const starts = known.flatMap((one) => [one.from, one.to + 1, ...known.flatMap((other) => beatenFrom(one, other))]);
  const edges = [...new Set([1, ...starts])].filter((edge) => edge >= 1 && edge <= most).toSorted((a, b) => a - b);
  const stretches = edges.map((from, i): Stretch => {
    const to = (edges[i + 1] ?? most + 1) - 1;
    const isBeaten = (one: (typeof known)[number]) => known.some((other) => other !== one && [from, to].every((quantity) => surelyLess(other, one, quantity)));
    const there = known.filter((one) => one.from <= from && one.to >= to);
    return { from, to, rivals: there.filter((one) => !isBeaten(one)).map(({ index }) => index) };
  });
  return stretches.filter(({ rivals }) => rivals.length > 0).reduce<Stretch[]>((joined, stretch) => {
    const last = joined.at(-1);
    const goesOn = last?.to === stretch.from - 1 && last.rivals.join() === stretch.rivals.join();
    return goesOn ? [...joined.slice(0, -1), { ...last, to: stretch.to }] : [...joined, stretch];
  }, []);
}

function surelyLess(less: CostLine, more: CostLine, quantity: number): boolean {
  return less.from <= quantity && less.to >= quantity && more.fixed - less.fixed + (more.each - less.each) * quantity > more.spread + less.spread;
}

/** Whole quantities on both sides of where two lines are apart by their spreads: there one begins, or ends, to be beaten for sure. */
function beatenFrom(one: CostLine, other: CostLine): number[] {
  const slope = one.each - other.each;
  const at = Math.floor((one.spread + other.spread - (one.fixed - other.fixed)) / slope);
  return Number.isFinite(at) ? [at, at + 1] : [];
}
