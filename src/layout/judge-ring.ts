import { inputError } from '../base/issue.ts';
import { toMillimetres } from '../base/units.ts';
import { doubleArea, type Point, type Ring } from '../geometry/point.ts';
import { crossing } from '../geometry/predicates.ts';
import { forNearEdges } from './judge-distance.ts';
import { shapeOf } from './judge-shape.ts';

/**
 * Throws an InputError unless the ring is one closed line that does not touch or cross itself. Whole micrometres, so
 * the decision is exact. `where` names the ring.
 */
export function checkSimple(ring: Ring, where: string): void {
  const place = selfMeeting(ring);
  if (place) throw inputError('ring-not-simple', { where, place: [toMillimetres(place.x), toMillimetres(place.y)] });
  if (doubleArea(ring) === 0) throw inputError('ring-without-area', { where });
}

function selfMeeting(ring: Ring): Point | undefined {
  const count = ring.length;
  const shape = shapeOf({ xs: Float64Array.from(ring, ({ x }) => x), ys: Float64Array.from(ring, ({ y }) => y), straight: new Uint8Array(count) });
  const at = (i: number) => ring[i % count];
  let found: Point | undefined;
  // Once something is found, a reach below any distance ends the search.
  forNearEdges(shape, shape, { x: 0, y: 0 }, 0, (i, j) => {
    if (found || i >= j) return found ? -Infinity : 0;
    const meeting = crossing(at(i), at(i + 1), at(j), at(j + 1));
    const neighbours = j === i + 1 || (i === 0 && j === count - 1);
    if (meeting.kind === 'overlap') found = meeting.from;
    else if (meeting.kind !== 'none' && !neighbours) found = meeting.at;
    return found ? -Infinity : 0;
  });
  return found;
}
