import { boxOf, type Box } from '../geometry/point.ts';
import { lengthOfEdges, middleOf, type Arrangement } from './arrangement.ts';
import { outerCycles, type Cycle, type Cycles } from './cycles.ts';
import { cutsThrough, knifeRank } from './knife-roles.ts';
import { createOutlineFinder, nest, type Outline, type OutlineFinder } from './outline.ts';
import type { LineRole } from './roles.ts';
import { LARGEST_CUT_SHARE_OUTSIDE, LEAST_BLANK_AREA_MM2, LEAST_BLANK_SHARE } from './tolerances.ts';

export interface Outlines {
  readonly outlines: readonly Outline[];
  readonly locate: OutlineFinder;
  /** Loops too small to be blanks, beside larger ones. */
  readonly small: readonly Cycle[];
  /** Which lines they were found from. */
  readonly from: OutlineSource;
  readonly cycles: Cycles;
}

/** Cut lines alone, all lines whose role is known, or all. */
export type OutlineSource = 'cut' | 'known' | 'all';

/** The strongest role along each edge, and the line that gives it. */
export interface EdgeRole extends LineRole {
  readonly line: number;
}

export function edgeRoles({ covers }: Arrangement, roles: readonly LineRole[]): EdgeRole[] {
  const byLine = roles.map((role, line): EdgeRole => ({ ...role, line }));
  return covers.map((along) => {
    let best = byLine[along[0].line];
    for (const { line } of along) if (knifeRank(byLine[line].role) < knifeRank(best.role)) best = byLine[line];
    return best;
  });
}

/**
 * The outer outlines: of the cut lines where these close. Else of all known rules, or of all lines where those enclose
 * more; and if even then much of the cut lines stays outside, the outline was not closed and none is given. A loop
 * inside an open chain of cut lines is an opening of something that was not closed, and no blank.
 */
export function findOutlines(graph: Arrangement, roles: readonly EdgeRole[]): Outlines {
  const [first, ...others] = outlineSources(roles).map((from) => () => outlinesFrom(graph, roles, from));
  const found = first();
  if (found.outlines.length > 0 || others.length === 0) return found;
  const [known, all] = others.map((find) => find());
  const best = enclosed(all) > LEAST_GAIN * enclosed(known) ? all : known;
  const isOutside = (edge: number) => best.locate(middleOf(graph, edge)) === undefined;
  const cut = graph.edges.flatMap((_, edge) => (cutsThrough(roles[edge].role) ? [edge] : []));
  const leftOver = lengthOfEdges(graph, cut.filter(isOutside));
  return leftOver > LARGEST_CUT_SHARE_OUTSIDE * lengthOfEdges(graph, cut) ? { ...best, outlines: [], locate: () => undefined } : best;
}

/** Lines that are not known take part in the outline only where they enclose more than the known ones by this factor. */
const LEAST_GAIN = 1.02;

function enclosed({ outlines }: Outlines): number {
  return outlines.reduce((sum, { cycle }) => sum + cycle.area, 0);
}

function outlinesFrom(graph: Arrangement, roles: readonly EdgeRole[], from: OutlineSource): Outlines {
  const cycles = outerCycles(graph, (edge) => isFrom(roles[edge], from));
  const open = openChainBoxes(graph, roles, cycles.core);
  const { outlines, small } = outermost(cycles.cycles.filter((cycle) => !open.some((box) => strictlyHolds(box, cycle.box))));
  return { outlines, locate: createOutlineFinder(outlines), small, from, cycles };
}

export function outlineSources(roles: readonly LineRole[]): readonly OutlineSource[] {
  const cut = roles.some(({ role }) => cutsThrough(role));
  return cut ? ['cut', 'known', 'all'] : ['all'];
}

export function isFrom({ role, inOutline }: LineRole, from: OutlineSource): boolean {
  return inOutline && (from === 'all' || (from === 'known' ? role !== 'Unknown' : cutsThrough(role)));
}

/** Boxes of connected cut lines that bound no face. */
function openChainBoxes({ edges, edgesAt, vertices: { x, y } }: Arrangement, roles: readonly EdgeRole[], core: Uint8Array): Box[] {
  const inChain = (edge: number) => core[edge] === 0 && cutsThrough(roles[edge].role);
  const seen = new Uint8Array(edges.length);
  const boxes: Box[] = [];
  for (let start = 0; start < edges.length; start++) {
    if (seen[start] || !inChain(start)) continue;
    const chain = [start];
    seen[start] = 1;
    for (let i = 0; i < chain.length; i++) {
      for (const next of edges[chain[i]].flatMap((vertex) => edgesAt[vertex])) {
        if (seen[next] || !inChain(next)) continue;
        seen[next] = 1;
        chain.push(next);
      }
    }
    boxes.push(boxOf(chain.flatMap((edge) => edges[edge].map((vertex) => ({ x: x[vertex], y: y[vertex] })))));
  }
  return boxes;
}

function strictlyHolds(outer: Box, inner: Box): boolean {
  return outer.minX < inner.minX && outer.minY < inner.minY && outer.maxX > inner.maxX && outer.maxY > inner.maxY;
}

const SQUARE_MICRONS_PER_MM2 = 1e6;

/** Cycles that lie in no other, parted into those that can be blanks and those too small for it. */
function outermost(cycles: readonly Cycle[]): { outlines: Outline[]; small: Cycle[] } {
  const { loops, holders } = nest(cycles);
  const largest = loops.length > 0 ? loops[0].cycle.area : 0;
  const least = Math.max(LEAST_BLANK_AREA_MM2 * SQUARE_MICRONS_PER_MM2, LEAST_BLANK_SHARE * largest);
  const roots = loops.filter((_, i) => holders[i] < 0);
  return {
    outlines: roots.filter(({ cycle }) => cycle.area >= least),
    small: roots.filter(({ cycle }) => cycle.area < least).map(({ cycle }) => cycle),
  };
}
