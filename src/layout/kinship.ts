import { pathLength } from '../dieline/curve-part.ts';
import { toMicrons } from '../base/units.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { outlineDistance, outlineLikeness } from '../geometry/outline-likeness.ts';
import { readPathData } from '../geometry/path-data.ts';
import { OUTLINE_TOLERANCE_MM } from './judge-tolerance.ts';
import type { Design } from './layout-file.ts';
import { micronRing } from './rings.ts';

/**
 * What a design of a layout is to a drawing: the same blank; another state of it (a revision, the other side, another
 * scale); or another carton altogether.
 */
export type Kinship = 'same' | 'revision' | 'other';

/** Outlines this near on one another are states of one drawing, whatever it is called, mm. */
const REVISION_MM = 5;
/** Lengths and centres of lines written with three decimals agree within this, mm. */
const LINES_MM = 0.05;

/** The best of a layout's designs against the drawing's own. */
export function kinship(designs: readonly Design[], drawn: Design): Kinship {
  const kinds = designs.map((design) => kinshipOf(design, drawn));
  return kinds.find((kind) => kind === 'same') ?? kinds.find((kind) => kind === 'revision') ?? 'other';
}

function kinshipOf(design: Design, drawn: Design): Kinship {
  const [a, b] = [micronRing(design.outline), micronRing(drawn.outline)];
  const apart = outlineDistance(a, b, toMicrons(OUTLINE_TOLERANCE_MM));
  if (apart < Infinity && sameLines(design, drawn)) return 'same';
  const isNamed = design.id === drawn.id || (design.drawing?.fingerprint !== undefined && design.drawing.fingerprint === drawn.drawing?.fingerprint);
  return isNamed || outlineLikeness(a, b, toMicrons(REVISION_MM)) ? 'revision' : 'other';
}

/** A layout that names no lines says nothing of them. */
function sameLines({ drawing: a }: Design, { drawing: b }: Design): boolean {
  if (!a || !b || a.paths.length === 0) return true;
  const [one, other] = [linesByRole(a.paths), linesByRole(b.paths)];
  if (one.size !== other.size) return false;
  return [...one].every(([role, lines]) => {
    const seen = other.get(role);
    return seen !== undefined && lines.every((mm, i) => Math.abs(mm - seen[i]!) <= LINES_MM);
  });
}

/** By role: length, centre and spread of its lines, mm. None of them depends on where lines are cut into pieces or begin. */
function linesByRole(paths: readonly { readonly role: string; readonly d: string }[]): Map<string, readonly number[]> {
  const sums = new Map<string, { length: number; x: number; y: number; square: number }>();
  for (const { role, d } of paths) {
    const sum = sums.get(role) ?? { length: 0, x: 0, y: 0, square: 0 };
    sums.set(role, sum);
    for (const path of readPathData(d)) {
      sum.length += pathLength(path);
      const points = flattenPath(path, OUTLINE_TOLERANCE_MM);
      points.slice(1).forEach((to, i) => {
        const from = points[i]!;
        const length = Math.sqrt((to.x - from.x) ** 2 + (to.y - from.y) ** 2);
        sum.x += (length * (from.x + to.x)) / 2;
        sum.y += (length * (from.y + to.y)) / 2;
        sum.square += (length * (from.x ** 2 + from.x * to.x + to.x ** 2 + from.y ** 2 + from.y * to.y + to.y ** 2)) / 3;
      });
    }
  }
  return new Map([...sums].map(([role, { length, x, y, square }]) => [role, length === 0 ? [0] : [length, x / length, y / length, Math.sqrt(square / length)]]));
}
