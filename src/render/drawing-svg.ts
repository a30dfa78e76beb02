import { groupBy } from '../base/group-by.ts';
import type { Issue } from '../base/issue.ts';
import type { Dieline, Role } from '../dieline/dieline.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { boxOf, type Box, type Point } from '../geometry/point.ts';
import { faultMarks, type FaultPlace } from './fault-marks.ts';
import { numberFaults } from './fault-numbers.ts';
import { englishDrawing, type DrawingWords } from './messages/english-drawing.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import type { Look, PathItem, Scene, SceneItem, SceneLayer, TextItem } from './scene.ts';
import { sceneToSvg } from './svg.ts';

/** The drawing as understood: blanks filled, rules by role, what was left out in grey, faults numbered as in the list. */
export function drawingSvg(file: string, dieline: Dieline, { drawing, picture, locale }: Language = englishLanguage): string {
  return sceneToSvg(drawingScene(file, dieline, locale === englishLanguage.locale ? {} : picture.roles, drawing));
}

/** What the legend calls roles; a role without a name keeps its own. */
export type RoleNames = Readonly<Partial<Record<Role, string>>>;

/** Rules tell themselves apart in black and white: whole lines are cut, dashes crease, dots perforate. */
const LOOKS: Readonly<Partial<Record<Role, Look>>> = {
  Cutting: { stroke: 'ink', width: 0.4 },
  Creasing: { stroke: 'ink', width: 0.3, dash: [3, 1.5] },
  Perforating: { stroke: 'ink', width: 0.4, dash: [0.01, 1.2], round: true },
  Unknown: { stroke: 'accent', width: 0.3, dash: [1.2, 0.8] },
};
const OTHER_RULE: Look = { stroke: 'ink', width: 0.3, dash: [5, 1, 1, 1] };
const LEFT_OUT: Look = { stroke: 'light', width: 0.2 };

export function drawingScene(file: string, { blanks, rest, issues, yAxis }: Dieline, names: RoleNames = {}, words: DrawingWords = englishDrawing): Scene {
  const paths = [...blanks.map(({ outline }) => outline), ...rest.map(({ curves }) => curves)];
  const inner = boxOf(paths.flatMap((path) => flattenPath(path, PICTURE_TOLERANCE_MM)));
  const unit = Math.max(inner.maxX - inner.minX, inner.maxY - inner.minY) / 100;
  const rules = new Map<Role, CurvePath[]>();
  for (const { role, curves } of blanks.flatMap((blank) => blank.rules)) rules.set(role, [...(rules.get(role) ?? []), curves]);
  const key = legend([...rules.keys()], rest.length > 0 ? words.leftOut : undefined, names, { x: inner.minX, y: inner.minY - 5 * unit }, unit);
  const box = grown(inner, 6 * unit);
  const layers: SceneLayer[] = [
    { name: 'left out', items: [pathItem(rest.map(({ curves }) => curves), LEFT_OUT)] },
    { name: 'blanks', items: blanks.map(({ outline, openings }) => pathItem([outline, ...openings], { fill: 'blank' })) },
    ...[...rules].map(([role, list]): SceneLayer => ({ name: role, items: [pathItem(list, lookOf(role))] })),
    { name: 'numbers', items: blanks.length > 1 ? blanks.map(({ number, box: own }) => text(String(number), middle(own), 5 * unit, 'middle')) : [] },
    { name: 'legend', items: key },
    { name: 'faults', items: faultMarks(faultPlaces(issues, yAxis), unit, box) },
  ];
  const whole = { ...box, minY: box.minY - 3 * unit * rules.size };
  return {
    title: words.picture.title(file),
    description: words.picture.description(blanks.length, issues.length),
    box: whole,
    sheet: { width: whole.maxX - whole.minX, height: whole.maxY - whole.minY },
    symbols: [],
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

/** Only for the extent of the picture. */
const PICTURE_TOLERANCE_MM = 0.5;

function lookOf(role: Role): Look {
  return LOOKS[role] ?? OTHER_RULE;
}

/** One row a role: a piece of its line and its name. */
function legend(roles: readonly Role[], leftOut: string | undefined, names: RoleNames, { x, y }: Point, unit: number): SceneItem[] {
  const rows: [string, Look][] = [...roles.map((role): [string, Look] => [names[role] ?? role, lookOf(role)]), ...(leftOut === undefined ? [] : [[leftOut, LEFT_OUT] as [string, Look]])];
  return rows.flatMap(([name, look], i): SceneItem[] => {
    const height = y - 3 * unit * i;
    const sample: CurvePath = [{ kind: 'line', from: { x, y: height }, to: { x: x + 10 * unit, y: height } }];
    return [pathItem([sample], look), { ...text(name, { x: x + 12 * unit, y: height - 0.6 * unit }, 1.8 * unit, 'start'), bold: false, paint: 'ink' }];
  });
}

function pathItem(paths: readonly CurvePath[], look: Look): PathItem {
  return { kind: 'path', paths, look };
}

function grown({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

function middle({ minX, minY, maxX, maxY }: Box): Point {
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

function text(content: string, at: Point, size: number, anchor: TextItem['anchor']): TextItem {
  return { kind: 'text', text: content, at, size, anchor, turn: 0, bold: true, paint: 'accent' };
}

/** Remarks by their places, which are in the drawing's axes. */
function faultPlaces(issues: readonly Issue[], yAxis: Dieline['yAxis']): FaultPlace[] {
  const placed = groupBy(numberFaults(issues), ([{ place }]) => place!.join(' '));
  return [...placed.values()].map((marks) => {
    const [x, y] = marks[0]![0].place!;
    return { at: { x, y: yAxis === 'up' ? y : -y }, numbers: marks.map(([, number]) => number) };
  });
}
