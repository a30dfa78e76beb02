import { MICRONS_PER_MM, toMicrons } from '../base/units.ts';
import { boxOf, type Box, type Point, type Ring } from '../geometry/point.ts';
import { between, distanceBetween, dot, minus } from '../geometry/vector.ts';
import { middleOf, type Arrangement } from './arrangement.ts';
import { outerCycles, type Cycle } from './cycles.ts';
import type { Drawing, DrawnLine } from './drawing.ts';
import { createOutlineFinder, nest, type Outline } from './outline.ts';
import { LEAST_BLANK_AREA_MM2 } from './tolerances.ts';

export interface FrameSearch extends Pick<Drawing, 'texts' | 'page'> {
  readonly graph: Arrangement;
  /** The graph's lines. */
  readonly lines: readonly DrawnLine[];
  /** Whether nothing is known of a line, so that it may be no rule. */
  readonly isOpen: (line: number) => boolean;
  readonly kindOf: (line: number) => string;
}

/**
 * Lines of sheet frames, title blocks and register marks that no name gives away. A rectangle round other loops that it
 * touches nowhere is a frame when it has the size of paper, when a title block hangs on it, when what it holds is built
 * like a blank (several faces, or lines within), when it keeps one margin all round its page and is drawn otherwise than what it holds, or
 * when it holds a frame. Any other rectangle round plain loops stays a blank with openings. Register marks are told by
 * their shape even on a layer of cut lines.
 */
export function findFrames(search: FrameSearch): Set<number> {
  const loops = nestLoops(search);
  const found = new Set<number>();
  const leaveOut = ({ edges }: Loop) => edges.forEach((edge) => search.graph.covers[edge].forEach(({ line }) => found.add(line)));
  const frames = new Set<Loop>();
  // Smallest first, so that what a frame holds is settled before it.
  for (const loop of loops.toReversed()) if (loop.open && isFrame(search, loop, frames)) frames.add(loop);
  frames.forEach(leaveOut);
  const outermost = loops.filter((loop) => !frames.has(loop) && (!loop.holder || frames.has(loop.holder)));
  const largest = outermost.reduce((area, { outline }) => Math.max(area, outline.cycle.area), 0);
  for (const loop of outermost) if (isRegisterMark(search, loop) || (loop.open && isTitleBlock(search, loop, largest))) leaveOut(loop);
  return found;
}

/** A loop of lines, the loops directly within it, and the lines joined to it. */
interface Loop {
  readonly outline: Outline;
  /** Edges of the connected part it bounds. */
  readonly edges: readonly number[];
  /** Faces of that part beyond the first. */
  readonly inner: number;
  readonly open: boolean;
  holder: Loop | undefined;
  readonly holds: Loop[];
  /** Lines lie loose in it, such as creases that end short of the knife. */
  looseWithin: boolean;
}

/** Largest first. */
function nestLoops({ graph, isOpen }: FrameSearch): Loop[] {
  const { cycles, core, inner } = outerCycles(graph, () => true);
  const edges = edgesOfParts(graph, core, cycles, inner.length);
  const open = edges.map((list) => list.every((edge) => graph.covers[edge].every(({ line }) => isOpen(line))));
  const { loops: outlines, holders } = nest(cycles.filter(({ area }) => area >= LEAST_BLANK_AREA_MM2 * MICRONS_PER_MM ** 2));
  const loops = outlines.map((outline): Loop => {
    const { part } = outline.cycle;
    return { outline, edges: edges[part], inner: inner[part], open: open[part], holder: undefined, holds: [], looseWithin: false };
  });
  loops.forEach((loop, i) => {
    if (holders[i] < 0) return;
    loop.holder = loops[holders[i]];
    loop.holder.holds.push(loop);
  });
  markLooseWithin(graph, core, loops.filter(({ holds, outline }) => holds.length > 0 && isRectangle(outline.cycle.ring)));
  return loops;
}

function markLooseWithin(graph: Arrangement, core: Uint8Array, rectangles: readonly Loop[]): void {
  for (const { holds } of rectangles) {
    const locate = createOutlineFinder(holds.map(({ outline }) => outline));
    core.forEach((isCore, edge) => {
      const at = isCore ? undefined : locate(middleOf(graph, edge));
      if (at?.place === 'inside') holds[at.outline].looseWithin = true;
    });
  }
}

function edgesOfParts({ edges, edgesAt }: Arrangement, core: Uint8Array, cycles: readonly Cycle[], parts: number): number[][] {
  const partOf = new Int32Array(edgesAt.length).fill(-1);
  for (const { steps, part } of cycles) {
    const open = [steps[0].from];
    while (open.length > 0) {
      const vertex = open.pop()!;
      if (partOf[vertex] >= 0) continue;
      partOf[vertex] = part;
      for (const edge of edgesAt[vertex]) if (core[edge]) open.push(...edges[edge]);
    }
  }
  const lists: number[][] = Array.from({ length: parts }, () => []);
  core.forEach((isCore, edge) => isCore && lists[partOf[edges[edge][0]]].push(edge));
  return lists;
}

/** What a frame holds takes at least this part of its box; a smaller loop is a hole. */
const LEAST_SHARE = 0.02;
/** Something built like a blank takes at least this part; a drawing of a detail, a logo less. */
const LEAST_SHARE_BUILT = 0.1;
/** If it is a rectangle itself, more: it could be a table printed on a label. */
const LEAST_SHARE_TABLE = 0.25;
/** A title block keeps to a corner or a side of the frame and takes at most this part of its box. */
const LARGEST_TITLE_BLOCK = 0.4;

function isFrame(search: FrameSearch, loop: Loop, frames: ReadonlySet<Loop>): boolean {
  const { outline, inner, holds } = loop;
  if (holds.length === 0 || !isRectangle(outline.cycle.ring)) return false;
  if (inner > 0 && share(innerBox(search.graph, loop), outline.box) > LARGEST_TITLE_BLOCK) return false;
  if (holds.some((held) => frames.has(held))) return true;
  const isPaper = isPaperSize(outline.box) || isPageMargin(outline.box, search.page);
  return holds.some((held) => {
    const part = share(held.outline.box, outline.box);
    if (isPaper || inner > 0) return part >= LEAST_SHARE;
    if (isPageBorder(search, loop, held)) return part >= LEAST_SHARE_BUILT;
    return (held.inner > 0 || held.looseWithin) && part >= (isRectangle(held.outline.cycle.ring) ? LEAST_SHARE_TABLE : LEAST_SHARE_BUILT);
  });
}

/** Every vertex on the box, and one in each of its corners. */
function isRectangle(ring: Ring): boolean {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const near = (a: number, b: number) => Math.abs(a - b) <= SQUARENESS;
  const corners = [[minX, minY], [maxX, minY], [maxX, maxY], [minX, maxY]];
  return (
    ring.every(({ x, y }) => near(x, minX) || near(x, maxX) || near(y, minY) || near(y, maxY)) &&
    corners.every(([cx, cy]) => ring.some(({ x, y }) => near(x, cx) && near(y, cy)))
  );
}

/** Rectangles are drawn with rounded corners' coordinates, µm. */
const SQUARENESS = 20;

/** Box of the lines within a loop that are joined to it. */
function innerBox({ edges, vertices: { x, y } }: Arrangement, { edges: own, outline }: Loop): Box {
  const onOutline = new Set(outline.cycle.steps.map(({ edge }) => edge));
  return boxOf(own.filter((edge) => !onOutline.has(edge)).flatMap((edge) => edges[edge].map((vertex) => ({ x: x[vertex], y: y[vertex] }))));
}

function share(inner: Box, outer: Box): number {
  const area = ({ minX, minY, maxX, maxY }: Box) => (maxX - minX) * (maxY - minY);
  return area(inner) / area(outer);
}

/** ISO 216 A and B series from 0 to 6, and the North American sheets, mm. */
const PAPER_SIZES: readonly (readonly [number, number])[] = [
  [841, 1189], [594, 841], [420, 594], [297, 420], [210, 297], [148, 210], [105, 148],
  [1000, 1414], [707, 1000], [500, 707], [353, 500], [250, 353], [176, 250], [125, 176],
  [215.9, 279.4], [215.9, 355.6], [279.4, 431.8], [431.8, 558.8], [558.8, 863.6],
];

/** Paper is cut to 1 or 2 mm; drawn frames of its size are exact. */
const PAPER_TOLERANCE_MM = 0.5;

function isPaper(width: number, height: number): boolean {
  const [short, long] = [Math.min(width, height), Math.max(width, height)];
  return PAPER_SIZES.some(([a, b]) => Math.abs(short - a) <= PAPER_TOLERANCE_MM && Math.abs(long - b) <= PAPER_TOLERANCE_MM);
}

function isPaperSize({ minX, minY, maxX, maxY }: Box): boolean {
  return isPaper((maxX - minX) / MICRONS_PER_MM, (maxY - minY) / MICRONS_PER_MM);
}

/** Margins of a frame on a sheet of paper: ISO 5457 has 20 mm at the left and 10 mm elsewhere. */
const NARROWEST_MARGIN = toMicrons(2);
const WIDEST_MARGIN = toMicrons(30);

/** Whether the box keeps a margin all round on a page of paper size. */
function isPageMargin(box: Box, page: Drawing['page']): boolean {
  if (!page || !isPaper(page.width, page.height)) return false;
  const margins = [box.minX, toMicrons(page.width) - box.maxX, box.minY + toMicrons(page.height), -box.maxY];
  return margins.every((margin) => margin >= NARROWEST_MARGIN && margin <= WIDEST_MARGIN);
}

/** Whether a rectangle keeps the same margin all round the page, but not round the loop it holds, and is of another kind of line. */
function isPageBorder({ graph, kindOf, page }: FrameSearch, { outline: { box }, edges }: Loop, held: Loop): boolean {
  if (!page) return false;
  const whole = { minX: 0, minY: -toMicrons(page.height), maxX: toMicrons(page.width), maxY: 0 };
  if (!isEvenMargin(whole, box) || isEvenMargin(box, held.outline.box)) return false;
  const kindsOf = (list: readonly number[]) => list.flatMap((edge) => graph.covers[edge].map(({ line }) => kindOf(line)));
  const own = new Set(kindsOf(edges));
  return kindsOf(held.edges).every((kind) => !own.has(kind));
}

function isEvenMargin(outer: Box, inner: Box): boolean {
  const margins = [inner.minX - outer.minX, inner.minY - outer.minY, outer.maxX - inner.maxX, outer.maxY - inner.maxY];
  return margins.every((margin) => margin > 0 && Math.abs(margin - margins[0]) <= EVEN_MARGIN);
}

/** Margins are drawn by numbers, µm. */
const EVEN_MARGIN = 100;

/** Register marks are up to this large, mm. */
const LARGEST_MARK_MM = 25;
/** Their lines cross in the middle within this, mm. */
const MARK_CENTRE_MM = 0.3;

/** A small loop with two lines square to each other crossing in its middle. */
function isRegisterMark({ graph, lines }: FrameSearch, { outline: { box }, edges }: Loop): boolean {
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY) / MICRONS_PER_MM;
  if (size > LARGEST_MARK_MM) return false;
  const centre = { x: (box.minX + box.maxX) / 2 / MICRONS_PER_MM, y: (box.minY + box.maxY) / 2 / MICRONS_PER_MM };
  const joined = new Set(edges.flatMap((edge) => graph.covers[edge].map(({ line }) => line)));
  const crossing = [...joined].flatMap((line): Point[] => {
    const { curves: [curve], closed } = lines[line];
    const middle = between(curve.from, curve.to, 0.5);
    return curve.kind === 'line' && !closed && distanceBetween(middle, centre) <= MARK_CENTRE_MM ? [minus(curve.to, curve.from)] : [];
  });
  return crossing.some((u) => crossing.some((v) => Math.abs(dot(u, v)) < 0.01 * Math.max(dot(u, u), dot(v, v)) && u !== v));
}

/** Words of title blocks; the numbers and names beside them differ. */
const TITLE_WORDS = /\b(scale|drawn|date|drawing (no|number)|customer|client|revision|rev\.?|ma(ss|ß)stab|datum|gezeichnet|kunde|zeichnungs?-?n(r|ummer)|benennung|[ée]chelle|dessin[ée]|escala|fecha|cliente|dibujado|scala|data|disegnato)\b/i;

/** Share of the largest loop's area that a title block of its own stays below. */
const LARGEST_LOOSE_TITLE_BLOCK = 0.35;

function isTitleBlock({ texts }: FrameSearch, { outline, inner }: Loop, largest: number): boolean {
  if (outline.cycle.area > LARGEST_LOOSE_TITLE_BLOCK * largest || !isRectangle(outline.cycle.ring)) return false;
  const inside = texts.filter(({ place: { x, y } }) => outline.locator.locate({ x: toMicrons(x), y: toMicrons(y) }) === 'inside');
  return inside.some(({ content }) => TITLE_WORDS.test(content)) || (inner > 0 && inside.length >= 3);
}
