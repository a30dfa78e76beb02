import type { Bodies } from './bodies.ts';
import type { Contact } from './contacts.ts';

/** Most sweeps over the contacts before they are collected anew. */
const SWEEPS = 600;
/** Every so many sweeps the largest lack must have fallen to this share, or the sweeps have got stuck. */
const SWEEPS_PER_LOOK = 30;
const PROGRESS = 0.8;
/** Linear rules are trusted for moves up to this along either axis, µm. */
const TRUST = 250;
/** A rule broken by less than this, µm, counts as kept. */
const KEPT = 1e-3;

/**
 * Moves bodies by successive projection onto the rules: every broken rule moves its two bodies apart along its normal,
 * half the lack each (the fixed one's half goes to the other), until none is broken or the sweeps get stuck.
 */
export function project(bodies: Bodies, contacts: readonly Contact[], margin: number): void {
  const { x, y, movable } = bodies;
  const room = trustedRoom(bodies);
  // From here on every rule reads: normal · (second − first) ≥ bound, in positions rather than moves.
  const bounds = contacts.map(({ first, second, normalX, normalY, distance, required }) => {
    const standing = first < 0 ? 0 : normalX * x[first] + normalY * y[first];
    return required + margin - distance + normalX * x[second] + normalY * y[second] - standing;
  });
  const nudge = (i: number, byX: number, byY: number) => {
    x[i] = Math.min(room.maxX[i], Math.max(room.minX[i], x[i] + byX));
    y[i] = Math.min(room.maxY[i], Math.max(room.minY[i], y[i] + byY));
  };
  let lastLook = Infinity;
  for (let sweep = 1; sweep <= SWEEPS; sweep++) {
    let worst = 0;
    for (let k = 0; k < contacts.length; k++) {
      const { first, second, normalX, normalY } = contacts[k];
      const standing = first < 0 ? 0 : normalX * x[first] + normalY * y[first];
      const lack = bounds[k] - (normalX * x[second] + normalY * y[second] - standing);
      if (lack <= KEPT) continue;
      if (lack > worst) worst = lack;
      const firstMoves = first >= 0 && movable[first] === 1;
      const share = firstMoves && movable[second] === 1 ? lack / 2 : lack;
      if (movable[second] === 1) nudge(second, share * normalX, share * normalY);
      if (firstMoves) nudge(first, -share * normalX, -share * normalY);
    }
    if (worst === 0) return;
    if (sweep % SWEEPS_PER_LOOK === 0) {
      if (worst > PROGRESS * lastLook) return;
      lastLook = worst;
    }
  }
}

/** Where each body may go while the linear rules are trusted. */
function trustedRoom({ x, y, minX, minY, maxX, maxY }: Bodies): Pick<Bodies, 'minX' | 'minY' | 'maxX' | 'maxY'> {
  return {
    minX: minX.map((limit, i) => Math.max(limit, x[i] - TRUST)),
    minY: minY.map((limit, i) => Math.max(limit, y[i] - TRUST)),
    maxX: maxX.map((limit, i) => Math.min(limit, x[i] + TRUST)),
    maxY: maxY.map((limit, i) => Math.min(limit, y[i] + TRUST)),
  };
}
