import type { WorkMeter } from './work-meter.ts';

/** Stations of one version on each form; one entry a way. */
export type Ways = readonly number[][];

/** Runs that may vary: none shorter than `shortest`, all together at most `sum`. */
export interface RunLimits {
  readonly shortest: readonly number[];
  readonly sum: number;
}

/**
 * All ways to give a version its quantity in which no station could be taken away, and which need not make over `most`. With `limits`, ways that suffice for
 * some runs within the limits and not longer than `runs`.
 */
export function waysToSupply(quantity: number, runs: readonly number[], stations: number, meter: WorkMeter, limits?: RunLimits, most = Infinity): number[][] {
  const shortest = limits?.shortest ?? runs;
  const slack = limits ? limits.sum - shortest.reduce((sum, run) => sum + run, 0) : 0;
  const ways: number[][] = [];
  const last = runs.length - 1;
  const counts = new Array<number>(runs.length).fill(0);
  const taken = new Array<boolean>(runs.length).fill(false);
  /** Most copies these counts can make. */
  const reach = (): number => {
    let copies = 0;
    meter.spend(slack > 0 ? runs.length ** 2 : runs.length);
    for (let f = 0; f <= last; f++) copies += counts[f]! * shortest[f]!;
    if (slack <= 0) return copies;
    taken.fill(false);
    for (let left = slack; left > 0; ) {
      let best = -1;
      for (let f = 0; f <= last; f++) if (!taken[f] && counts[f]! > 0 && (best < 0 || counts[f]! > counts[best]!)) best = f;
      if (best < 0) break;
      taken[best] = true;
      const longer = Math.min(left, runs[best]! - shortest[best]!);
      copies += longer * counts[best]!;
      left -= longer;
    }
    return copies;
  };
  const tooMany = () => most < Infinity && counts.reduce((made, count, f) => made + count * shortest[f]!, 0) > most;
  const canSpare = (form: number): boolean => {
    counts[form]!--;
    const enough = reach() >= quantity;
    counts[form]!++;
    return enough;
  };
  const finish = (rest: number): void => {
    const { [last]: before } = counts;
    // Even the longest runs need so many; the sum may ask for more.
    let needed = rest > 0 ? Math.ceil(rest / runs[last]!) : 0;
    for (; needed <= stations; needed++) {
      counts[last] = needed;
      if (reach() >= quantity) break;
    }
    if (needed <= stations && !tooMany() && counts.every((count, f) => f === last || count === 0 || !canSpare(f))) ways.push([...counts]);
    counts[last] = before!;
  };
  const extend = (form: number, rest: number): void => {
    if (form === last) return finish(rest);
    for (let count = 0; count <= stations; count++) {
      counts[form] = count;
      extend(form + 1, rest - count * runs[form]!);
      if (rest - count * runs[form]! <= 0 && reach() >= quantity) break;
    }
    counts[form] = 0;
  };
  extend(0, quantity);
  return ways;
}
