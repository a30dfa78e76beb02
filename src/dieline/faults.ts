import type { Issue, Severity } from '../base/issue.ts';
import { MICRONS_PER_MM } from '../base/units.ts';
import type { Point } from '../geometry/point.ts';
import { distanceBetween } from '../geometry/vector.ts';
import { middleOf, type Arrangement } from './arrangement.ts';
import type { Contents } from './blanks.ts';
import { curvePart, pathLength } from './curve-part.ts';
import type { DrawnLine } from './drawing.ts';
import { looseEnds, pairsWithin, type Closure } from './gaps.ts';
import { cutsThrough, isKnife } from './knife-roles.ts';
import { isFrom, type EdgeRole, type Outlines } from './outlines.ts';
import type { LineRole } from './roles.ts';
import { JOIN_TOLERANCE_MM, LONGEST_TAIL_MM, NEAR_GAP_MM, OVERSHOOT_MM } from './tolerances.ts';

/** Everything the search for faults looks at, after blanks have been found. */
export interface Finding {
  /** The graph's lines, closures after the drawing's own, and their roles. */
  readonly lines: readonly DrawnLine[];
  readonly lineRoles: readonly LineRole[];
  readonly graph: Arrangement;
  readonly roles: readonly EdgeRole[];
  readonly closures: ReadonlyMap<number, Closure>;
  readonly outlines: Outlines;
  readonly contents: readonly Contents[];
  /** Edges in no blank. */
  readonly outside: readonly number[];
}

/** A place in the drawing's own axes, y down, as its program shows it. */
export function placeOf({ x, y }: Point): [number, number] {
  const rounded = (value: number) => Math.round(value * MICRONS_PER_MM) / MICRONS_PER_MM + 0;
  return [rounded(x), rounded(-y)];
}

function issueAt(code: string, severity: Severity, place: Point, where: string, facts: Issue['facts'] = {}): Issue {
  return { code, severity, place: placeOf(place), where, facts };
}

/** Faults of the line work, each with its place. */
export function findFaults(finding: Finding): Issue[] {
  const faults = [
    ...closedGaps(finding),
    ...openGaps(finding),
    ...sticksOut(finding),
    ...overshoots(finding),
    ...selfCrossings(finding),
    ...doubledLines(finding),
    ...dividingCuts(finding),
    ...tees(finding),
    ...smallLoops(finding),
  ];
  return shortened(faults);
}

/** Of one code so many are listed one by one; the rest is counted. */
const MOST_OF_ONE_CODE = 20;

function shortened(issues: readonly Issue[]): Issue[] {
  const byCode = new Map<string, Issue[]>();
  for (const issue of issues) byCode.set(issue.code, [...(byCode.get(issue.code) ?? []), issue]);
  return [...byCode].flatMap(([code, same]) => {
    const more = same.length - MOST_OF_ONE_CODE;
    if (more <= 0) return same;
    return [...same.slice(0, MOST_OF_ONE_CODE), { code: 'more-of-the-same', severity: 'note' as const, facts: { count: more, code } }];
  });
}

/** Lines and pieces of lines whose ends are one place. */
export function zeroLengths(lines: readonly DrawnLine[]): Issue[] {
  return shortened(lines.flatMap(({ curves, source }) => {
    const place = curves[0].from;
    if (pathLength(curves) < JOIN_TOLERANCE_MM) return [issueAt('zero-length', 'warning', place, source.described)];
    const piece = curves.find(({ from, to, kind }) => kind === 'line' && from.x === to.x && from.y === to.y);
    return piece ? [issueAt('zero-length-piece', 'note', piece.from, source.described)] : [];
  }));
}

function closedGaps(finding: Finding): Issue[] {
  return usedClosures(finding).map(({ place, width }) => issueAt('gap-closed', 'warning', place, '', { widthMm: width }));
}

/** Closures without which an outline or opening would be open. */
export function usedClosures({ roles, closures, contents }: Pick<Finding, 'roles' | 'closures' | 'contents'>): Closure[] {
  const edges = contents.flatMap(({ outline, openings }) => [outline.cycle, ...openings].flatMap(({ steps }) => steps.map(({ edge }) => edge)));
  return [...new Set(edges.flatMap((edge) => closures.get(roles[edge].line) ?? []))];
}

/** Loose ends outside every blank, or of lines that enclose nothing, that face one another over a gap too wide to close. */
function openGaps(finding: Finding): Issue[] {
  const { graph, roles, outlines, contents } = finding;
  const chosen = (edge: number) => isFrom(roles[edge], outlines.from === 'all' ? 'all' : 'cut');
  const outsideAll = (vertex: number) => outlines.locate({ x: graph.vertices.x[vertex], y: graph.vertices.y[vertex] }) === undefined;
  const ends = looseEnds(graph, chosen).filter((end) => outsideAll(end) && !isTail(graph, chosen, end));
  const taken = new Set<number>();
  const severity = contents.length === 0 ? 'error' : 'warning';
  return pairsWithin(graph, ends, NEAR_GAP_MM).flatMap(({ a, b, distance }) => {
    if (taken.has(a) || taken.has(b)) return [];
    taken.add(a).add(b);
    const from = graph.vertices.exact(a);
    const to = graph.vertices.exact(b);
    return [issueAt('gap-open', severity, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, '', { widthMm: distance })];
  });
}

/** Connected lines outside that start at an outline, each with its end farthest out. Short tails of one line overshoot. */
function sticksOut({ lines, graph, roles, contents, outside }: Finding): Issue[] {
  const onOutline = new Set(contents.flatMap(({ outline }) => outline.cycle.steps.map(({ from }) => from)));
  const waiting = new Set(outside.filter((edge) => isKnife(roles[edge].role)));
  const issues: Issue[] = [];
  for (const root of onOutline) {
    for (const first of graph.edgesAt[root]) {
      if (!waiting.delete(first)) continue;
      const tree = [first];
      const vertices: number[] = [];
      for (let i = 0; i < tree.length; i++) {
        for (const vertex of graph.edges[tree[i]]) {
          if (onOutline.has(vertex)) continue;
          vertices.push(vertex);
          for (const edge of graph.edgesAt[vertex]) if (waiting.delete(edge)) tree.push(edge);
        }
      }
      const start = graph.vertices.exact(root);
      const tip = vertices.map((vertex) => graph.vertices.exact(vertex)).reduce((far, point) => (distanceBetween(start, point) > distanceBetween(start, far) ? point : far), start);
      const byMm = distanceBetween(start, tip);
      const { role, line } = roles[first];
      const code = byMm <= LONGEST_TAIL_MM && tree.every((edge) => roles[edge].line === line) ? 'overshoot' : 'line-sticks-out';
      issues.push(issueAt(code, 'warning', tip, lines[line].source.described, { byMm, role }));
    }
  }
  return issues;
}

/** Cut lines that go on inside the blank by a little after meeting another cut line. */
function overshoots({ lines, graph, roles, contents }: Finding): Issue[] {
  const cut = (edge: number) => cutsThrough(roles[edge].role);
  return contents.flatMap(({ edges, outline }) => {
    const ends = new Set(edges.flatMap((edge) => graph.edges[edge]));
    return [...ends].flatMap((end) => {
      const [edge, ...others] = graph.edgesAt[end].filter(cut);
      if (edge === undefined || others.length > 0) return [];
      if (outline.locator.locate({ x: graph.vertices.x[end], y: graph.vertices.y[end] }) !== 'inside') return [];
      const tail = tailFrom(graph, cut, end);
      if (!tail || tail.length > OVERSHOOT_MM || !tail.goesOn) return [];
      return [issueAt('overshoot', 'warning', graph.vertices.exact(end), lines[roles[edge].line].source.described, { byMm: tail.length, role: roles[edge].role })];
    });
  });
}

/** Whether a loose end is the short rest of a line that was drawn beyond the one it should meet. */
function isTail(graph: Arrangement, chosen: (edge: number) => boolean, end: number): boolean {
  const tail = tailFrom(graph, chosen, end);
  return tail !== undefined && tail.goesOn;
}

/**
 * The way from a loose end back to the next junction; undefined when there is none within reach. `goesOn`: the same line
 * runs on beyond the junction.
 */
function tailFrom(graph: Arrangement, chosen: (edge: number) => boolean, end: number): { length: number; goesOn: boolean } | undefined {
  let length = 0;
  let vertex = end;
  let onwards = graph.edgesAt[end].filter(chosen);
  while (onwards.length === 1 && length <= LONGEST_TAIL_MM) {
    const [at] = onwards;
    const [a, b] = graph.edges[at];
    vertex = a === vertex ? b : a;
    length += distanceBetween(graph.vertices.exact(a), graph.vertices.exact(b));
    onwards = graph.edgesAt[vertex].filter((edge) => edge !== at && chosen(edge));
    const { line } = graph.covers[at][0];
    if (onwards.length > 1) return { length, goesOn: onwards.some((edge) => graph.covers[edge].some((cover) => cover.line === line)) };
  }
  return undefined;
}

function selfCrossings({ lines, graph, closures }: Finding): Issue[] {
  return graph.selfCrossings.flatMap(({ vertex, line }) =>
    closures.has(line) ? [] : [issueAt('self-crossing', 'warning', graph.vertices.exact(vertex), lines[line].source.described)],
  );
}

/** Lines that run on another, stronger or earlier one: one issue for each two, at the first common stretch. */
function doubledLines({ lines, lineRoles, roles, graph, closures }: Finding): Issue[] {
  const pairs = new Map<number, { kept: number; lost: number; edge: number; length: number }>();
  graph.covers.forEach((covers, edge) => {
    const kept = roles[edge].line;
    if (covers.length < 2 || closures.has(kept)) return;
    const [a, b] = graph.edges[edge].map((vertex) => graph.vertices.exact(vertex));
    const others = covers.map(({ line }) => line).toSpliced(covers.findIndex(({ line }) => line === kept), 1);
    for (const lost of others) {
      if (closures.has(lost)) continue;
      const pair = pairs.get(kept * lines.length + lost) ?? { kept, lost, edge, length: 0 };
      pair.length += distanceBetween(a, b);
      pairs.set(kept * lines.length + lost, pair);
    }
  });
  return [...pairs.values()].map(({ kept, lost, edge, length }) => {
    const [strong, weak] = [lineRoles[kept].role, lineRoles[lost].role];
    const differ = strong !== weak && weak !== 'Unknown';
    const facts = { lengthMm: length, other: lines[kept].source.described, ...(differ ? { kept: strong, lost: weak } : {}) };
    return issueAt(differ ? 'roles-on-one-line' : 'line-doubled', 'warning', middleInMm(graph, edge), lines[lost].source.described, facts);
  });
}

export function middleInMm(graph: Arrangement, edge: number): Point {
  const { x, y } = middleOf(graph, edge);
  return { x: x / MICRONS_PER_MM, y: y / MICRONS_PER_MM };
}

/** Cut lines that run from the outline to the outline: they would cut the blank apart. */
function dividingCuts({ lines, graph, roles, outlines, contents }: Finding): Issue[] {
  if (outlines.from !== 'cut') return [];
  return contents.flatMap(({ outline }) => {
    const passed = new Set(outline.cycle.steps.map(({ edge }) => edge));
    const open = outline.cycle.steps.map(({ from }) => from);
    const chords: number[] = [];
    while (open.length > 0) {
      for (const edge of graph.edgesAt[open.pop()!]) {
        if (outlines.cycles.core[edge] === 0 || passed.has(edge)) continue;
        passed.add(edge);
        chords.push(edge);
        open.push(...graph.edges[edge]);
      }
    }
    const length = chords.reduce((sum, edge) => sum + pathLength(graph.covers[edge].slice(0, 1).map(({ curve, start, end }) => curvePart(curve, start, end))), 0);
    if (length < LEAST_DIVIDING_MM) return [];
    return [issueAt('cut-divides-blank', 'warning', middleInMm(graph, chords[0]), lines[roles[chords[0]].line].source.described, { lengthMm: length })];
  });
}

/** Cut lines between the outline and itself that are together shorter are slivers between lines meant to be one, mm. */
const LEAST_DIVIDING_MM = 3;

function tees({ lines, lineRoles, graph, closures, outlines }: Finding): Issue[] {
  return graph.tees.flatMap(({ vertex, line }) => {
    if (closures.has(line) || !cutsThrough(lineRoles[line].role)) return [];
    const place = { x: graph.vertices.x[vertex], y: graph.vertices.y[vertex] };
    const own = graph.edgesAt[vertex].some((edge) => graph.covers[edge].every((cover) => cover.line === line));
    const met = graph.edgesAt[vertex].some((edge) => graph.covers[edge].some((cover) => cover.line !== line && cutsThrough(lineRoles[cover.line].role)));
    if (!own || !met || outlines.locate(place) === undefined) return [];
    return [issueAt('t-joint', 'note', graph.vertices.exact(vertex), lines[line].source.described)];
  });
}

function smallLoops({ lines, graph, roles, outlines }: Finding): Issue[] {
  return outlines.small.map(({ steps, area }) => {
    const [{ edge, from }] = steps;
    return issueAt('loop-too-small', 'note', graph.vertices.exact(from), lines[roles[edge].line].source.described, { areaMm2: area / MICRONS_PER_MM ** 2 });
  });
}
