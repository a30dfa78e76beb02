import { boxOf } from '../geometry/point.ts';
import { turnBox } from '../geometry/turn.ts';
import type { Design } from '../layout/layout-file.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { requiredGap, type Placement, type Problem } from '../layout/problem.ts';
import { judgeForProduction, type SoundLayout } from '../layout/sound.ts';

/**
 * The plain grid with most ups in which neighbours side by side, one above the other, or both share one straight knife.
 * Whether edges that touch are really one knife, and everything else keeps its distance, is for the judge; bleeds are cut
 * where a knife is shared. Undefined where no such grid is sound.
 */
export function commonKnifeGrid(problem: Problem, design: Design): SoundLayout | undefined {
  const shared: Problem = { ...problem, rules: { ...problem.rules, bleedMeeting: 'cut', commonKnife: true } };
  const gap = requiredGap(problem.rules);
  const grids = problem.parts[0].turns.flatMap((turn) => [[0, gap], [gap, 0], [0, 0]].map(([across, upwards]) => gridOf(problem, turn, across, upwards)));
  for (const placements of grids.toSorted((a, b) => b.length - a.length)) {
    if (placements.length === 0) return undefined;
    const { sound } = judgeForProduction(layoutOf(shared, [design], placements, { ups: placements.length, source: 'plain rows, common knives' }));
    if (sound) return sound;
  }
  return undefined;
}

/** As many boxes as fit side by side and one above the other at the given distances, µm. */
function gridOf({ usable, parts }: Problem, turn: Placement['turn'], across: number, upwards: number): Placement[] {
  const box = turnBox(boxOf(parts[0].outline), turn);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const count = (room: number, side: number, apart: number) => Math.max(0, Math.floor((room + apart) / (side + apart)));
  const columns = count(usable.maxX - usable.minX, width, across);
  const rows = count(usable.maxY - usable.minY, height, upwards);
  return Array.from({ length: rows * columns }, (_, i): Placement => ({
    part: 0,
    turn,
    x: usable.minX - box.minX + (i % columns) * (width + across),
    y: usable.minY - box.minY + Math.floor(i / columns) * (height + upwards),
  }));
}
