import { compose, IDENTITY, rotation, scaling, translation, type Affine } from '../geometry/affine.ts';
import { inPixels, parseSvgLength } from './length.ts';

const FUNCTION = /\s*,?\s*([a-zA-Z]+)\s*\(([^()]*)\)/y;

/** Degrees in one unit of angle. */
const ANGLES: Readonly<Record<string, number>> = { '': 1, deg: 1, rad: 180 / Math.PI, grad: 0.9, turn: 360 };

/** `transform` as an attribute or as a CSS property, in the drawing's axes (y down). Undefined when it cannot be read. */
export function parseTransform(text: string): Affine | undefined {
  let map = IDENTITY;
  let at = 0;
  const source = text.trim();
  if (source === 'none') return map;
  while (at < source.length) {
    FUNCTION.lastIndex = at;
    const match = FUNCTION.exec(source);
    const next = match && transformFunction(match[1].toLowerCase(), argumentsOf(match[2]));
    if (!next) return undefined;
    map = compose(map, next);
    at = FUNCTION.lastIndex;
  }
  return [map.a, map.b, map.c, map.d, map.e, map.f].every(Number.isFinite) ? map : undefined;
}

/** Numbers with their units; `1-2` and `1,-2` are two each. */
function argumentsOf(text: string): readonly { value: number; unit: string }[] {
  const words = text.match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?[a-z%]*/gi) ?? [];
  return words.map((word) => parseSvgLength(word) ?? { value: NaN, unit: '' });
}

function transformFunction(name: string, list: readonly { value: number; unit: string }[]): Affine | undefined {
  const lengths = list.map((length) => inPixels(length, 0));
  const numbers = list.map(({ value }) => value);
  const angle = (i: number) => (list[i] ? list[i].value * (ANGLES[list[i].unit] ?? NaN) : 0);
  const tangent = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
  const takes = (...counts: number[]) => counts.includes(list.length);
  switch (name) {
    case 'matrix': {
      const [a, b, c, d, e, f] = numbers;
      return takes(6) ? { a, b, c, d, e, f } : undefined;
    }
    case 'translate':
      return takes(1, 2) ? translation(lengths[0], lengths[1] ?? 0) : undefined;
    case 'translatex':
      return takes(1) ? translation(lengths[0], 0) : undefined;
    case 'translatey':
      return takes(1) ? translation(0, lengths[0]) : undefined;
    case 'scale':
      return takes(1, 2) ? scaling(numbers[0], numbers[1] ?? numbers[0]) : undefined;
    case 'scalex':
      return takes(1) ? scaling(numbers[0], 1) : undefined;
    case 'scaley':
      return takes(1) ? scaling(1, numbers[0]) : undefined;
    case 'rotate':
      if (takes(1)) return rotation(angle(0));
      return takes(3) ? about(lengths[1], lengths[2], rotation(angle(0))) : undefined;
    case 'skewx':
      return takes(1) ? { ...IDENTITY, c: tangent(angle(0)) } : undefined;
    case 'skewy':
      return takes(1) ? { ...IDENTITY, b: tangent(angle(0)) } : undefined;
    case 'skew':
      return takes(1, 2) ? { ...IDENTITY, c: tangent(angle(0)), b: tangent(angle(1)) } : undefined;
    default:
      return undefined;
  }
}

/** The map with (x, y) as its origin. */
export function about(x: number, y: number, map: Affine): Affine {
  return compose(translation(x, y), compose(map, translation(-x, -y)));
}
