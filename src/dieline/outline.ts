import Flatbush from 'flatbush';
import type { Box, Point } from '../geometry/point.ts';
import type { Cycle } from './cycles.ts';
import { createRingLocator, type RingLocator } from './ring-locator.ts';

/** An outline found, as edges. */
export interface Outline {
  readonly cycle: Cycle;
  readonly box: Box;
  /** Made when first asked for. */
  readonly locator: RingLocator;
}

export function outlineOf(cycle: Cycle): Outline {
  let locator: RingLocator | undefined;
  return {
    cycle,
    box: cycle.box,
    get locator() {
      return (locator ??= createRingLocator(cycle.ring));
    },
  };
}

/** Whether a cycle, which crosses no other, lies within an outline; they may touch in vertices. */
export function isInside(cycle: Cycle, { box, locator }: Outline): boolean {
  const { minX, minY, maxX, maxY } = cycle.box;
  if (minX < box.minX || minY < box.minY || maxX > box.maxX || maxY > box.maxY) return false;
  for (const point of cycle.ring) {
    const place = locator.locate(point);
    if (place !== 'boundary') return place === 'inside';
  }
  return false;
}

/** Which of many outlines, none within another, hold a point. */
export type OutlineFinder = (point: Point) => { readonly outline: number; readonly place: 'inside' | 'boundary' } | undefined;

/** One of those that hold it, one that has it inside before one that touches it. */
export function createOutlineFinder(outlines: readonly Outline[]): OutlineFinder {
  if (outlines.length === 0) return () => undefined;
  const index = new Flatbush(outlines.length);
  for (const { box } of outlines) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  return (point) => {
    let touched: number | undefined;
    for (const outline of index.search(point.x, point.y, point.x, point.y)) {
      const place = outlines[outline].locator.locate(point);
      if (place === 'inside') return { outline, place };
      if (place === 'boundary') touched = outline;
    }
    return touched === undefined ? undefined : { outline: touched, place: 'boundary' };
  };
}

/** Loops that cross nowhere, largest first, each with the place in the list of the smallest one that holds it, or −1. */
export interface Nest {
  readonly loops: readonly Outline[];
  readonly holders: readonly number[];
}

export function nest(cycles: readonly Cycle[]): Nest {
  const loops = cycles.toSorted((a, b) => b.area - a.area).map(outlineOf);
  if (loops.length < 2) return { loops, holders: loops.map(() => -1) };
  const index = new Flatbush(loops.length);
  for (const { box } of loops) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  const holders = loops.map(({ cycle }, i) => {
    const [{ x, y }] = cycle.ring;
    // The nearest in size of the larger ones.
    const larger = index.search(x, y, x, y).filter((j) => j < i).sort((a, b) => b - a);
    return larger.find((j) => isInside(cycle, loops[j])) ?? -1;
  });
  return { loops, holders };
}
