import { boxOf, type Point, type Ring } from '../geometry/point.ts';
import { turnRing, type Turn } from '../geometry/turn.ts';

/** Two outlines count as the same after a turn when neither leaves the other by more than this, µm. */
const SAME_OUTLINE = 20;

/** The turns without those that give an outline already had. */
export function distinctTurns(outline: Ring, turns: readonly Turn[]): Turn[] {
  const kept: Turn[] = [];
  for (const turn of turns) {
    if (!kept.some((other) => sameTurned(outline, other, turn))) kept.push(turn);
  }
  return kept;
}

/** Whether the outline looks the same in both turns. */
export function sameTurned(outline: Ring, a: Turn, b: Turn): boolean {
  if (a === b) return true;
  const first = centred(turnRing(outline, a));
  const second = centred(turnRing(outline, b));
  return staysNear(first, second) && staysNear(second, first);
}

function centred(ring: Ring): Ring {
  const box = boxOf(ring);
  return ring.map((p) => ({ x: p.x - (box.minX + box.maxX) / 2, y: p.y - (box.minY + box.maxY) / 2 }));
}

/** Edges are looked at in pieces of this share of the outline's extent. */
const PIECE_SHARE = 1 / 64;

/** Whether the outline of `a`, at its corners and all along its edges, lies on that of `b`. */
function staysNear(a: Ring, b: Ring): boolean {
  const box = boxOf(a);
  const piece = Math.max(box.maxX - box.minX, box.maxY - box.minY) * PIECE_SHARE;
  return a.every((from, i) => {
    const to = a[(i + 1) % a.length];
    const pieces = Math.ceil(Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y), 1) / piece);
    for (let k = 0; k < pieces; k++) {
      const p = { x: from.x + ((to.x - from.x) * k) / pieces, y: from.y + ((to.y - from.y) * k) / pieces };
      if (!b.some((start, e) => nearEdge(p, start, b[(e + 1) % b.length]))) return false;
    }
    return true;
  });
}

function nearEdge(p: Point, a: Point, b: Point): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length));
  const ex = a.x + share * dx - p.x;
  const ey = a.y + share * dy - p.y;
  return ex * ex + ey * ey <= SAME_OUTLINE * SAME_OUTLINE;
}
