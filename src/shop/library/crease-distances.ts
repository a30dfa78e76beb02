import type { Blank, Role } from '../../dieline/dieline.ts';

/**
 * Distances between parallel creases of a drawing, and to the ends of the blank, mm, ascending: the lengths, widths and
 * depths its panels may have. Lines that nobody has named yet count as creases.
 */
export interface CreaseDistances {
  /** Between creases that run up the drawing. */
  readonly across: readonly number[];
  readonly up: readonly number[];
}

const CREASES: ReadonlySet<Role> = new Set(['Creasing', 'ReverseCreasing', 'CuttingCreasing', 'ReverseCuttingCreasing', 'PartialCuttingCreasing', 'ReversePartialCuttingCreasing', 'Folding', 'Perforating', 'PartialCutting', 'ReversePartialCutting', 'Unknown']);

/** Shorter creases belong to locks and glue flaps, mm. */
const SHORTEST = 10;
/** How far a crease may lean over its length, mm. */
const LEAN = 0.2;
/** A drawing of more lines than this is no carton whose panels could be told. */
const MOST_LINES = 60;

export function creaseDistances({ rules, box }: Pick<Blank, 'rules' | 'box'>): CreaseDistances {
  const xs = new Set([box.minX, box.maxX].map(hundredths));
  const ys = new Set([box.minY, box.maxY].map(hundredths));
  for (const { role, curves } of rules) {
    if (!CREASES.has(role)) continue;
    for (const { kind, from, to } of curves) {
      if (kind !== 'line') continue;
      const [width, height] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
      if (width <= LEAN && height >= SHORTEST) xs.add(hundredths((from.x + to.x) / 2));
      if (height <= LEAN && width >= SHORTEST) ys.add(hundredths((from.y + to.y) / 2));
    }
  }
  return { across: distances(xs), up: distances(ys) };
}

function hundredths(mm: number): number {
  return Math.round(mm * 100) / 100;
}

function distances(places: ReadonlySet<number>): number[] {
  const sorted = [...places].toSorted((a, b) => a - b).slice(0, MOST_LINES);
  const all = new Set(sorted.flatMap((a, i) => sorted.slice(i + 1).map((b) => hundredths(b - a))));
  return [...all].toSorted((a, b) => a - b);
}
