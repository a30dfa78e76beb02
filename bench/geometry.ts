/** What the parts of geometry cost on a carton of some 300 points. Usage: tsx bench/geometry.ts */
import { EndType, JoinType, inflatePaths } from 'clipper2-ts';
import { ellipseArc } from '../src/geometry/arc.ts';
import { unite } from '../src/geometry/boolean.ts';
import { atLeastApart, ringDistance } from '../src/geometry/distance.ts';
import { flattenLoop } from '../src/geometry/flatten.ts';
import { growPolygon, shrinkPolygon } from '../src/geometry/offset.ts';
import { ringsOverlap } from '../src/geometry/overlap.ts';
import { readPathData } from '../src/geometry/path-data.ts';
import { boxOf, ringArea, shiftRing } from '../src/geometry/point.ts';
import { turnRing } from '../src/geometry/turn.ts';
import { ringFaults } from '../src/geometry/validity.ts';
import { cartonRing, starRing } from '../tests/support/rings.ts';
import { measure, printMachine } from './harness.ts';

printMachine();
const carton = cartonRing(11);
const { maxX, maxY } = boxOf(carton);
const beside = shiftRing(carton, { x: maxX + 5_000, y: 0 });
/** Head to tail, covers between the dust flaps: the usual near contact. */
const headToTail = shiftRing(turnRing(carton, 2), { x: maxX + 40_000, y: 2 * maxY - 30_000 });
const crossing = shiftRing(carton, { x: 50_000, y: 20_000 });
const solid = { outer: carton, holes: [] };
const circle = [ellipseArc({ centre: { x: 0, y: 0 }, radiusX: 30, radiusY: 30, tilt: 0 }, 0, 2 * Math.PI)];
const [cubics] = readPathData('M50 0 C50 27.6 27.6 50 0 50 S-50 27.6 -50 0 S-27.6 -50 0 -50 S50 -27.6 50 0 Z');
const longPath = `M0 0L${Array.from({ length: 100_000 }, (_, i) => `${i % 997} ${i % 991}`).join(' ')}`;
const tenThousand = starRing(Array.from({ length: 10_000 }, (_, i) => 8_000_000 - 100_000 * (i % 7)));

console.log(`carton of ${carton.length} points`);
measure('distance, side by side', () => [ringDistance(carton, beside).distance]);
measure('distance, head to tail', () => [ringDistance(carton, headToTail).distance]);
measure('distance, capped at 10 mm, head to tail', () => [ringDistance(carton, headToTail, { cap: 10_000 })?.distance ?? -1]);
measure('at least 5 mm apart, side by side', () => [Number(atLeastApart(carton, beside, 5_000))]);
measure('overlap of crossing outlines', () => [Number(ringsOverlap(carton, crossing))]);
measure('overlap of outlines side by side, boxes touching', () => [Number(ringsOverlap(carton, shiftRing(carton, { x: maxX, y: 0 })))]);
measure('faults', () => [ringFaults(carton).length]);
measure('faults, 10 000 points', () => [ringFaults(tenThousand).length]);
measure('grown by 3 mm, arc tolerance 0.02 mm', () => [ringArea(growPolygon(solid, 3_000, 20).polygon.outer)]);
measure('the same by the library (inscribed)', () => inflatePaths([[...carton]], 3_000, JoinType.Round, EndType.Polygon, 2, 20).map((ring) => ringArea(ring)));
measure('shrunk by 3 mm', () => shrinkPolygon(solid, 3_000, 20).polygons.map(({ outer }) => ringArea(outer)));
measure('union with its copy', () => unite([solid, { outer: crossing, holes: [] }]).map(({ outer }) => ringArea(outer)));
measure('circle of 30 mm flattened outside at 0.02 mm', () => [ringArea(flattenLoop(circle, { toleranceMm: 0.02, side: 'outside' }).ring)]);
measure('four cubic curves flattened outside at 0.02 mm', () => [ringArea(flattenLoop(cubics, { toleranceMm: 0.02, side: 'outside' }).ring)]);
measure('path data of 100 000 lines read', () => [readPathData(longPath)[0].length]);
