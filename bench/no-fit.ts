/**
 * The no-fit polygon of a carton of some 300 points with itself, whole outline included, against offsets of the same
 * outline by clipper2-ts (round joins, arc tolerance 2 µm) in the same run. Run: npx tsx bench/no-fit.ts
 */
import { cpus } from 'node:os';
import { EndType, inflatePaths, JoinType } from 'clipper2-ts';
import { noFitPolygon } from '../src/geometry/no-fit.ts';
import { noFitOutline, type NoFitOutline } from '../src/geometry/no-fit-outline.ts';
import { freeIntervals } from '../src/geometry/no-fit-slices.ts';
import { doubleArea } from '../src/geometry/point.ts';
import { degreesOf, turnRing, TURNS } from '../src/geometry/turn.ts';
import { cartonRing } from '../tests/support/rings.ts';

const ROUNDS = 41;
const GAP = 6000;
const ARC_TOLERANCE = 2;

/** Times a and b turn by turn, so that both see the same load of the machine. */
function timeTogether(runs: readonly (() => unknown)[]): number[][] {
  const times = runs.map((): number[] => []);
  for (let round = -5; round < ROUNDS; round++) {
    runs.forEach((run, k) => {
      const start = performance.now();
      run();
      if (round >= 0) times[k].push(performance.now() - start);
    });
  }
  return times.map((list) => list.sort((p, q) => p - q));
}

const spread = (times: readonly number[]) => `${median(times).toFixed(2)} ms (${times[0].toFixed(2)} … ${times.at(-1)!.toFixed(2)})`;
const median = (times: readonly number[]) => times[times.length >> 1];

/** Corners and area of the outline, which no change of speed may change. */
function checksum({ outer, pockets, slits, points }: NoFitOutline): string {
  const loops = [outer, ...pockets];
  const area = loops.reduce((sum, loop) => sum + doubleArea(loop), 0);
  return `${loops.length} rings, ${loops.flat().length} corners, ${slits.length} slits, ${points.length} points, double area ${area}`;
}

const carton = cartonRing(14);
console.log(`${cpus()[0].model}, ${cpus().length} cores, Node ${process.version}; carton of ${carton.length} points; median (least … most) of ${ROUNDS}`);
const offset = () => inflatePaths([[...carton] as never], GAP, JoinType.Round, EndType.Polygon, 2, ARC_TOLERANCE);
for (const turn of TURNS) {
  const other = turnRing(carton, turn);
  const noFit = noFitPolygon(carton, other, GAP);
  const [whole, offsets, slices] = timeTogether([
    () => noFitOutline(noFitPolygon(carton, other)),
    offset,
    () => {
      for (let at = -200_000; at <= 200_000; at += 10_000) freeIntervals(noFit, 'x', at);
    },
  ]);
  console.log(`rotation ${degreesOf(turn)}: no-fit polygon ${spread(whole)} = ${(median(whole) / median(offsets)).toFixed(1)} offsets of ${spread(offsets)}; 41 slices at gap ${GAP / 1000} mm ${spread(slices)}`);
  console.log(`  ${checksum(noFitOutline(noFit))}`);
}
