import { boxOf, counterClockwise, type Box, type Point, type Ring } from '../geometry/point.ts';
import { turnBox, TURNS, type Turn } from '../geometry/turn.ts';
import { blankArea, requiredGap, type Placement, type Problem } from '../layout/problem.ts';
import { distinctTurns, sameTurned } from './distinct-turns.ts';

/**
 * A problem as the free search sees it. Everything is placed by the centre of its turned box, so that an outline that
 * looks the same after a turn needs that turn no more. Lengths in µm, not whole.
 */
export interface Prepared {
  readonly problem: Problem;
  /** Outlines of the parts, then those of the keep-outs, as given (not centred). */
  readonly shapes: readonly Shape[];
  /** Shape and turn of everything that is on the sheet or may come to it. */
  readonly poses: readonly Pose[];
  /** Indices of the poses that a new blank may take, part by part. */
  readonly posesOf: readonly (readonly number[])[];
  /** Index of the pose that looks like a part in a turn, by part and turn; −1 when that turn is not allowed. */
  readonly poseOfTurn: readonly (readonly number[])[];
  /** What stays where it is: locked blanks and keep-outs. */
  readonly fixed: readonly Fixed[];
  /** Where blanks may lie: inside the usable area, and their bleed inside the printable one. */
  readonly area: Box;
  /** Common measure of all outlines and clearances where it is a good part of a blank, as with polyominoes; else 0. */
  readonly pitch: number;
}

export interface Shape {
  readonly ring: Ring;
  /** Distance kept to blanks. */
  readonly clearance: number;
  readonly isPart: boolean;
}

export interface Pose {
  readonly shape: number;
  readonly turn: Turn;
  /** Box centre less the origin of the turned outline. */
  readonly centre: Point;
  readonly width: number;
  readonly height: number;
  /** Where the centre may be. Empty (min > max) when the blank does not fit. */
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface Fixed {
  readonly pose: number;
  readonly x: number;
  readonly y: number;
}

export function prepare(problem: Problem): Prepared {
  const gap = requiredGap(problem.rules);
  const shapes: Shape[] = [
    ...problem.parts.map((part) => ({ ring: part.outline, clearance: gap, isPart: true })),
    ...problem.keepOuts.map((keepOut) => ({ ring: counterClockwise(keepOut.ring), clearance: keepOut.clearance, isPart: false })),
  ];
  const area = blankArea(problem);
  const poses: Pose[] = [];
  const poseFor = (shape: number, turn: Turn) => {
    const known = poses.findIndex((pose) => pose.shape === shape && pose.turn === turn);
    return known >= 0 ? known : poses.push(poseOf(area, shapes[shape], shape, turn)) - 1;
  };
  const posesOf = problem.parts.map((part, shape) => distinctTurns(part.outline, part.turns).map((turn) => poseFor(shape, turn)));
  const poseOfTurn = problem.parts.map((part, shape) => TURNS.map((turn) => posesOf[shape].find((pose) => sameTurned(part.outline, poses[pose].turn, turn)) ?? -1));
  const fixed: Fixed[] = [
    ...problem.locked.map((placement) => {
      const pose = poseFor(placement.part, placement.turn);
      return { pose, x: placement.x + poses[pose].centre.x, y: placement.y + poses[pose].centre.y };
    }),
    ...problem.keepOuts.map((_, index) => {
      const pose = poseFor(problem.parts.length + index, 0);
      return { pose, x: poses[pose].centre.x, y: poses[pose].centre.y };
    }),
  ];
  const fits = (pose: number) => poses[pose].minX <= poses[pose].maxX && poses[pose].minY <= poses[pose].maxY;
  return { problem, shapes, poses, posesOf: posesOf.map((list) => list.filter(fits)), poseOfTurn, fixed, area, pitch: pitchOf(shapes) };
}

/** The same with the area ending at another x. */
export function withEnd(prepared: Prepared, maxX: number): Prepared {
  const poses = prepared.poses.map((pose) => ({ ...pose, maxX: maxX - pose.width / 2 }));
  const posesOf = prepared.posesOf.map((list) => list.filter((pose) => poses[pose].minX <= poses[pose].maxX));
  return { ...prepared, poses, posesOf, area: { ...prepared.area, maxX } };
}

/** A common measure is of use when the largest outline is at most so many of them long. */
const MOST_PITCHES = 24;

function pitchOf(shapes: readonly Shape[]): number {
  let pitch = 0;
  for (const { ring, clearance } of shapes) {
    pitch = commonMeasure(pitch, clearance);
    ring.forEach((p) => (pitch = commonMeasure(commonMeasure(pitch, p.x), p.y)));
  }
  const boxes = shapes.map(({ ring }) => boxOf(ring));
  const extent = Math.max(...boxes.map((box) => Math.max(box.maxX - box.minX, box.maxY - box.minY)));
  return extent <= MOST_PITCHES * pitch ? pitch : 0;
}

function commonMeasure(a: number, b: number): number {
  let [large, small] = [Math.abs(a), Math.abs(b)];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}

export function placementAt({ poses }: Prepared, pose: number, x: number, y: number): Placement {
  const { shape, turn, centre } = poses[pose];
  return { part: shape, turn, x: Math.round(x - centre.x), y: Math.round(y - centre.y) };
}

function poseOf(area: Box, { ring }: Shape, shape: number, turn: Turn): Pose {
  const box = turnBox(boxOf(ring), turn);
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  return {
    shape,
    turn,
    centre: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
    width,
    height,
    minX: area.minX + width / 2,
    minY: area.minY + height / 2,
    maxX: area.maxX - width / 2,
    maxY: area.maxY - height / 2,
  };
}

/** Offset between the centres of two shapes whose outlines' origins are `d` apart, the second turned. */
export function centreOffset(a: Ring, b: Ring, turn: Turn): Point {
  const first = boxOf(a);
  const second = turnBox(boxOf(b), turn);
  return { x: (second.minX + second.maxX - first.minX - first.maxX) / 2, y: (second.minY + second.maxY - first.minY - first.maxY) / 2 };
}

