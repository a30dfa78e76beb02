export interface Range {
  /** Whole numbers, both included. */
  readonly from: number;
  readonly to: number;
  /** Places looked at before the lowest are refined. */
  readonly samples: number;
  /** Minima returned at most. */
  readonly kept: number;
}

/**
 * Whole arguments at which a bumpy function is least: sampled evenly, then every lowest sample walked downhill with
 * halving steps to whole numbers. Lowest first; local minima between samples can be missed.
 */
export function leastOf(value: (x: number) => number, { from, to, samples, kept }: Range): number[] {
  if (to <= from) return [from];
  const step = Math.max(1, (to - from) / samples);
  const places = Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => Math.round(from + i * step));
  const values = places.map(value);
  const valleys = places
    .map((x, i) => ({ x, value: values[i], lowest: values[i] <= (values[i - 1] ?? Infinity) && values[i] <= (values[i + 1] ?? Infinity) }))
    .filter(({ lowest }) => lowest)
    .toSorted((a, b) => a.value - b.value);
  const refined = valleys.slice(0, kept).map((start) => downhill(value, start, from, to, Math.ceil(step / 2)));
  return [...new Set(refined.toSorted((a, b) => a.value - b.value).map(({ x }) => x))];
}

function downhill(value: (x: number) => number, start: { x: number; value: number }, from: number, to: number, widest: number) {
  let { x, value: least } = start;
  for (let step = widest; step >= 1; step = step === 1 ? 0 : Math.ceil(step / 2)) {
    for (const next of [x - step, x + step]) {
      if (next < from || next > to) continue;
      const there = value(next);
      if (there < least) {
        least = there;
        x = next;
      }
    }
  }
  return { x, value: least };
}
