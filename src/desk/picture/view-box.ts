import type { Box } from '../../geometry/point.ts';

/** The part of a picture that is looked at: SVG's own axes, y down. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** All of a scene, whose y runs up. */
export function whole({ minX, minY, maxX, maxY }: Box): ViewBox {
  return { x: minX, y: -maxY, width: maxX - minX, height: maxY - minY };
}

/** Nearer by `factor` about a point that stays where it is. */
export function zoomed({ x, y, width, height }: ViewBox, factor: number, at: { readonly x: number; readonly y: number }): ViewBox {
  return { x: at.x - (at.x - x) / factor, y: at.y - (at.y - y) / factor, width: width / factor, height: height / factor };
}

export function moved(view: ViewBox, dx: number, dy: number): ViewBox {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/** A place in the middle, so near that `mm` are seen of the width. */
export function around({ x, y }: { readonly x: number; readonly y: number }, mm: number, { width, height }: ViewBox): ViewBox {
  const tall = (mm * height) / width;
  return { x: x - mm / 2, y: y - tall / 2, width: mm, height: tall };
}

export function viewBoxText({ x, y, width, height }: ViewBox): string {
  return `${x} ${y} ${width} ${height}`;
}
