import type { Point } from '../geometry/point.ts';
import type { Problem } from './problem.ts';

/**
 * How the second side is printed. Sheetwise and work-and-turn: the sheet is turned left to right, the same gripper edge,
 * the side lay swaps. Work-and-tumble and perfecting: it is turned tail to gripper, so that both edges are gripped.
 */
export const WORK_STYLES = ['sheetwise', 'work-and-turn', 'work-and-tumble', 'perfecting'] as const;
export type WorkStyle = (typeof WORK_STYLES)[number];

export function isTumbled(style: WorkStyle): boolean {
  return style === 'work-and-tumble' || style === 'perfecting';
}

/** Which half of the sheet mirrors the other: only where front and back are printed from the same plates. */
export function symmetryOf(style: WorkStyle | undefined): Problem['symmetry'] {
  return style === 'work-and-turn' ? 'turned' : style === 'work-and-tumble' ? 'tumbled' : 'none';
}

/** Where a point of the front lies on the back, in the axes of the back as it is printed. */
export function backUpPlace({ x, y }: Point, sheet: { readonly width: number; readonly height: number }, style: WorkStyle): Point {
  return isTumbled(style) ? { x, y: sheet.height - y } : { x: sheet.width - x, y };
}

/** Rotation on the back, degrees counter-clockwise, of the design mirrored left to right. */
export function backUpRotation(rotation: number, style: WorkStyle): number {
  return ((((isTumbled(style) ? 180 : 0) - rotation) % 360) + 360) % 360;
}
