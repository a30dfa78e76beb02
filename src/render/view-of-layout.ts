import { inputError } from '../base/issue.ts';
import { toMicrons } from '../base/units.ts';
import { OTHER_ROLES, STRUCTURAL_ROLES, type Role } from '../dieline/dieline.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { growPolygon } from '../geometry/offset.ts';
import { readPathData } from '../geometry/path-data.ts';
import type { Point } from '../geometry/point.ts';
import { turnOfDegrees } from '../geometry/turn.ts';
import { between } from '../geometry/vector.ts';
import type { Design, LayoutFile, MmRing } from '../layout/layout-file.ts';
import { micronRing, mmRing } from '../layout/rings.ts';
import { squaredDistance } from './label-place.ts';
import { polyline } from './shapes.ts';
import type { DesignView, SheetView } from './sheet-view.ts';

/** A rule whose points all lie so near to the outline is the outline, mm: twice the flattening of outlines and a little. */
const ON_OUTLINE_MM = 0.05;

/** How far a drawn bleed line may stand out at round corners, µm: less than the line is wide. */
const BLEED_TOLERANCE = 20;

/** What the picture needs besides the layout file. */
export interface ViewExtras {
  readonly grain?: 'x' | 'y' | undefined;
  readonly figures: SheetView['figures'];
  /** Places of faults, as the judge gives them. */
  readonly faults?: readonly (readonly [number, number])[];
}

/** The view of a layout file. Throws an InputError where a placement or a path in it cannot be drawn. */
export function viewOfLayout(layout: LayoutFile, { grain, figures, faults }: ViewExtras): SheetView {
  const index = new Map(layout.designs.map(({ id }, i) => [id, i]));
  return {
    sheet: layout.sheet,
    usable: layout.usable,
    printable: layout.printable,
    lay: layout.lay,
    ...(layout.result?.['lengthMm'] !== undefined && { fromReel: true }),
    ...(grain && { grain }),
    keepOuts: layout.keepOut.map(({ kind, ring }) => ({ kind, ring: points(ring) })),
    designs: layout.designs.map((design) => designView(design, layout.rules.bleed)),
    placements: layout.placements.map(({ design, rotation, x, y }, number) => {
      const known = index.get(design);
      const turn = turnOfDegrees(rotation);
      if (known === undefined) throw inputError('design-unknown', { where: `placements[${number}]`, facts: { design } });
      if (turn === undefined) throw inputError('rotation-not-quarter', { where: `placements[${number}]`, facts: { rotation } });
      return { design: known, turn, x, y };
    }),
    bleed: layout.rules.bleed,
    ...(faults && { faults: points(faults) }),
    figures,
  };
}

function designView({ id, outline, openings, drawing }: Design, bleed: number): DesignView {
  const ring = points(outline);
  const openingRings = openings.map(points);
  const edges = [ring, ...openingRings];
  const trueLoops = drawing?.openings?.flatMap(readPathData);
  return {
    id,
    ...(bleed > 0 && { bleedOutline: bleedOutline(outline, bleed) }),
    ring,
    openingRings,
    outline: (drawing?.outline === undefined ? undefined : readPathData(drawing.outline)[0]) ?? polyline(ring, true),
    openings: trueLoops ?? openingRings.map((opening) => polyline(opening, true)),
    rules: (drawing?.paths ?? []).flatMap(({ role, d }) => readPathData(d).filter((curves) => !isOnOutline(curves, edges)).map((curves) => ({ role: knownRole(role), curves }))),
  };
}

function bleedOutline(outline: MmRing, bleed: number): Point[] {
  const { polygon } = growPolygon({ outer: micronRing(outline), holes: [] }, toMicrons(bleed), BLEED_TOLERANCE);
  return points(mmRing(polygon.outer));
}

/** True for the lines that make up the outline and the openings, which are drawn as whole loops. */
function isOnOutline(curves: CurvePath, rings: readonly (readonly Point[])[]): boolean {
  const points = flattenPath(curves, ON_OUTLINE_MM);
  // A crease from edge to edge has only its ends on the outline: the middles decide.
  const middles = points.slice(1).map((point, i) => between(points[i]!, point, 0.5));
  return [...points, ...middles].every((point) =>
    rings.some((ring) => ring.some((from, i) => squaredDistance(point, [from, ring[(i + 1) % ring.length]!]) <= ON_OUTLINE_MM ** 2)),
  );
}

function knownRole(role: string): Role {
  return [...STRUCTURAL_ROLES, ...OTHER_ROLES].find((known) => known === role) ?? 'Unknown';
}

function points(ring: MmRing): Point[] {
  return ring.map(([x, y]) => ({ x, y }));
}
