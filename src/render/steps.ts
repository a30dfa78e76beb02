/** A piece of a chain of dimensions: `count` equal steps from `from` on, each `step` long. Millimetres. */
export interface Run {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** Differences up to this count as equal steps, mm: a layout file holds three decimals. */
const SAME_STEP_MM = 0.0015;

/** The lengths between the places, equal neighbours taken together. Places that differ by less than that are one. */
export function runsBetween(places: readonly number[]): Run[] {
  const sorted = places.toSorted((a, b) => a - b).filter((place, i, all) => i === 0 || place - all[i - 1]! > SAME_STEP_MM);
  const runs: Run[] = [];
  for (let i = 0; i + 1 < sorted.length; i++) {
    const from = sorted[i]!;
    const step = sorted[i + 1]! - from;
    const last = runs.at(-1);
    if (last && Math.abs(last.step - step) <= SAME_STEP_MM) runs[runs.length - 1] = { ...last, count: last.count + 1 };
    else runs.push({ from, step, count: 1 });
  }
  return runs;
}
