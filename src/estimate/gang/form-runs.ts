/** How many copies of each design are wanted, least and most. */
export interface Wanted {
  readonly least: readonly number[];
  /** Infinity where nobody minds. */
  readonly most: readonly number[];
}

/** Forms with what is really laid on them and how often each is pressed. */
export interface WholeRuns {
  /** `counts[form][design]`, no more than was offered. */
  readonly counts: readonly (readonly number[])[];
  readonly runs: readonly number[];
}

/** Beyond so many ways to leave copies of a design out, they are left out greedily. */
const MOST_WAYS = 20_000;
/** Longer runs of the last form tried when the least one makes too much of a design. */
const LONGER_RUNS = 12;

/**
 * Whole pressings near the real ones that make enough of every design and not too much: every form but one is rounded up
 * or down, the remaining one is pressed as often as needed. Blanks that are not needed are left off. Undefined when no
 * rounding keeps the limits.
 */
export function wholeRuns(offered: readonly (readonly number[])[], real: readonly number[], wanted: Wanted): WholeRuns | undefined {
  let best: WholeRuns | undefined;
  let least = Infinity;
  for (const runs of roundings(offered, real, wanted)) {
    const total = runs.reduce((sum, run) => sum + run, 0);
    if (total >= least) continue;
    const counts = leanCounts(offered, runs, wanted);
    if (counts) [best, least] = [{ counts, runs }, total];
  }
  return best;
}

function* roundings(offered: readonly (readonly number[])[], real: readonly number[], wanted: Wanted): Generator<number[]> {
  for (let last = 0; last < real.length; last++) {
    for (let choice = 0; choice < 2 ** real.length; choice++) {
      if (choice & (1 << last)) continue;
      const runs = real.map((run, form) => (form === last ? 0 : choice & (1 << form) ? Math.ceil(run - 1e-9) : Math.floor(run + 1e-9)));
      for (const run of lastRuns(offered, runs, last, wanted)) yield runs.with(last, run);
    }
  }
}

/** Pressings of the last form that make enough: the fewest, and where there are upper limits some more. */
function lastRuns(offered: readonly (readonly number[])[], runs: readonly number[], last: number, { least, most }: Wanted): number[] {
  let needed = 0;
  const longer = new Set<number>();
  for (let d = 0; d < least.length; d++) {
    const open = least[d]! - offered.reduce((made, counts, form) => made + (form === last ? 0 : counts[d]! * runs[form]!), 0);
    if (open <= 0) continue;
    const count = offered[last]![d]!;
    if (count === 0) return [];
    needed = Math.max(needed, Math.ceil(open / count));
    if (most[d]! < Infinity) for (let fewer = count - 1; fewer > 0 && count - fewer <= LONGER_RUNS; fewer--) longer.add(Math.ceil(open / fewer));
  }
  return [needed, ...[...longer].filter((run) => run > needed).toSorted((a, b) => a - b)];
}

/** Design by design the fewest copies that are enough. Undefined when even they are too many. */
function leanCounts(offered: readonly (readonly number[])[], runs: readonly number[], { least, most }: Wanted): number[][] | undefined {
  const lean = offered.map((counts) => counts.map(() => 0));
  for (let d = 0; d < least.length; d++) {
    const ups = fewestUps(offered.map((counts) => counts[d]!), runs, least[d]!);
    const made = ups.reduce((sum, count, form) => sum + count * runs[form]!, 0);
    if (made < least[d]! || made > most[d]!) return undefined;
    ups.forEach((count, form) => (lean[form]![d] = count));
  }
  return lean;
}

/** Ups on each form, at most as many as offered, that make least over the need; greedily where there are too many ways. */
function fewestUps(offered: readonly number[], runs: readonly number[], need: number): number[] {
  const ways = offered.reduce((product, count) => product * (count + 1), 1);
  if (ways > MOST_WAYS) return greedily(offered, runs, need);
  let best = [...offered];
  let least = offered.reduce((sum, count, form) => sum + count * runs[form]!, 0);
  const choose = (form: number, made: number, ups: readonly number[]): void => {
    if (made >= need) {
      if (made < least) [best, least] = [[...ups, ...offered.slice(form).map(() => 0)], made];
      return;
    }
    if (form === offered.length) return;
    for (let count = 0; count <= offered[form]!; count++) choose(form + 1, made + count * runs[form]!, [...ups, count]);
  };
  choose(0, 0, []);
  return best;
}

function greedily(offered: readonly number[], runs: readonly number[], need: number): number[] {
  const ups = [...offered];
  let spare = offered.reduce((sum, count, form) => sum + count * runs[form]!, 0) - need;
  for (const form of runs.map((_, i) => i).sort((a, b) => runs[b]! - runs[a]!)) {
    const off = runs[form]! > 0 ? Math.min(ups[form]!, Math.max(0, Math.floor(spare / runs[form]!))) : 0;
    ups[form]! -= off;
    spare -= off * runs[form]!;
  }
  return ups;
}
