import { ellipseArc } from '../geometry/arc.ts';
import type { Box, Point } from '../geometry/point.ts';
import { distanceBetween as distance } from '../geometry/vector.ts';
import type { SceneItem } from './scene.ts';
import { drawn, label, line } from './shapes.ts';
import { textWidth } from './text-width.ts';

/** A place in the picture's axes, mm, and the numbers of the remarks that are there. */
export interface FaultPlace {
  readonly at: Point;
  readonly numbers: readonly number[];
}

const TEXT_UNITS = 2;
/** Distances from a place at which its number is tried, in units, and the directions, nearest to reading order first. */
const DISTANCES = [3, 5, 7, 9, 12, 15];
const DIRECTIONS: readonly Point[] = [{ x: 1, y: 0.5 }, { x: 1, y: -0.7 }, { x: -1, y: 0.5 }, { x: -1, y: -0.7 }, { x: 0.2, y: 1 }, { x: 0.2, y: -1 }, { x: 1, y: 1 }, { x: -1, y: -1 }];

/**
 * A ring round each place and its numbers beside it. Where places stand close, rings are smaller, and numbers keep clear of
 * one another and of other rings within `room`, each tied to its place by a line.
 */
export function faultMarks(places: readonly FaultPlace[], unit: number, room: Box): SceneItem[] {
  const rings = places.map(({ at }, i) => ({ at, radius: ringRadius(at, places.filter((_, other) => other !== i), unit) }));
  const taken: Box[] = rings.map(({ at, radius }) => around(at, radius));
  return places.flatMap(({ at, numbers }, i): SceneItem[] => {
    const text = numbers.join(', ');
    const width = textWidth(text, TEXT_UNITS * unit, true);
    const { radius } = rings[i]!;
    const beside = { minX: at.x + radius + 0.3 * unit, minY: at.y - 0.1 * unit, maxX: at.x + radius + 0.3 * unit + width, maxY: at.y + TEXT_UNITS * unit };
    const others = taken.filter((_, other) => other !== i);
    const place = isFree(beside, others, room) ? beside : (spots(at, width, unit).find((box) => isFree(box, others, room)) ?? beside);
    taken.push(place);
    const ring = ellipseArc({ centre: at, radiusX: radius, radiusY: radius, tilt: 0 }, 0, 2 * Math.PI);
    const look = { stroke: 'accent', width: unit / 5 } as const;
    return [
      drawn([[ring]], look),
      ...(place === beside ? [] : [drawn([line(onRing(at, nearest(place, at), radius), nearest(place, at))], { ...look, width: unit / 8 })]),
      label(text, { x: place.minX, y: place.minY + 0.35 * unit }, TEXT_UNITS * unit, { bold: true, paint: 'accent' }),
    ];
  });
}

/** A unit; less where the next place is nearer than two, so that rings stay apart, but never a mere dot. */
function ringRadius(at: Point, others: readonly FaultPlace[], unit: number): number {
  const nearestOther = Math.min(...others.map((other) => distance(at, other.at)));
  return Math.max(0.25 * unit, Math.min(unit, 0.45 * nearestOther));
}

/** Boxes for the number around its place, the nearest first. */
function spots(at: Point, width: number, unit: number): Box[] {
  return DISTANCES.flatMap((far) => DIRECTIONS.map(({ x, y }) => {
    const minX = at.x + x * far * unit - (x < 0 ? width : 0);
    const minY = at.y + y * far * unit - (TEXT_UNITS * unit) / 2;
    return { minX, minY, maxX: minX + width, maxY: minY + TEXT_UNITS * unit };
  }));
}

function isFree(box: Box, taken: readonly Box[], room: Box): boolean {
  return box.minX >= room.minX && box.maxX <= room.maxX && box.minY >= room.minY && box.maxY <= room.maxY
    && taken.every((other) => box.maxX <= other.minX || other.maxX <= box.minX || box.maxY <= other.minY || other.maxY <= box.minY);
}

function around({ x, y }: Point, by: number): Box {
  return { minX: x - by, minY: y - by, maxX: x + by, maxY: y + by };
}

function nearest({ minX, minY, maxX, maxY }: Box, { x, y }: Point): Point {
  return { x: Math.min(maxX, Math.max(minX, x)), y: Math.min(maxY, Math.max(minY, y)) };
}

function onRing(centre: Point, towards: Point, radius: number): Point {
  const far = distance(centre, towards) || 1;
  return { x: centre.x + ((towards.x - centre.x) / far) * radius, y: centre.y + ((towards.y - centre.y) / far) * radius };
}
