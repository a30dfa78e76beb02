import type { NoFit } from './no-fit.ts';
import { fromLowest } from './minkowski.ts';
import { forbids } from './no-fit.ts';
import type { Point, Ring } from './point.ts';
import { doubleArea } from './point.ts';
import { cross } from './vector.ts';
import { withoutStraights } from './without-straights.ts';

/**
 * The boundary of the forbidden shifts at gap 0. Corners where edges cross are rounded to whole micrometres, by at most
 * 0.71 µm; corners that are sums of two outline corners are exact. Pockets and slits narrower than the rounding may come
 * out with no area or be left out, but a single free whole shift is always told: on a ring, on a slit or as a point.
 */
export interface NoFitOutline {
  /** Counter-clockwise. It may touch itself where forbidden shifts meet in one point. */
  readonly outer: Ring;
  /** Free pockets of some width, clockwise: shifts that stand free and enclosed, or between arms. */
  readonly pockets: readonly Ring[];
  /** Free shifts along a line with forbidden ones on both sides. Ends on whole shifts inside for axis-parallel ones. */
  readonly slits: readonly (readonly [Point, Point])[];
  /** Free whole shifts with forbidden ones all round. */
  readonly points: readonly Point[];
}

export function noFitOutline(noFit: NoFit): NoFitOutline {
  const { boundary, slits } = boundaryAndSlits(straightPieces(noFit));
  const loops = traceLoops(boundary);
  const wide = loops.filter((loop) => doubleArea(loop) !== 0);
  const flat = loops.filter((loop) => doubleArea(loop) === 0).flat();
  const outer = wide.reduce((largest, loop) => (doubleArea(loop) > doubleArea(largest) ? loop : largest));
  return {
    outer,
    pockets: wide.filter((loop) => loop !== outer),
    slits: slits.map(inwardEnds),
    points: freePoints(noFit, flat),
  };
}

/** An edge of the boundary: ends in doubles, exact direction of the contact edge that it is part of; overlap on its left. */
interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly direction: Point;
}

/** Ends nearer than this, µm, are one: they are quotients of exact numbers computed along different edges, off by 2⁻²⁷ at most. */
const SAME_END = 2 ** -10;

function straightPieces({ edges, pieces }: NoFit): Edge[] {
  const straight: Edge[] = [];
  for (const { segment, from, to } of pieces) {
    if (from === to) continue;
    const x = edges.x0[segment];
    const y = edges.y0[segment];
    const direction = { x: edges.x1[segment] - x, y: edges.y1[segment] - y };
    const at = (t: number) => ({ x: x + t * direction.x, y: y + t * direction.y });
    straight.push({ from: at(from), to: at(to), direction });
  }
  return straight;
}

/** Pieces on one line laid together: where they run one way only they are boundary, where both ways a slit. */
function boundaryAndSlits(pieces: readonly Edge[]): { boundary: Edge[]; slits: Edge[] } {
  const lines = new Map<string, Edge[]>();
  for (const piece of pieces) {
    const key = lineKey(piece);
    const line = lines.get(key);
    if (line) line.push(piece);
    else lines.set(key, [piece]);
  }
  const boundary: Edge[] = [];
  const slits: Edge[] = [];
  for (const line of lines.values()) {
    if (line.length === 1) boundary.push(line[0]);
    else layTogether(line, boundary, slits);
  }
  return { boundary, slits };
}

/** The same for all edges on one line, whichever way they run; exact. */
function lineKey({ direction, from }: Edge): string {
  const divisor = commonDivisor(Math.abs(direction.x), Math.abs(direction.y)) * (isForward(direction) ? 1 : -1);
  const dx = direction.x / divisor;
  const dy = direction.y / divisor;
  // The offset is whole, and `from` lies on the line to within a small part of a micrometre: rounding restores it.
  return `${dx},${dy},${Math.round(dx * from.y - dy * from.x)}`;
}

function isForward({ x, y }: Point): boolean {
  return x > 0 || (x === 0 && y > 0);
}

function commonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

function layTogether(line: readonly Edge[], boundary: Edge[], slits: Edge[]): void {
  const { direction } = line[0];
  const position = Math.abs(direction.x) >= Math.abs(direction.y) ? (p: Point) => p.x : (p: Point) => p.y;
  const spans = line.map((edge) => {
    const [low, high] = position(edge.from) < position(edge.to) ? [edge.from, edge.to] : [edge.to, edge.from];
    return { low, high, ascends: low === edge.from, direction: edge.direction };
  });
  const stops = distinctStops(spans.flatMap(({ low, high }) => [low, high]), position);
  let open: { edge: Edge; kind: 'up' | 'down' | 'slit' } | undefined;
  const close = () => {
    if (!open) return;
    if (open.kind === 'slit') slits.push(open.edge);
    else boundary.push(open.kind === 'up' ? open.edge : { from: open.edge.to, to: open.edge.from, direction: open.edge.direction });
    open = undefined;
  };
  for (let i = 0; i + 1 < stops.length; i++) {
    const middle = (position(stops[i]) + position(stops[i + 1])) / 2;
    const here = spans.filter((span) => position(span.low) < middle && position(span.high) > middle);
    const up = here.find((span) => span.ascends);
    const down = here.find((span) => !span.ascends);
    const kind = up && down ? 'slit' : up ? 'up' : down ? 'down' : undefined;
    if (open && open.kind === kind) {
      open.edge = { ...open.edge, to: stops[i + 1] };
      continue;
    }
    close();
    if (kind) open = { edge: { from: stops[i], to: stops[i + 1], direction: (up ?? down)!.direction }, kind };
  }
  close();
}

function distinctStops(points: Point[], position: (p: Point) => number): Point[] {
  points.sort((p, q) => position(p) - position(q));
  return points.filter((p, i) => i === 0 || position(p) - position(points[i - 1]) > SAME_END);
}

/** Closed loops of the boundary edges, overlap on the left, the free side of each corner followed round. */
function traceLoops(boundary: readonly Edge[]): Ring[] {
  const { vertexOf, places } = joinEnds(boundary);
  const leaving = places.map((): number[] => []);
  const isLoop = (edge: number) => vertexOf[2 * edge] === vertexOf[2 * edge + 1];
  boundary.forEach((_, edge) => {
    if (!isLoop(edge)) leaving[vertexOf[2 * edge]].push(edge);
  });
  const used = boundary.map((_, edge) => isLoop(edge));
  const loops: Ring[] = [];
  boundary.forEach((_, first) => {
    if (used[first]) return;
    const loop: Point[] = [];
    let before = boundary[first].direction;
    for (let edge = first; !used[edge]; ) {
      used[edge] = true;
      const { direction } = boundary[edge];
      const corner = places[vertexOf[2 * edge]];
      if (loop.length === 0 || cross(before, direction) !== 0) loop.push(corner);
      before = direction;
      edge = nextEdge(boundary, edge, leaving[vertexOf[2 * edge + 1]]);
    }
    loops.push(fromLowest(withoutStraights(loop)));
  });
  return loops;
}

/** Numbers the ends of the edges, equal ones alike: end 2k starts edge k, end 2k + 1 ends it. Places are rounded. */
function joinEnds(edges: readonly Edge[]): { vertexOf: Int32Array; places: Point[] } {
  const ends = edges.flatMap(({ from, to }) => [from, to]);
  const order = ends.map((_, i) => i).sort((i, j) => ends[i].x - ends[j].x || ends[i].y - ends[j].y);
  const vertexOf = new Int32Array(ends.length).fill(-1);
  const places: Point[] = [];
  let window = 0;
  order.forEach((end, at) => {
    const { x, y } = ends[end];
    while (x - ends[order[window]].x > SAME_END) window++;
    for (let k = at - 1; k >= window && vertexOf[end] === -1; k--) {
      if (Math.abs(ends[order[k]].y - y) <= SAME_END) vertexOf[end] = vertexOf[order[k]];
    }
    if (vertexOf[end] === -1) vertexOf[end] = places.push({ x: Math.round(x) + 0, y: Math.round(y) + 0 }) - 1;
  });
  return { vertexOf, places };
}

/** Of the edges leaving a corner, the first one counter-clockwise from the way back: between the two lies free space. */
function nextEdge(boundary: readonly Edge[], arriving: number, leaving: readonly number[]): number {
  if (leaving.length === 0) throw new Error('The boundary of a no-fit polygon does not close.');
  const { x, y } = boundary[arriving].direction;
  const turnOf = (edge: number) => {
    const { direction } = boundary[edge];
    return { along: -x * direction.x - y * direction.y, left: -x * direction.y + y * direction.x };
  };
  return leaving.reduce((best, edge) => (isEarlier(turnOf(edge), turnOf(best)) ? edge : best));
}

/** Compares two directions given by their parts along and left of the way back, by angle in (0, 2π]. */
function isEarlier(a: { along: number; left: number }, b: { along: number; left: number }): boolean {
  const half = (t: { along: number; left: number }) => (t.left > 0 ? 0 : t.left === 0 && t.along < 0 ? 1 : t.left < 0 ? 2 : 3);
  if (half(a) !== half(b)) return half(a) < half(b);
  return a.along * b.left - a.left * b.along > 0;
}

function inwardEnds({ from, to, direction }: Edge): readonly [Point, Point] {
  if (direction.x !== 0 && direction.y !== 0) return [rounded(from), rounded(to)];
  const [low, high] = from.x + from.y <= to.x + to.y ? [from, to] : [to, from];
  return [
    { x: Math.ceil(low.x) + 0, y: Math.ceil(low.y) + 0 },
    { x: Math.floor(high.x) + 0, y: Math.floor(high.y) + 0 },
  ];
}

function rounded({ x, y }: Point): Point {
  return { x: Math.round(x) + 0, y: Math.round(y) + 0 };
}

/** Free whole shifts that no piece of any length passes through: single points of the pieces, and pockets with no area left. */
function freePoints(noFit: NoFit, flat: readonly Point[]): Point[] {
  const { edges, pieces } = noFit;
  const found = new Map<string, Point>();
  const consider = (p: Point) => {
    if (!forbids({ ...noFit, gap: 0 }, p.x, p.y)) found.set(`${p.x},${p.y}`, p);
  };
  for (const { segment, from, to } of pieces) {
    if (from !== to) continue;
    const x = edges.x0[segment];
    const y = edges.y0[segment];
    consider(rounded({ x: x + from * (edges.x1[segment] - x), y: y + from * (edges.y1[segment] - y) }));
  }
  const single = [...found.values()].filter((p) => !pieces.some((piece) => piece.from < piece.to && passesThrough(noFit, piece, p)));
  found.clear();
  flat.forEach(consider);
  return [...single, ...found.values()];
}

function passesThrough({ edges }: NoFit, { segment, from, to }: NoFit['pieces'][number], p: Point): boolean {
  const dx = edges.x1[segment] - edges.x0[segment];
  const dy = edges.y1[segment] - edges.y0[segment];
  const ux = p.x - edges.x0[segment];
  const uy = p.y - edges.y0[segment];
  if (dx * uy !== dy * ux) return false;
  const t = Math.abs(dx) >= Math.abs(dy) ? ux / dx : uy / dy;
  return t >= from && t <= to;
}
