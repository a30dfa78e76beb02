import type { Box, Point, Ring } from './point.ts';

/** Runs of consecutive edges with their boxes. Edge i runs from point i to the next. */
interface Run {
  readonly first: number;
  readonly end: number;
  readonly box: Box;
}

/**
 * Visits pairs (edge i of a, edge j of b) whose boxes are no farther apart than `reach`, nearest runs first. The visitor
 * returns the reach from then on, a negative one to stop. Branch and bound over runs of about √n edges, which lie close
 * together because outlines are continuous.
 */
export function visitNearEdges(a: Ring, b: Ring, reach: number, visit: (i: number, j: number) => number): void {
  const pairs = nearRuns(a, b, reach);
  let within = reach * reach;
  for (const { squared, ofA, ofB } of pairs) {
    if (squared > within) return;
    for (let i = ofA.first; i < ofA.end; i++) {
      const a0 = a[i];
      const a1 = a[i + 1 === a.length ? 0 : i + 1];
      if (edgeToBox(a0, a1, ofB.box) > within) continue;
      for (let j = ofB.first; j < ofB.end; j++) {
        if (edgeToEdgeBox(a0, a1, b[j], b[j + 1 === b.length ? 0 : j + 1]) > within) continue;
        const next = visit(i, j);
        if (next < 0) return;
        within = next * next;
      }
    }
  }
}

interface RunPair {
  readonly squared: number;
  readonly ofA: Run;
  readonly ofB: Run;
}

function nearRuns(a: Ring, b: Ring, reach: number): RunPair[] {
  const runsOfB = runsOf(b);
  const pairs: RunPair[] = [];
  for (const ofA of runsOf(a)) {
    for (const ofB of runsOfB) {
      const squared = boxToBox(ofA.box, ofB.box);
      if (squared <= reach * reach) pairs.push({ squared, ofA, ofB });
    }
  }
  return pairs.sort((p, q) => p.squared - q.squared);
}

function runsOf(ring: Ring): Run[] {
  const length = Math.max(4, Math.ceil(Math.sqrt(ring.length)));
  const runs: Run[] = [];
  for (let first = 0; first < ring.length; first += length) {
    const end = Math.min(ring.length, first + length);
    let { x: minX, y: minY } = ring[first];
    let maxX = minX;
    let maxY = minY;
    for (let i = first + 1; i <= end; i++) {
      const { x, y } = ring[i === ring.length ? 0 : i];
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
    runs.push({ first, end, box: { minX, minY, maxX, maxY } });
  }
  return runs;
}

// Squared distances of boxes: whole numbers within 2⁵³, exact.

function boxToBox(a: Box, b: Box): number {
  return squaredApart(a.minX, a.maxX, a.minY, a.maxY, b.minX, b.maxX, b.minY, b.maxY);
}

function edgeToBox(p: Point, q: Point, box: Box): number {
  return squaredApart(
    Math.min(p.x, q.x), Math.max(p.x, q.x), Math.min(p.y, q.y), Math.max(p.y, q.y),
    box.minX, box.maxX, box.minY, box.maxY,
  );
}

function edgeToEdgeBox(p: Point, q: Point, r: Point, s: Point): number {
  return squaredApart(
    Math.min(p.x, q.x), Math.max(p.x, q.x), Math.min(p.y, q.y), Math.max(p.y, q.y),
    Math.min(r.x, s.x), Math.max(r.x, s.x), Math.min(r.y, s.y), Math.max(r.y, s.y),
  );
}

function squaredApart(
  aMinX: number, aMaxX: number, aMinY: number, aMaxY: number,
  bMinX: number, bMaxX: number, bMinY: number, bMaxY: number,
): number {
  const dx = Math.max(0, bMinX - aMaxX, aMinX - bMaxX);
  const dy = Math.max(0, bMinY - aMaxY, aMinY - bMaxY);
  return dx * dx + dy * dy;
}
