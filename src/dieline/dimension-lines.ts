import Flatbush from 'flatbush';
import { parseLengthMm } from '../base/units.ts';
import { boxOf, type Point } from '../geometry/point.ts';
import { between, cross, distanceBetween, dot, lengthOf, minus } from '../geometry/vector.ts';
import type { Drawing, DrawnLine, DrawnText } from './drawing.ts';

/**
 * Dimension lines that no name gives away, so that they do not become part of an outline: a straight line is one when it
 * carries arrowheads (markers, filled triangles, open strokes, oblique ticks, dots), or when a number beside it is its
 * own length and lines stand square at both its ends. With it go its arrowheads and its extension lines.
 */
export function findDimensionLines(drawing: Pick<Drawing, 'lines' | 'fills' | 'texts'>, isOpen: (line: number) => boolean): Set<number> {
  const scene = createScene(drawing, isOpen);
  const found = new Set<number>();
  const dimensions: Stroke[] = [];
  for (const stroke of scene.strokes) {
    const heads = scene.headsOf(stroke);
    const arrowed = stroke.marked || heads.start.strong || heads.end.strong || (heads.start.weak && heads.end.weak);
    if (!arrowed && !(scene.measuredByText(stroke) && scene.standsBetween(stroke))) continue;
    dimensions.push(stroke);
    for (const line of [stroke.line, ...heads.start.lines, ...heads.end.lines]) found.add(line);
  }
  for (const { a, b } of dimensions) {
    for (const stroke of scene.extensionsAt(a, b, found)) found.add(stroke.line);
    for (const stroke of scene.extensionsAt(b, a, found)) found.add(stroke.line);
  }
  drawing.lines.forEach(({ source, closed }, i) => {
    if (source.marked && !closed && isOpen(i)) found.add(i);
  });
  return found;
}

/** Arrowheads and ticks are drawn up to this large, mm. */
const LARGEST_HEAD_MM = 8;
/** Heads are set onto ends by eye, mm. */
const HEAD_PLACE_MM = 0.3;
/** Extension lines go on past the dimension line by up to this, mm. */
const LONGEST_OVERSHOOT_MM = 8;
/** Extension lines may end this short of the dimension line, mm. */
const EXTENSION_PLACE_MM = 0.6;
/** Half the opening angle of an arrowhead: its cosine. 45 degrees. */
const HEAD_COSINE = Math.SQRT1_2;
/** Square to each other: cosine of 88 degrees. */
const SQUARE_COSINE = 0.035;

/** A line that is one straight piece. */
interface Stroke {
  readonly line: number;
  readonly a: Point;
  readonly b: Point;
  readonly length: number;
  readonly marked: boolean;
}

/** What stands at one end of a stroke. Strong: tells a dimension line at one end alone. Weak: only at both ends. */
interface Head {
  strong: boolean;
  weak: boolean;
  readonly lines: number[];
}

function createScene({ lines, fills, texts }: Pick<Drawing, 'lines' | 'fills' | 'texts'>, isOpen: (line: number) => boolean) {
  const strokes: Stroke[] = [];
  const byLine = new Map<number, Stroke>();
  const heads: HeadShape[] = fills.flatMap((fill) => headShape(fill, undefined));
  lines.forEach((line, i) => {
    if (!isOpen(i)) return;
    if (line.curves.length === 1 && line.curves[0].kind === 'line') {
      const { from: a, to: b } = line.curves[0];
      const stroke = { line: i, a, b, length: distanceBetween(a, b), marked: line.source.marked };
      if (stroke.length === 0) return;
      strokes.push(stroke);
      byLine.set(i, stroke);
    } else {
      heads.push(...headShape(line, i));
    }
  });
  const ends = lines.flatMap((line, i) => [{ line: i, at: line.curves[0].from }, { line: i, at: line.curves[line.curves.length - 1].to }]);
  const endIndex = pointIndex(ends.map(({ at }) => at));
  const middleIndex = pointIndex(strokes.map(({ a, b }) => between(a, b, 0.5)));
  const headIndex = pointIndex(heads.map(({ tip }) => tip));
  const strokeIndex = boxIndex(strokes);
  const numbers = texts.flatMap(measuresOf);

  const linesEndingAt = (at: Point, within: number) => endIndex(at, within).map((i) => ends[i].line);
  const headAt = (stroke: Stroke, at: Point, inward: Point): Head => {
    const head: Head = { strong: false, weak: false, lines: [] };
    const add = (strength: 'strong' | 'weak', ...added: (number | undefined)[]) => {
      head[strength] = true;
      head.lines.push(...added.filter((line) => line !== undefined));
    };
    const largest = Math.min(LARGEST_HEAD_MM, stroke.length / 2);
    for (const i of headIndex(at, HEAD_PLACE_MM)) {
      const { back, size, round, line } = heads[i];
      if (size > largest) continue;
      if (round) add('weak', line);
      else if (cosine(back, inward) > HEAD_COSINE) add('strong', line);
    }
    const short = (line: number) => {
      const other = byLine.get(line);
      return other && line !== stroke.line && other.length <= largest ? other : undefined;
    };
    const barbs = linesEndingAt(at, HEAD_PLACE_MM).flatMap((line) => {
      const other = short(line);
      if (!other) return [];
      const near = nearEnd(other, at);
      const far = near === other.a ? other.b : other.a;
      const along = minus(far, near);
      const isFree = linesEndingAt(far, HEAD_PLACE_MM).every((found) => found === line);
      return cosine(along, inward) > HEAD_COSINE && isFree ? [{ line, side: Math.sign(cross(inward, along)) }] : [];
    });
    if (barbs.some(({ side }) => side > 0) && barbs.some(({ side }) => side < 0)) add('strong', ...barbs.map(({ line }) => line));
    for (const i of middleIndex(at, HEAD_PLACE_MM)) {
      const tick = short(strokes[i].line);
      const slope = tick && Math.abs(cosine(minus(tick.b, tick.a), inward));
      if (slope && slope > 0.3 && slope < 0.95) add('weak', tick.line);
    }
    return head;
  };

  return {
    strokes,
    headsOf: (stroke: Stroke) => ({
      start: headAt(stroke, stroke.a, minus(stroke.b, stroke.a)),
      end: headAt(stroke, stroke.b, minus(stroke.a, stroke.b)),
    }),
    measuredByText: ({ a, b }: Stroke) => isMeasured(numbers, a, b),
    /** Whether at each end a stroke stands square that goes on beyond and ends free, as no outline's corner does. */
    standsBetween: ({ a, b, line }: Stroke) =>
      [[a, b], [b, a]].every(([end, from]) =>
        strokesNear(strokeIndex, strokes, end).some((other) => {
          const near = nearEnd(other, end);
          return isExtension(other, end, from) && distanceBetween(near, end) > HEAD_PLACE_MM && linesEndingAt(near, HEAD_PLACE_MM).every((at) => at === other.line || at === line);
        }),
      ),
    /** Extension lines at a dimension line's end, apart from those whose near end other lines share. */
    extensionsAt: (end: Point, from: Point, dimensions: ReadonlySet<number>): Stroke[] =>
      strokesNear(strokeIndex, strokes, end).filter((other) => {
        if (!isExtension(other, end, from)) return false;
        return linesEndingAt(nearEnd(other, end), HEAD_PLACE_MM).every((line) => line === other.line || dimensions.has(line));
      }),
  };
}

/** A small closed or open figure that can stand at a line's end. */
interface HeadShape {
  readonly tip: Point;
  /** From the tip into the figure. */
  readonly back: Point;
  readonly size: number;
  readonly round: boolean;
  readonly line: number | undefined;
}

/** Triangles (each corner may be the tip), open V shapes, and round dots. */
function headShape({ curves, closed }: DrawnLine, line: number | undefined): HeadShape[] {
  const box = boxOf(curves.flatMap(({ from, to }) => [from, to]));
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (size > LARGEST_HEAD_MM || size === 0) return [];
  const straight = curves.every(({ kind }) => kind === 'line');
  if (straight && closed && (curves.length === 3 || curves.length === 4)) {
    const corners = curves.map(({ from }) => from);
    const centre = { x: mean(corners.map(({ x }) => x)), y: mean(corners.map(({ y }) => y)) };
    return corners.map((tip) => ({ tip, back: minus(centre, tip), size, round: false, line }));
  }
  if (straight && !closed && curves.length === 2) {
    const [{ from, to: tip }, { to }] = curves;
    return [{ tip, back: minus(between(from, to, 0.5), tip), size, round: false, line }];
  }
  const isRound = closed && curves.every(({ kind }) => kind !== 'line') && Math.abs(box.maxX - box.minX - (box.maxY - box.minY)) < 0.1 * size;
  return isRound ? [{ tip: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }, back: { x: 0, y: 0 }, size, round: true, line }] : [];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function nearEnd({ a, b }: Stroke, to: Point): Point {
  return distanceBetween(a, to) < distanceBetween(b, to) ? a : b;
}

/** A stroke square to a dimension line at its end, whose own nearer end lies little beyond, the other farther away. */
function isExtension(stroke: Stroke, end: Point, from: Point): boolean {
  if (Math.abs(cosine(minus(stroke.b, stroke.a), minus(end, from))) > SQUARE_COSINE) return false;
  const along = minus(stroke.b, stroke.a);
  const t = dot(minus(end, stroke.a), along) / dot(along, along);
  const reach = EXTENSION_PLACE_MM / stroke.length;
  if (t < -reach || t > 1 + reach || distanceBetween(end, between(stroke.a, stroke.b, t)) > EXTENSION_PLACE_MM) return false;
  const [near, far] = t < 0.5 ? [stroke.a, stroke.b] : [stroke.b, stroke.a];
  return distanceBetween(end, near) <= Math.min(LONGEST_OVERSHOOT_MM, distanceBetween(end, far));
}

/** Whether a number beside a straight line is its length. */
export function createMeasuring(texts: readonly DrawnText[]): (line: DrawnLine) => boolean {
  const numbers = texts.flatMap(measuresOf);
  return ({ curves: [curve, ...more] }) => curve.kind === 'line' && more.length === 0 && isMeasured(numbers, curve.from, curve.to);
}

function isMeasured(numbers: readonly Measure[], a: Point, b: Point): boolean {
  const length = distanceBetween(a, b);
  return numbers.some(({ mm, text }) => Math.abs(mm - length) <= Math.max(0.6, 0.01 * length) && distanceToMiddle(text, a, b) <= 3 * text.heightMm + 0.15 * length);
}

interface Measure {
  readonly mm: number;
  readonly text: DrawnText;
}

/** The lengths a text may state: `182`, `182,5`, `Ø 30 mm`, `7.5 in`, `7 1/2"` is not read. */
function measuresOf(text: DrawnText): Measure[] {
  const match = /^[^\d]{0,3}(\d+(?:[.,]\d+)?)\s*(mm|cm|in|"|”)?[^\d]{0,3}$/i.exec(text.content);
  if (!match) return [];
  const unit = match[2] === '"' || match[2] === '”' ? 'in' : (match[2] ?? '');
  const mm = parseLengthMm(match[1].replace(',', '.') + unit);
  return mm === undefined || mm === 0 ? [] : [{ mm, text }];
}

/** From the middle of the written number, its width guessed at 0.55 of its height a character, to the line's middle. */
function distanceToMiddle({ place, content, heightMm, direction, anchor }: DrawnText, a: Point, b: Point): number {
  const width = 0.55 * heightMm * content.length;
  const shift = anchor === 'middle' ? 0 : anchor === 'end' ? -width / 2 : width / 2;
  return distanceBetween({ x: place.x + shift * direction.x, y: place.y + shift * direction.y }, between(a, b, 0.5));
}

function cosine(u: Point, v: Point): number {
  return dot(u, v) / (lengthOf(u) * lengthOf(v));
}

function pointIndex(points: readonly Point[]): (at: Point, within: number) => number[] {
  if (points.length === 0) return () => [];
  const index = new Flatbush(points.length);
  for (const { x, y } of points) index.add(x, y, x, y);
  index.finish();
  return (at, within) => index.search(at.x - within, at.y - within, at.x + within, at.y + within);
}

function boxIndex(strokes: readonly Stroke[]): Flatbush | undefined {
  if (strokes.length === 0) return undefined;
  const index = new Flatbush(strokes.length);
  for (const { a, b } of strokes) index.add(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y));
  index.finish();
  return index;
}

function strokesNear(index: Flatbush | undefined, strokes: readonly Stroke[], { x, y }: Point): Stroke[] {
  const reach = EXTENSION_PLACE_MM;
  return index ? index.search(x - reach, y - reach, x + reach, y + reach).map((i) => strokes[i]) : [];
}
