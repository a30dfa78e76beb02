import type { Issue, Severity } from '../base/issue.ts';
import { toMicrons } from '../base/units.ts';
import { arrange, type Arrangement } from './arrangement.ts';
import { buildBlank, inReadingOrder, rulePaths, sortIntoOutlines, type CurveOrder } from './blanks.ts';
import { curvePoint, pathLength } from './curve-part.ts';
import { STRUCTURAL_ROLES, type Dieline, type Role, type RulePath } from './dieline.ts';
import { createMeasuring, findDimensionLines } from './dimension-lines.ts';
import type { Drawing, DrawnLine, LineSource } from './drawing.ts';
import { findFaults, placeOf, usedClosures, zeroLengths, type Finding } from './faults.ts';
import { closeGaps, type Closure } from './gaps.ts';
import { grainOf } from './grain.ts';
import { findFrames } from './frames.ts';
import { isKnife } from './knife-roles.ts';
import { lineGroups } from './line-groups.ts';
import { lineKinds } from './line-kinds.ts';
import { openQuestions } from './open-questions.ts';
import type { ReadOptions } from './options.ts';
import { findOutlyingKinds } from './outlying-kinds.ts';
import { edgeRoles, findOutlines, isFrom, outlineSources } from './outlines.ts';
import { nameLines, settleRoles, type LeftOut, type LineRole, type Naming } from './roles.ts';
import { JOIN_TOLERANCE_MM } from './tolerances.ts';

/**
 * From a drawing's lines to blanks, rules and faults: names, what is no rule, one planar graph of all knife lines, kinds
 * and roles, gaps, outlines, contents.
 */
export function understand(drawing: Drawing, options: Pick<ReadOptions, 'roles' | 'habits' | 'closeGaps' | 'onWork'>): Dieline {
  const { closeGaps: widest, onWork } = options;
  const named = nameEverything(drawing, options);
  const { lines, namings } = named;
  const drawn = lines.flatMap(({ curves }, i) => (pathLength(curves) >= JOIN_TOLERANCE_MM ? [i] : []));
  const { leftOut, graph, inGraph } = findNoRules({ ...drawing, lines }, namings, drawn, onWork);
  const roles = settleRoles({ lines }, namings, leftOut);
  const knives = inGraph.filter((i) => isKnife(roles[i].role));
  const own = knives.map((i) => lines[i]);
  const finding = findBlanks(knives.length === inGraph.length ? graph : arrange(own, onWork), own, knives.map((i) => roles[i]), widest, onWork);

  const order: CurveOrder = new Map(finding.lines.flatMap(({ curves }) => curves).map((curve, i) => [curve, i]));
  const describe = (line: number) => finding.lines[line].source.described;
  const blanks = finding.contents.map((contents) => {
    onWork?.();
    return buildBlank(finding.graph, finding.roles, order, describe, contents);
  });
  const isKept = new Set(knives);
  const areas = lines.flatMap((line, i) => (isKept.has(i) || isKnife(roles[i].role) ? [] : [pathOf(line, roles[i])]));
  const { within, rest } = shareOut(finding, [...areas, ...named.fills]);
  const grain = grainOf(drawing);
  onWork?.();
  const issues = [...drawing.issues, ...named.issues, ...whatIsLeftOut(lines, leftOut), ...zeroLengths(lines), ...findFaults(finding), ...openQuestions(drawing, finding)];
  const whole = inReadingOrder(blanks.map((blank, i) => ({ ...blank, rules: [...blank.rules, ...within[i]] })));
  const outside = [...rulePaths(finding.graph, (edge) => finding.roles[edge], order, describe, finding.outside), ...rest];
  return {
    blanks: whole,
    rest: outside,
    lineGroups: lineGroups(drawing.lines, [...whole.flatMap(({ rules }) => rules), ...outside]),
    ...(grain ? { grain } : {}),
    scale: drawing.scale,
    yAxis: drawing.yAxis,
    fingerprint: drawing.fingerprint,
    issues: issues.map((issue) => inOwnAxes(issue, drawing)).toSorted((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity)),
  };
}

/** Faults are found with places that run down; in some programs y grows upwards. */
function inOwnAxes(issue: Issue, { yAxis }: Drawing): Issue {
  return issue.place && yAxis === 'up' ? { ...issue, place: [issue.place[0], 0 - issue.place[1]] } : issue;
}

const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note'];

/** Lines with what is known of them by rule and name; filled shapes are lines only where the user says so. */
function nameEverything(drawing: Drawing, { roles: rules, habits }: Pick<ReadOptions, 'roles' | 'habits'>) {
  const stroked = nameLines(drawing.lines, rules, habits);
  const filled = nameLines(drawing.fills, rules);
  const lines: DrawnLine[] = [...drawing.lines];
  const namings: Naming[] = [...stroked.namings];
  const fills: RulePath[] = [];
  let ignored: DrawnLine | undefined;
  drawing.fills.forEach((fill, i) => {
    const { known } = filled.namings[i];
    if (known?.reason === 'user rule') {
      lines.push(fill);
      namings.push({ known });
      return;
    }
    if (known && isKnife(known.role)) ignored ??= fill;
    fills.push(pathOf(fill, known && !isKnife(known.role) ? known : { role: 'Artwork', reason: 'shape' }));
  });
  const issues: Issue[] = rules
    .filter((rule) => !stroked.used.has(rule) && !filled.used.has(rule))
    .map((rule) => ({ code: 'role-rule-unused', severity: 'warning', where: rule.text }));
  if (ignored) issues.push({ code: 'fill-is-no-rule', severity: 'note', where: ignored.source.described });
  return { lines, namings, fills, issues };
}

/**
 * Of the lines that no name explains, those that are no rules: dimension lines, then in the graph of what is left frames
 * and outlying kinds. The graph is handed on, for mostly nothing more is left out.
 */
function findNoRules(drawing: Drawing, namings: readonly Naming[], drawn: readonly number[], onWork: ReadOptions['onWork']) {
  const isOpen = (line: number) => namings[line].known === undefined;
  const leftOut = new Map<number, 'Dimensions' | 'Legend'>();
  for (const line of findDimensionLines(drawing, isOpen)) leftOut.set(line, 'Dimensions');
  const inGraph = drawn.filter((line) => !leftOut.has(line) && isKnife(namings[line].known?.role ?? 'Unknown'));
  const lines = inGraph.map((line) => drawing.lines[line]);
  const graph = arrange(lines, onWork);
  const kinds = lineKinds(lines);
  const frames = findFrames({ graph, lines, texts: drawing.texts, page: drawing.page, isOpen: (line) => isOpen(inGraph[line]), kindOf: (line) => kinds[line].key });
  onWork?.();
  const kindOf = new Map(inGraph.flatMap((line, i) => (isOpen(line) ? [[i, kinds[i].key] as const] : [])));
  for (const line of frames) leftOut.set(inGraph[line], 'Legend');
  const measured = createMeasuring(drawing.texts);
  for (const line of findOutlyingKinds(graph, kindOf, frames, (line) => measured(lines[line]))) leftOut.set(inGraph[line], 'Dimensions');
  return { leftOut, graph, inGraph };
}

function whatIsLeftOut(lines: readonly DrawnLine[], leftOut: LeftOut): Issue[] {
  return ([['Dimensions', 'dimension-lines-left-out'], ['Legend', 'frame-left-out']] as const).flatMap(([role, code]): Issue[] => {
    const left = [...leftOut].flatMap(([line, as]) => (as === role ? [line] : []));
    if (left.length === 0) return [];
    const { curves, source } = lines[Math.min(...left)];
    return [{ code, severity: 'note', place: placeOf(curves[0].from), where: source.described, facts: { count: left.length } }];
  });
}

function pathOf({ curves, closed, source }: DrawnLine, { role, reason }: Pick<LineRole, 'role' | 'reason'>): RulePath {
  return { role, reason, curves, closed, source: source.described };
}

const CLOSURE_SOURCE: LineSource = { index: -1, described: 'closed gap', levels: [], stroke: 'none', dash: [], widthMm: 0, filled: false, marked: false };

/**
 * Gaps are seen in the graph of the drawing's own lines. Where some can be closed, a second graph has the closures too,
 * and where some of these turn out to bound neither outline nor opening, a third one is without them.
 */
function findBlanks(open: Arrangement, own: readonly DrawnLine[], ownRoles: readonly LineRole[], widest: number, onWork: ReadOptions['onWork']): Finding {
  const openRoles = edgeRoles(open, ownRoles);
  const [source] = outlineSources(openRoles);
  const closures = closeGaps(open, (edge) => isFrom(openRoles[edge], source), widest);
  const role: LineRole = { role: source === 'cut' ? 'Cutting' : 'Unknown', reason: 'not known', inOutline: true };
  const closed = closures.length === 0 ? undefined : withClosures(own, ownRoles, closures, role, onWork);
  const used = closed ? usedClosures(closed) : [];
  if (closed && used.length === closures.length) return closed;
  return used.length > 0 ? withClosures(own, ownRoles, used, role, onWork) : blanksOf(open, own, ownRoles, new Map());
}

function withClosures(own: readonly DrawnLine[], ownRoles: readonly LineRole[], closed: readonly Closure[], role: LineRole, onWork: ReadOptions['onWork']): Finding {
  const lines = [...own, ...closed.map(({ curves }): DrawnLine => ({ curves, closed: false, source: CLOSURE_SOURCE }))];
  const closures = new Map(closed.map((closure, i) => [own.length + i, closure]));
  return blanksOf(arrange(lines, onWork), lines, [...ownRoles, ...closed.map(() => role)], closures);
}

function blanksOf(graph: Arrangement, lines: readonly DrawnLine[], lineRoles: readonly LineRole[], closures: ReadonlyMap<number, Closure>): Finding {
  const roles = edgeRoles(graph, lineRoles);
  const outlines = findOutlines(graph, roles);
  return { lines, lineRoles, graph, roles, closures, outlines, ...sortIntoOutlines(graph, roles, outlines) };
}

/** Areas and notes that say something of a blank go to the blank they lie in. */
function shareOut({ contents, outlines }: Finding, paths: readonly RulePath[]): { within: RulePath[][]; rest: RulePath[] } {
  const within: RulePath[][] = contents.map(() => []);
  const rest: RulePath[] = [];
  const ofBlank = new Set<Role>([...STRUCTURAL_ROLES, 'Positions']);
  for (const path of paths) {
    const { x, y } = curvePoint(path.curves[0], 0.5);
    const point = { x: toMicrons(x), y: toMicrons(y) };
    const owner = ofBlank.has(path.role) ? (outlines.locate(point)?.outline ?? -1) : -1;
    (owner < 0 ? rest : within[owner]).push(path);
  }
  return { within, rest };
}
