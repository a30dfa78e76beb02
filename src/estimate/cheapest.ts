import { costLine, rivalsByQuantity, type Priced, type Stretch } from './cost-line.ts';

/** From a quantity on until the next winner. */
export interface Winner {
  readonly fromQuantity: number;
  /** Index into what was compared. Costs least at every quantity, unless others take turns with it. */
  readonly candidate: number;
  /** All that cost least somewhere here, sheet by sheet. Absent where one costs least throughout. */
  readonly turns?: readonly number[];
}

/** Blocks looked into in a stretch in which lines alone do not tell who wins. */
const MOST_HALVED = 8000;
/** A run counts by itself where it is so long, or so long a share of where it begins; shorter ones are told as turns. */
const LEAST_RUN = 200;
const LEAST_SHARE = 0.1;

/**
 * Which of several costs least, by quantity up to `most`. Whole sheets are bought, so the cost has stairs, and where two
 * are nearly alike they take turns: such stretches are told as turns, everywhere else the winner costs least at every
 * single quantity. Equal costs: the first of them. Empty where nothing can be had at all.
 */
export function cheapestByQuantity(all: readonly Priced[], most: number): Winner[] {
  const lines = all.map((priced) => costLine(priced, most));
  const stretches = rivalsByQuantity(lines.map((line, i) => (line && all.slice(0, i).some((_, j) => isSame(all, i, j)) ? undefined : line)), most);
  return told(stretches.flatMap((stretch) => runsWithin(all, stretch)));
}

/** Alike in ups and in what they cost at every quantity looked at: the lines and stairs are then the same. */
function isSame(all: readonly Priced[], i: number, j: number): boolean {
  return all[i]!.ups === all[j]!.ups && SAMPLES.every((quantity) => all[i]!.costAt(quantity) === all[j]!.costAt(quantity));
}
const SAMPLES = [1, 37, 1009, 9973, 100_003, 5_000_011];

interface Run {
  readonly from: number;
  readonly to: number;
  readonly candidates: readonly number[];
}

interface Block extends Stretch {
  /** Costs of the rivals at both ends. */
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/**
 * Costs never fall as the quantity rises: whoever costs less at the end of a block than the others at its beginning wins
 * all of it. Blocks that this does not decide are halved, the longest first; what is left open after so many is told as turns.
 */
function runsWithin(all: readonly Priced[], stretch: Stretch): Run[] {
  const costs = (rivals: readonly number[], quantity: number) => rivals.map((index) => all[index]!.costAt(quantity) ?? Infinity);
  const decided: Run[] = [];
  let open: Block[] = [{ ...stretch, low: costs(stretch.rivals, stretch.from), high: costs(stretch.rivals, stretch.to) }];
  for (let halved = 0; open.length > 0 && halved + open.length <= MOST_HALVED; halved += open.length) {
    const undecided = open.map(narrowed).filter((block) => {
      if (block.rivals.length > 1 && block.to > block.from) return true;
      decided.push({ from: block.from, to: block.to, candidates: block.rivals.slice(0, 1) });
      return false;
    });
    open = undecided.flatMap(({ from, to, rivals, low, high }): Block[] => {
      const middle = Math.floor((from + to) / 2);
      return [{ from, to: middle, rivals, low, high: costs(rivals, middle) }, { from: middle + 1, to, rivals, low: costs(rivals, middle + 1), high }];
    });
  }
  return [...decided, ...open.map(({ from, to, rivals }) => ({ from, to, candidates: rivals }))].toSorted((a, b) => a.from - b.from);
}

/** Without those that cost more than another throughout; at a single quantity the one that costs least, of equals the first. */
function narrowed(block: Block): Block {
  const { rivals, low, high } = block;
  const isBeaten = (one: number) => rivals.some((_, other) => other !== one && (high[other]! < low[one]! || (other < one && high[other]! <= low[one]!)));
  const kept = rivals.flatMap((_, i) => (isBeaten(i) ? [] : [i]));
  const of = (figures: readonly number[]) => kept.map((i) => figures[i]!);
  return { ...block, rivals: of(rivals), low: of(low), high: of(high) };
}

/** Runs of one winner are joined, short ones that follow each other are told together. */
function told(runs: readonly Run[]): Winner[] {
  const long = (run: Run) => run.candidates.length === 1 && run.to - run.from + 1 >= Math.max(LEAST_RUN, LEAST_SHARE * run.from);
  const groups: { from: number; candidates: number[]; isLong: boolean }[] = [];
  for (const run of joined(runs)) {
    const last = groups.at(-1);
    if (last && !last.isLong && !long(run)) last.candidates.push(...run.candidates);
    else groups.push({ from: run.from, candidates: [...run.candidates], isLong: long(run) });
  }
  return groups.map(({ from, candidates }, i) => {
    const turns = [...new Set(candidates)];
    return { fromQuantity: i === 0 && from === 1 ? 0 : from, candidate: turns[0]!, ...(turns.length > 1 && { turns }) };
  });
}

function joined(runs: readonly Run[]): Run[] {
  const all: Run[] = [];
  for (const run of runs) {
    const last = all.at(-1);
    if (last && last.candidates.join() === run.candidates.join() && last.to + 1 === run.from) all[all.length - 1] = { ...last, to: run.to };
    else all.push(run);
  }
  return all;
}
