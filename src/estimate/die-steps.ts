import { groupBy } from '../base/group-by.ts';
import type { Box } from '../geometry/point.ts';

/** The way from one blank to the next on its row or column. */
export interface DieStep {
  /** Placement numbers, counted from 0. */
  readonly stations: readonly [number, number];
  readonly mm: number;
}

export interface DieSteps {
  /** The commonest step, the least of equally common ones; absent where no two blanks stand on one row or column. */
  readonly usual?: number;
  /** How many steps are the usual one. */
  readonly count: number;
  /** All others. */
  readonly deviations: readonly DieStep[];
}

/** Steps of a layout file are compared to the micrometre, mm. */
const SAME_MM = 0.0015;
const key = (mm: number) => Math.round(mm * 1000);

/**
 * Steps along x (within rows of blanks whose boxes start at the same height) or along y (within columns), from box start
 * to box start. A die maker sets out by these; every one that is not the usual must be known. Boxes in mm.
 */
export function dieSteps(boxes: readonly Box[], axis: 'x' | 'y'): DieSteps {
  const [along, across] = axis === 'x' ? (['minX', 'minY'] as const) : (['minY', 'minX'] as const);
  const lines = groupBy(boxes.keys(), (i) => key(boxes[i]![across]));
  const steps = [...lines.values()].flatMap((stations) => {
    const sorted = stations.toSorted((a, b) => boxes[a]![along] - boxes[b]![along]);
    return sorted.slice(1).map((station, i): DieStep => ({ stations: [sorted[i]!, station], mm: boxes[station]![along] - boxes[sorted[i]!]![along] }));
  });
  const counts = [...groupBy(steps, ({ mm }) => key(mm)).values()].toSorted((a, b) => b.length - a.length || a[0]!.mm - b[0]!.mm);
  const usual = counts[0]?.[0]!.mm;
  if (usual === undefined) return { count: 0, deviations: [] };
  const deviations = steps.filter(({ mm }) => Math.abs(mm - usual) > SAME_MM);
  return { usual, count: steps.length - deviations.length, deviations };
}
