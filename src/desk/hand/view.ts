import { MICRONS_PER_MM } from '../../base/units.ts';
import type { Box, Point } from '../../geometry/point.ts';

/**
 * How the sheet is looked at. Screen points are pixels from the upper left corner of the picture, y down; sheet points are
 * micrometres, y up.
 */
export interface View {
  /** Pixels per millimetre. */
  readonly zoom: number;
  /** The least x and the greatest y of the sheet that the picture shows, µm. */
  readonly left: number;
  readonly top: number;
  /** Size of the picture, pixels. */
  readonly width: number;
  readonly height: number;
  /** Seen from the rule side, as the die lies: left and right change places. `left` is then at the right edge of the picture. */
  readonly mirrored?: boolean;
}

/** A hundredth of a millimetre is then eight pixels wide: enough to see and to point at. */
export const MOST_ZOOM = 800;
/** A sheet of 1.6 m is then as wide as a thumb. */
export const LEAST_ZOOM = 0.05;

/** Free room left around what is fitted in, as a part of the picture. */
const BORDER = 0.06;

export function toSheet(view: View, { x, y }: Point): Point {
  const scale = MICRONS_PER_MM / view.zoom;
  return { x: view.left + across(view, x) * scale, y: view.top - y * scale };
}

export function toScreen(view: View, { x, y }: Point): Point {
  const scale = view.zoom / MICRONS_PER_MM;
  return { x: across(view, (x - view.left) * scale), y: (view.top - y) * scale };
}

/** Between pixels from the left edge of the picture and pixels from where `left` lies. */
function across({ mirrored, width }: View, x: number): number {
  return mirrored ? width - x : x;
}

/** How long so many pixels are on the sheet, µm. */
export function onSheet({ zoom }: View, pixels: number): number {
  return (pixels * MICRONS_PER_MM) / zoom;
}

/** Zooms by a factor; what lies under the screen point stays there. */
export function zoomAt(view: View, at: Point, factor: number): View {
  const zoom = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, view.zoom * factor));
  const still = toSheet(view, at);
  const scale = MICRONS_PER_MM / zoom;
  return { ...view, zoom, left: still.x - across(view, at.x) * scale, top: still.y + at.y * scale };
}

/** The picture moved along with a finger that moves by so many pixels. */
export function panBy(view: View, dx: number, dy: number): View {
  return { ...view, left: view.left - onSheet(view, view.mirrored ? -dx : dx), top: view.top + onSheet(view, dy) };
}

/** The box in the middle of the picture, as large as it goes. */
export function fitted(view: View, box: Box): View {
  const widthMm = (box.maxX - box.minX) / MICRONS_PER_MM;
  const heightMm = (box.maxY - box.minY) / MICRONS_PER_MM;
  const room = 1 - 2 * BORDER;
  const zoom = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, Math.min((view.width * room) / widthMm, (view.height * room) / heightMm)));
  const half = onSheet({ ...view, zoom }, 0.5);
  return { ...view, zoom, left: (box.minX + box.maxX) / 2 - view.width * half, top: (box.minY + box.maxY) / 2 + view.height * half };
}

/** The same look at a picture of another size: its middle stays. */
export function resized(view: View, width: number, height: number): View {
  return { ...panBy({ ...view, mirrored: false }, (width - view.width) / 2, (height - view.height) / 2), width, height, mirrored: view.mirrored ?? false };
}

/** The other side of the same part of the sheet. */
export function turnedOver(view: View, mirrored: boolean): View {
  return { ...view, mirrored };
}
