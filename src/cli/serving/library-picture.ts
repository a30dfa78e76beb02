import { InputError } from '../../base/issue.ts';
import { toMillimetres } from '../../base/units.ts';
import { readLayoutFile, type LayoutFile, type MmPoint, type MmRing } from '../../layout/layout-file.ts';
import type { Library } from '../../shop/library/open-library.ts';
import type { Entry } from '../../shop/library/records.ts';
import { shapeNamed } from '../../shop/library/shapes.ts';
import { MOST_POINTS_DRAWN, type LibraryPicture } from '../../wire/library.ts';

/** Points of one outline in a small picture. */
const MOST_POINTS_OF_RING = 300;

/** The outline of a carton or die, the sheet of a layout; small, so that a page of them is quickly there. */
export function pictureOf(library: Library, { kind, id, content }: Entry): LibraryPicture | undefined {
  if (kind === 'carton' || kind === 'die') {
    const shape = shapeNamed(library, kind, id);
    return shape && outlinePicture(shape.outline.map(({ x, y }): MmPoint => [toMillimetres(x), toMillimetres(y)]));
  }
  return kind === 'layout' ? layoutPicture(content, id) : undefined;
}

function outlinePicture(outline: MmRing): LibraryPicture {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const ring = thinned(outline, MOST_POINTS_OF_RING).map(([x, y]): [number, number] => [rounded(x - left), rounded(y - low)]);
  return { width: rounded(Math.max(...xs) - left), height: rounded(Math.max(...ys) - low), sheet: false, rings: [ring] };
}

function layoutPicture(content: unknown, where: string): LibraryPicture | undefined {
  let layout: LayoutFile;
  try {
    layout = readLayoutFile(content, where);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
  const { sheet, designs, placements } = layout;
  const shown = placements.slice(0, MOST_POINTS_DRAWN / 4);
  const each = Math.max(4, Math.floor(MOST_POINTS_DRAWN / Math.max(1, shown.length)));
  const rings = new Map(designs.map(({ id, outline }) => [id, thinned(outline, Math.min(each, MOST_POINTS_OF_RING))]));
  return { width: sheet.width, height: sheet.height, sheet: true, rings: shown.map(({ design, rotation, x, y }) => (rings.get(design) ?? []).map((point) => placed(point, rotation, x, y))) };
}

function placed([px, py]: MmPoint, rotation: number, x: number, y: number): [number, number] {
  const [cos, sin] = [[1, 0], [0, 1], [-1, 0], [0, -1]][((rotation / 90) % 4 + 4) % 4] ?? [1, 0];
  return [rounded(px * cos! - py * sin! + x), rounded(px * sin! + py * cos! + y)];
}

/** Every so manieth point: good enough for the size of a thumb. */
function thinned(ring: MmRing, most: number): MmRing {
  const step = Math.max(1, Math.ceil(ring.length / most));
  return ring.filter((_, index) => index % step === 0);
}

function rounded(mm: number): number {
  return Math.round(mm * 10) / 10;
}
