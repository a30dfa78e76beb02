import type { Point, Ring } from './point.ts';
import { orient } from './predicates.ts';
import { dot, minus, samePoint } from './vector.ts';

/** Drops repeated points and vertices exactly between their neighbours; a turn back stays, as the fault it is. */
export function withoutStraights(ring: Ring): Ring {
  let points = withoutRepeats(ring);
  for (;;) {
    const kept = points.filter((p, i) => {
      const before = points[(i + points.length - 1) % points.length];
      const after = points[(i + 1) % points.length];
      return orient(before, p, after) !== 0 || dot(minus(p, before), minus(after, p)) < 0;
    });
    if (kept.length === points.length || kept.length < 3) return points;
    points = kept;
  }
}

function withoutRepeats(ring: Ring): readonly Point[] {
  return ring.length < 2 ? ring : ring.filter((p, i) => !samePoint(p, ring[(i + 1) % ring.length]));
}
