import { inputError } from '../base/issue.ts';
import { arcBetween, ellipseArc } from './arc.ts';
import type { ArcCurve, Curve, CurvePath } from './curve.ts';
import type { Point } from './point.ts';
import { between, samePoint } from './vector.ts';

/**
 * SVG path data (SVG 2, chapter 9) to curves and back, in the units and axes of the text. Own reader: svgpath 2.6 takes
 * 26 s for one run of 200 000 points, refuses `09` and reads a command R that SVG does not have.
 */

/** Path data up to its first mistake, as SVG asks, and where that is. */
export interface PathDataReading {
  /** One path a subpath. A closed one ends where it begins; its closing line is added where it has a length. */
  readonly paths: readonly CurvePath[];
  /** Character, counted from 0, at which reading stopped. */
  readonly faultAt?: number;
}

/** All subpaths. Throws InputError `path-data-wrong` with the character position, counted from 1. */
export function readPathData(text: string): readonly CurvePath[] {
  const { paths, faultAt } = parsePathData(text);
  if (faultAt === undefined) return paths;
  throw inputError('path-data-wrong', { facts: { position: faultAt + 1, found: text.slice(faultAt, faultAt + 12) } });
}

export function parsePathData(text: string): PathDataReading {
  const scan = scanner(text);
  const pen = createPen();
  let command = '';
  for (;;) {
    scan.skip();
    if (scan.done()) return { paths: pen.paths() };
    const start = scan.position();
    const letter = scan.letter();
    if (letter) command = letter;
    else if (command === 'M') command = 'L';
    else if (command === 'm') command = 'l';
    const values = readArguments(scan, command, letter !== undefined);
    const expected = pen.started() || command === 'M' || command === 'm';
    if (!values || !expected) return { paths: pen.paths(), faultAt: expected ? scan.position() : start };
    pen.draw(command, values);
  }
}

const ARGUMENTS: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };

function readArguments(scan: Scanner, command: string, named: boolean): number[] | undefined {
  const upper = command.toUpperCase();
  const count = ARGUMENTS[upper];
  if (count === undefined || (count === 0 && !named)) return undefined;
  const values: number[] = [];
  for (let i = 0; i < count; i++) {
    const value = upper === 'A' && (i === 3 || i === 4) ? scan.flag() : scan.number();
    if (value === undefined) return undefined;
    values.push(value);
  }
  return values;
}

type Scanner = ReturnType<typeof scanner>;

function scanner(text: string) {
  let at = 0;
  const match = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (!found) return undefined;
    at = pattern.lastIndex;
    return found[0];
  };
  const skip = () => void match(/[\s,]*/y);
  return {
    skip,
    done: () => at >= text.length,
    position: () => at,
    letter: () => match(/[a-z]/iy),
    flag: () => {
      skip();
      const found = match(/[01]/y);
      return found === undefined ? undefined : Number(found);
    },
    number: () => {
      skip();
      const start = at;
      const found = match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/iy);
      const value = found === undefined ? NaN : Number(found);
      if (Number.isFinite(value)) return value;
      at = start;
      return undefined;
    },
  };
}

/** Follows the commands: current point, start of the subpath, the control point that S and T reflect. */
function createPen() {
  const done: Curve[][] = [];
  let open: Curve[] = [];
  let start: Point | undefined;
  let here: Point = { x: 0, y: 0 };
  let reflected: { control: Point; of: 'cubic' | 'quadratic' } | undefined;

  const finish = () => {
    if (open.length > 0) done.push(open);
    open = [];
  };
  const add = (curve: Curve | undefined) => {
    if (curve) open.push(curve);
  };
  const mirrored = (of: 'cubic' | 'quadratic') =>
    reflected?.of === of ? { x: 2 * here.x - reflected.control.x, y: 2 * here.y - reflected.control.y } : here;

  const draw = (command: string, values: readonly number[]) => {
    const relative = command >= 'a';
    const from = here;
    const x = (i: number) => values[i] + (relative ? from.x : 0);
    const y = (i: number) => values[i] + (relative ? from.y : 0);
    const point = (i: number): Point => ({ x: x(i), y: y(i + 1) });
    let next: typeof reflected;
    const lineTo = (to: Point) => {
      add({ kind: 'line', from, to });
      here = to;
    };
    const cubicTo = (control1: Point, control2: Point, to: Point) => {
      add({ kind: 'cubic', from, control1, control2, to });
      next = { control: control2, of: 'cubic' };
      here = to;
    };
    const quadraticTo = (control: Point, to: Point) => {
      add({ kind: 'cubic', from, control1: between(from, control, 2 / 3), control2: between(to, control, 2 / 3), to });
      next = { control, of: 'quadratic' };
      here = to;
    };
    switch (command.toUpperCase()) {
      case 'M':
        finish();
        here = start = point(0);
        break;
      case 'Z':
        if (!samePoint(here, start!)) lineTo(start!);
        finish();
        here = start!;
        break;
      case 'L':
        lineTo(point(0));
        break;
      case 'H':
        lineTo({ x: x(0), y: here.y });
        break;
      case 'V':
        lineTo({ x: here.x, y: y(0) });
        break;
      case 'C':
        cubicTo(point(0), point(2), point(4));
        break;
      case 'S':
        cubicTo(mirrored('cubic'), point(0), point(2));
        break;
      case 'Q':
        quadraticTo(point(0), point(2));
        break;
      case 'T':
        quadraticTo(mirrored('quadratic'), point(0));
        break;
      case 'A': {
        const [radiusX, radiusY, degrees, large, positive] = values;
        const to = point(5);
        const tilt = (degrees * Math.PI) / 180;
        add(arcBetween({ from, to, radiusX, radiusY, tilt, large: large === 1, positive: positive === 1 }));
        here = to;
        break;
      }
    }
    reflected = next;
  };
  const paths = (): CurvePath[] => (open.length > 0 ? [...done, open] : done);
  return { draw, paths, started: () => start !== undefined };
}

/** One subpath: lines as L, cubic curves as C, arcs as A; `Z` when it ends where it begins. */
export function writePathData(path: CurvePath, decimals: number): string {
  if (path.length === 0) return '';
  const number = (value: number, digits = decimals) => String(Number(value.toFixed(digits)) + 0);
  const pair = (p: Point) => `${number(p.x)} ${number(p.y)}`;
  const last = path[path.length - 1];
  const closed = samePoint(path[0].from, last.to);
  const drawn = closed && last.kind === 'line' && path.length > 1 ? path.slice(0, -1) : path;
  const parts = drawn.flatMap((curve): string[] => {
    switch (curve.kind) {
      case 'line':
        return [`L${pair(curve.to)}`];
      case 'cubic':
        return [`C${pair(curve.control1)} ${pair(curve.control2)} ${pair(curve.to)}`];
      case 'arc':
        return shortArcs(curve).map((arc) => {
          // A degree of tilt moves a point by up to a fiftieth of its radius: finer than lengths, for radii to 1 m.
          const tilt = number((arc.tilt * 180) / Math.PI, decimals + 2);
          return `A${number(arc.radiusX)} ${number(arc.radiusY)} ${tilt} 0 ${arc.sweep > 0 ? 1 : 0} ${pair(arc.to)}`;
        });
    }
  });
  return [`M${pair(path[0].from)}`, ...parts, ...(closed ? ['Z'] : [])].join(' ');
}

/**
 * Near half a turn the centre found from rounded end points jumps by the square root of the rounding (0.2 mm for 1 µm
 * at radius 50 mm); up to this angle the written arc moves no more than its end points do.
 */
const LONGEST_WRITTEN_ARC = (100 * Math.PI) / 180;

function shortArcs(arc: ArcCurve): readonly ArcCurve[] {
  const count = Math.ceil(Math.abs(arc.sweep) / LONGEST_WRITTEN_ARC);
  return Array.from({ length: count }, (_, i) => {
    const piece = ellipseArc(arc, arc.start + (arc.sweep * i) / count, arc.sweep / count);
    return i === count - 1 ? { ...piece, to: arc.to } : piece;
  });
}
