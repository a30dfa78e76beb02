import type { Issue } from '../base/issue.ts';
import { toMillimetres } from '../base/units.ts';
import { lengthOfEdges } from './arrangement.ts';
import { curveLength, curvePart } from './curve-part.ts';
import type { Drawing } from './drawing.ts';
import { middleInMm, placeOf, type Finding } from './faults.ts';
import { cutsThrough } from './knife-roles.ts';
import { lineKinds } from './line-kinds.ts';
import { nest } from './outline.ts';

/** What was assumed, and what only the user can say. */
export function openQuestions(drawing: Drawing, finding: Finding): Issue[] {
  return [...noBlank(drawing, finding), ...severalBlanks(finding), ...outlineQuestions(finding), ...parallelContours(finding), ...unknownRoles(finding), ...assumedRoles(finding)];
}

function noBlank({ lines, fills }: Drawing, { contents, graph, roles, outlines, lines: ruled }: Finding): Issue[] {
  if (contents.length > 0) return [];
  if (lines.length === 0) return [{ code: 'no-lines', severity: 'error', facts: { fills: fills.length } }];
  const open = graph.edges.flatMap((_, edge) => (cutsThrough(roles[edge].role) && outlines.cycles.core[edge] === 0 ? [edge] : []));
  if (open.length > 0) {
    const facts = { lengthMm: lengthOfEdges(graph, open) };
    return [{ code: 'outline-open', severity: 'error', place: placeOf(middleInMm(graph, open[0])), where: ruled[roles[open[0]].line].source.described, facts }];
  }
  return [{ code: 'no-blank', severity: 'error', facts: { lines: lines.length } }];
}

function severalBlanks({ contents }: Finding): Issue[] {
  return contents.length > 1 ? [{ code: 'several-blanks', severity: 'note', facts: { count: contents.length } }] : [];
}

/** Where the outline is not of cut lines. */
function outlineQuestions({ contents, outlines, lineRoles, lines, roles, graph, closures }: Finding): Issue[] {
  if (contents.length === 0 || outlines.from === 'cut') return [];
  const anyCut = lineRoles.some(({ role }, line) => role === 'Cutting' && !closures.has(line));
  if (!anyCut) return [{ code: 'outline-from-all-lines', severity: 'note' }];
  const edge = contents.flatMap(({ outline }) => outline.cycle.steps).find((step) => roles[step.edge].role !== 'Cutting')?.edge;
  if (edge === undefined) return [];
  return [{ code: 'outline-not-all-cut', severity: 'warning', place: placeOf(middleInMm(graph, edge)), where: lines[roles[edge].line].source.described, facts: { role: roles[edge].role } }];
}

/**
 * A loop that follows the outline a bleed's width inside it, where nothing says which of the two is cut: the outline may
 * be the bleed.
 */
function parallelContours({ contents, outlines, lines, roles }: Finding): Issue[] {
  if (outlines.from !== 'all') return [];
  const { loops, holders } = nest(outlines.cycles.cycles);
  const blanks = new Set(contents.map(({ outline }) => outline.cycle));
  return loops.flatMap(({ cycle, box }, i): Issue[] => {
    if (holders[i] < 0 || !blanks.has(loops[holders[i]].cycle)) return [];
    const outer = loops[holders[i]].box;
    const margins = [box.minX - outer.minX, box.minY - outer.minY, outer.maxX - box.maxX, outer.maxY - box.maxY];
    const isEven = margins.every((margin) => margin >= NARROWEST_BLEED && margin <= WIDEST_BLEED && Math.abs(margin - margins[0]) <= EVEN);
    if (!isEven) return [];
    const [{ edge }] = cycle.steps;
    const { x, y } = cycle.ring[0];
    const place = placeOf({ x: toMillimetres(x), y: toMillimetres(y) });
    return [{ code: 'contour-within-outline', severity: 'warning', place, where: lines[roles[edge].line].source.described, facts: { byMm: toMillimetres(margins[0]) } }];
  });
}

/** Bleeds and safe distances that are in use, µm, and how evenly they are drawn. */
const NARROWEST_BLEED = 500;
const WIDEST_BLEED = 6000;
const EVEN = 100;

/** Lines within a blank whose role nothing says: one issue for each kind, with the rule that would answer it. */
function unknownRoles({ lines, roles, graph, contents, closures }: Finding): Issue[] {
  const kinds = lineKinds(lines);
  const byKind = new Map<string, { edge: number; lines: Set<number>; length: number }>();
  for (const { outline, edges } of contents) {
    const onOutline = new Set(outline.cycle.steps.map(({ edge }) => edge));
    for (const edge of edges) {
      const { role, line } = roles[edge];
      if (role !== 'Unknown' || onOutline.has(edge) || closures.has(line)) continue;
      const { key } = kinds[line];
      const found = byKind.get(key) ?? { edge, lines: new Set<number>(), length: 0 };
      const { curve, start, end } = graph.covers[edge][0];
      found.length += curveLength(curvePart(curve, start, end));
      byKind.set(key, found);
      found.lines.add(line);
    }
  }
  return [...byKind.values()].map(({ edge, lines: of, length }): Issue => {
    const { source } = lines[roles[edge].line];
    const facts = { count: of.size, lengthMm: length, stroke: source.stroke, pattern: kinds[roles[edge].line].pattern };
    return { code: 'role-unknown', severity: 'warning', place: placeOf(middleInMm(graph, edge)), where: source.described, facts };
  });
}

function assumedRoles({ lines, lineRoles }: Finding): Issue[] {
  const issues: Issue[] = [];
  const count = (reason: string, role?: string) => lineRoles.filter((known) => known.reason === reason && (role === undefined || known.role === role)).length;
  const only = lineRoles.findIndex(({ reason }) => reason === 'only line');
  if (only >= 0) issues.push({ code: 'one-kind-is-cut', severity: 'note', facts: { count: count('only line'), stroke: lines[only].source.stroke } });
  for (const [role, code] of [['Creasing', 'dashed-is-crease'], ['Perforating', 'dotted-is-perforation']] as const) {
    if (count('dash', role) > 0) issues.push({ code, severity: 'note', facts: { count: count('dash', role) } });
  }
  return issues;
}
