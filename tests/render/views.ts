import type { CurvePath } from '../../src/geometry/curve.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Turn } from '../../src/geometry/turn.ts';
import { circle, line, polyline } from '../../src/render/shapes.ts';
import type { DesignView, SheetView } from '../../src/render/sheet-view.ts';

/** Made-up sheets of many kinds for pictures and goldens. Millimetres. */
const points = (numbers: readonly number[]): Point[] => Array.from({ length: numbers.length / 2 }, (_, i) => ({ x: numbers[2 * i]!, y: numbers[2 * i + 1]! }));

/** Box grown by the bleed: near enough for a picture in a test. */
function bleedBox(ring: readonly Point[], bleed: number): Point[] {
  const xs = ring.map(({ x }) => x);
  const ys = ring.map(({ y }) => y);
  return points([Math.min(...xs) - bleed, Math.min(...ys) - bleed, Math.max(...xs) + bleed, Math.min(...ys) - bleed, Math.max(...xs) + bleed, Math.max(...ys) + bleed, Math.min(...xs) - bleed, Math.max(...ys) + bleed]);
}

/** A tuck carton: four panels of w, d, w, d with a glue flap at the left, flaps above and below, a window in the first panel. */
export function carton(w: number, d: number, h: number, withBleed = true): DesignView {
  const g = 12;
  const flap = d * 0.7;
  const tuck = d + 14;
  const [x0, x1, x2, x3, x4] = [g, g + w, g + w + d, g + 2 * w + d, g + 2 * w + 2 * d];
  const low = tuck;
  const high = tuck + h;
  const ring = points([
    0, low + 6, x0, low, x0, 0, x1, 0, x1, low, x1 + 3, low - flap, x2 - 3, low - flap, x2, low, x3, low, x3 + 3, low - flap, x4 - 3, low - flap, x4, low, x4, high, x4 - 3, high + flap,
    x3 + 3, high + flap, x3, high, x3, high + tuck, x2, high + tuck, x2, high, x2 - 3, high + flap, x1 + 3, high + flap, x1, high, x0, high, 0, high - 6,
  ]);
  const creases: CurvePath[] = [x0, x1, x2, x3].map((x) => line({ x, y: low }, { x, y: high }));
  creases.push(line({ x: x0, y: low }, { x: x4, y: low }), line({ x: x0, y: high }, { x: x4, y: high }), line({ x: x0, y: 14 }, { x: x1, y: 14 }), line({ x: x2, y: high + d }, { x: x3, y: high + d }));
  const window = circle({ x: (x0 + x1) / 2, y: low + h * 0.68 }, Math.min(w, h) * 0.2);
  const windowRing = Array.from({ length: 24 }, (_, i) => ({ x: (x0 + x1) / 2 + Math.min(w, h) * 0.2 * Math.cos((i / 12) * Math.PI), y: low + h * 0.68 + Math.min(w, h) * 0.2 * Math.sin((i / 12) * Math.PI) }));
  return {
    id: 'tea-carton',
    ring,
    openingRings: [windowRing],
    outline: polyline(ring, true),
    openings: [window],
    rules: creases.map((curves) => ({ role: 'Creasing', curves })),
    ...(withBleed ? { bleedOutline: bleedBox(ring, 3) } : {}),
  };
}

export function roundLabel(radius: number): DesignView {
  const ring = Array.from({ length: 48 }, (_, i) => ({ x: radius + radius * Math.cos((i / 24) * Math.PI), y: radius + radius * Math.sin((i / 24) * Math.PI) }));
  return { id: 'spice-round', ring, openingRings: [], outline: circle({ x: radius, y: radius }, radius), openings: [], rules: [] };
}

export interface GridOptions {
  readonly rows: number;
  readonly columns: number;
  readonly stepX: number;
  readonly stepY: number;
  readonly turned?: (row: number, column: number) => boolean;
  readonly shift?: number;
  /** Extra distance between the lower and the upper half of the rows. */
  readonly split?: number;
}

export function grid(design: DesignView, startX: number, startY: number, { rows, columns, stepX, stepY, turned, shift = 0, split = 0 }: GridOptions): SheetView['placements'] {
  const width = Math.max(...design.ring.map(({ x }) => x));
  const height = Math.max(...design.ring.map(({ y }) => y));
  return Array.from({ length: rows * columns }, (_, i) => {
    const row = Math.floor(i / columns);
    const column = i % columns;
    const turn: Turn = turned?.(row, column) ? 2 : 0;
    const x = startX + column * stepX + (row % 2) * shift;
    const y = startY + row * stepY + (row >= rows / 2 ? split : 0);
    return { design: 0, turn, x: turn === 2 ? x + width : x, y: turn === 2 ? y + height : y };
  });
}

export function sheetView(width: number, height: number, design: DesignView, placements: SheetView['placements'], more: Partial<SheetView> = {}): SheetView {
  const ups = placements.length;
  return {
    sheet: { width, height },
    usable: { x: 6, y: 13, width: width - 12, height: height - 23 },
    printable: { x: 3, y: 10, width: width - 6, height: height - 13 },
    lay: 'left',
    grain: 'x',
    keepOuts: [],
    designs: [design],
    placements,
    bleed: 3,
    figures: [
      { label: 'ups', value: String(ups) },
      { label: 'at most', value: `${ups + 2} (pockets)` },
      { label: 'yield', value: '66.0 %' },
      { label: 'sheet', value: `${width} × ${height} mm` },
      { label: 'gap', value: '6 mm' },
      { label: 'bleed', value: '3 mm' },
      { label: 'found by', value: 'every second row turned' },
      { label: 'design', value: design.id },
      { label: 'seed', value: '1' },
    ],
    ...more,
  };
}
