import { mapPath, reversePath, type Affine } from '../geometry/affine.ts';
import { readPathData, writePathData } from '../geometry/path-data.ts';
import { boxOf, type Point } from '../geometry/point.ts';
import { turnOfDegrees, turnPoint } from '../geometry/turn.ts';
import { backUpPlace, backUpRotation, isTumbled, type WorkStyle } from './back-up.ts';
import type { Design, LayoutFile, MmArea, MmPoint, MmRing } from './layout-file.ts';

/** Decimals of curves in a layout file. */
const CURVE_DECIMALS = 4;

/**
 * The sheet as its back is printed, y = 0 being the edge that is then gripped: every design mirrored left to right in its
 * own box, every station where it backs up, numbered as on the front. Designs must be known and rotations quarter turns,
 * as the judge has seen to.
 */
export function backLayout(layout: LayoutFile, style: WorkStyle): LayoutFile {
  const { sheet, usable, printable, lay, keepOut, designs, placements } = layout;
  const point = ([x, y]: MmPoint): MmPoint => {
    const back = backUpPlace({ x, y }, sheet, style);
    return [millimetres(back.x), millimetres(back.y)];
  };
  const area = ({ x, y, width, height }: MmArea): MmArea => {
    const [a, b] = [point([x, y]), point([x + width, y + height])];
    return { x: Math.min(a[0], b[0]), y: Math.min(a[1], b[1]), width, height };
  };
  const widths = new Map(designs.map(({ id, outline }) => [id, boxOf(outline.map(asPoint)).maxX]));
  return {
    ...layout,
    usable: area(usable),
    printable: area(printable),
    lay: isTumbled(style) ? lay : lay === 'left' ? 'right' : 'left',
    keepOut: keepOut.map(({ kind, ring }) => ({ kind, ring: ring.map(point).toReversed() })),
    designs: designs.map((design) => mirrored(design, widths.get(design.id)!, style)),
    placements: placements.map(({ design, rotation, x, y }) => {
      // The mirrored design's origin is the lower right corner of the design's box.
      const corner = turnPoint({ x: widths.get(design)!, y: 0 }, turnOfDegrees(rotation)!);
      const [backX, backY] = point([x + corner.x, y + corner.y]);
      return { design, rotation: backUpRotation(rotation, style), x: backX, y: backY };
    }),
  };
}

function mirrored(design: Design, width: number, style: WorkStyle): Design {
  const map: Affine = { a: -1, b: 0, c: 0, d: 1, e: width, f: 0 };
  const ring = (points: MmRing): MmRing => points.map(([x, y]): MmPoint => [millimetres(width - x), y]).toReversed();
  const data = (d: string, turn: typeof reversePath = (path) => path) => readPathData(d).map((path) => writePathData(mapPath(map, turn(path)), CURVE_DECIMALS)).join(' ');
  const { drawing } = design;
  return {
    ...design,
    outline: ring(design.outline),
    openings: design.openings.map(ring),
    rotations: design.rotations.map((rotation) => backUpRotation(rotation, style)),
    ...(drawing && {
      drawing: {
        ...drawing,
        ...(drawing.outline !== undefined && { outline: data(drawing.outline, reversePath) }),
        ...(drawing.openings && { openings: drawing.openings.map((d) => data(d, reversePath)) }),
        paths: drawing.paths.map(({ role, d }) => ({ role, d: data(d) })),
      },
    }),
  };
}

function asPoint([x, y]: MmPoint): Point {
  return { x, y };
}

/** Sums of lengths with three decimals have three. */
function millimetres(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}
