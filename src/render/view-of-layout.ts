import type { Role } from '../dieline/dieline.ts';
import { readPathData } from '../geometry/path-data.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { turnOfDegrees } from '../geometry/turn.ts';
import type { Design, LayoutFile, MmRing } from '../layout/layout-file.ts';
import type { DesignView, SheetView } from './sheet-view.ts';

/** What a layout file does not say about its sheet. */
export interface ViewExtras {
  readonly grain?: 'x' | 'y' | undefined;
  /** Cells of the title block. */
  readonly figures: SheetView['figures'];
}

/** The picture's view of a layout file whose designs and rotations are known to be right (it was judged). */
export function viewOfLayout(layout: LayoutFile, { grain, figures }: ViewExtras): SheetView {
  const { sheet, usable, printable, lay, keepOut, designs, placements, rules } = layout;
  const index = new Map(designs.map((design, i) => [design.id, i]));
  return {
    sheet,
    usable,
    printable,
    lay,
    ...(grain && { grain }),
    keepOuts: keepOut.map(({ kind, ring }) => ({ kind, ring: points(ring) })),
    designs: designs.map(designView),
    placements: placements.map(({ design, rotation, x, y }) => ({ design: index.get(design)!, turn: turnOfDegrees(rotation)!, x, y })),
    bleed: rules.bleed,
    figures,
  };
}

function designView({ id, outline, openings, drawing }: Design): DesignView {
  const ring = points(outline);
  const openingRings = openings.map(points);
  return {
    id,
    ring,
    openingRings,
    outline: drawing?.outline === undefined ? polygonPath(ring) : firstPath(drawing.outline),
    openings: drawing?.openings?.map(firstPath) ?? openingRings.map(polygonPath),
    rules: drawing?.paths.flatMap(({ role, d }) => readPathData(d).map((curves) => ({ role: role as Role, curves }))) ?? [],
  };
}

function points(ring: MmRing): { x: number; y: number }[] {
  return ring.map(([x, y]) => ({ x, y }));
}

function firstPath(data: string): CurvePath {
  return readPathData(data)[0] ?? [];
}

function polygonPath(ring: readonly { x: number; y: number }[]): CurvePath {
  return ring.map((from, i) => ({ kind: 'line', from, to: ring[(i + 1) % ring.length]! }));
}
