import type { LayoutFile, PlacedBlank } from '../../../src/layout/layout-file.ts';
import type { Ring } from '../../../src/geometry/point.ts';
import { boxOf, shiftRing } from '../../../src/geometry/point.ts';
import { mmRing } from '../../../src/layout/rings.ts';
import { documentOf, type SheetDocument } from '../../../src/desk/hand/document.ts';
import { sheetFrame, type SheetFrame } from '../../../src/desk/hand/sheet-frame.ts';
import { layoutWith, polygonDesign, rectangle } from '../../support/layouts.ts';
import { cartonRing } from '../../support/rings.ts';

export interface Laid {
  readonly layout: LayoutFile;
  readonly frame: SheetFrame;
  readonly document: SheetDocument;
}

export function laid(layout: LayoutFile, locked: readonly number[] = []): Laid {
  const frame = sheetFrame(layout);
  return { layout, frame, document: documentOf(layout, frame, locked) };
}

/** Rectangles of 100 × 60 mm on a sheet of 1000 × 700 with the file's usual rules: gap 6, bleed 3, 10 mm of margin. */
export function rectangles(placements: readonly PlacedBlank[], changes: Partial<LayoutFile> = {}): Laid {
  return laid(layoutWith([rectangle('card', 100, 60)], placements, { usable: { x: 10, y: 10, width: 980, height: 680 }, ...changes }));
}

/** A ring of whole micrometres as a design, its box at the origin. */
export function designOf(id: string, ring: Ring) {
  const { minX, minY } = boxOf(ring);
  return polygonDesign(id, mmRing(shiftRing(ring, { x: -minX, y: -minY })));
}

export function carton(pointsPerArc = 4) {
  return designOf('carton', cartonRing(pointsPerArc));
}

export function ids(...numbers: number[]): ReadonlySet<number> {
  return new Set(numbers);
}
