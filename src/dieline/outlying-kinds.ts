import { MICRONS_PER_MM } from '../base/units.ts';
import { lengthOfEdges, middleOf, type Arrangement } from './arrangement.ts';
import { outerCycles } from './cycles.ts';
import { createOutlineFinder, outlineOf } from './outline.ts';

/** Part of a kind's length that lies outside what the other kinds enclose, from which it is taken for dimensioning. */
const LEAST_SHARE_OUTSIDE = 0.8;
/** Extension lines go on past the dimension line by at least this, mm; by how much ends of an outline miss is less. */
const LEAST_TAIL_MM = 0.7;
/** And by no more than this. */
const LONGEST_EXTENSION_TAIL_MM = 8;

/**
 * Kinds of line that are dimensioning though nothing else tells: nearly all of their length lies outside the loops that
 * the other kinds close, and they have loose tails such as extension lines have beyond a dimension line, or a number
 * stands beside one of them that is its length. Returns the lines of these kinds.
 */
export function findOutlyingKinds(graph: Arrangement, kindOf: ReadonlyMap<number, string>, leftOut: ReadonlySet<number>, isMeasured: (line: number) => boolean): Set<number> {
  const kinds = new Set([...kindOf].filter(([line]) => !leftOut.has(line)).map(([, kind]) => kind));
  const found = new Set<number>();
  if (kinds.size < 2) return found;
  for (const kind of kinds) {
    const isOfKind = (line: number) => kindOf.get(line) === kind;
    const others = (edge: number) => graph.covers[edge].some(({ line }) => !isOfKind(line) && !leftOut.has(line) && !found.has(line));
    const own = graph.edges.flatMap((_, edge) => (!others(edge) && graph.covers[edge].some(({ line }) => isOfKind(line)) ? [edge] : []));
    const outlines = outerCycles(graph, others).cycles.map(outlineOf);
    if (outlines.length === 0) continue;
    const locate = createOutlineFinder(outlines);
    const isOutside = (edge: number) => locate(middleOf(graph, edge)) === undefined;
    const outside = own.filter(isOutside);
    if (lengthOfEdges(graph, outside) < LEAST_SHARE_OUTSIDE * lengthOfEdges(graph, own)) continue;
    const lines = [...kindOf].flatMap(([line, of]) => (of === kind ? [line] : []));
    if (!hasTail(graph, new Set(outside)) && !lines.some(isMeasured)) continue;
    for (const line of lines) found.add(line);
  }
  return found;
}

/** Whether one of the edges is a short loose end beyond a place where three or more of them meet. */
function hasTail({ edges, edgesAt, vertices: { x, y } }: Arrangement, own: ReadonlySet<number>): boolean {
  const degree = (vertex: number) => edgesAt[vertex].filter((edge) => own.has(edge)).length;
  return [...own].some((edge) => {
    const [a, b] = edges[edge];
    const length = Math.sqrt((x[a] - x[b]) ** 2 + (y[a] - y[b]) ** 2) / MICRONS_PER_MM;
    const loose = (end: number, junction: number) => edgesAt[end].length === 1 && degree(junction) >= 3;
    return length >= LEAST_TAIL_MM && length <= LONGEST_EXTENSION_TAIL_MM && (loose(a, b) || loose(b, a));
  });
}
