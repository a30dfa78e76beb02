import type { Dieline, Role, RulePath } from '../dieline/dieline.ts';
import { ellipseArc } from '../geometry/arc.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { boxOf, type Box, type Point } from '../geometry/point.ts';
import { numberFaults } from './drawing-text.ts';
import type { Look, PathItem, Scene, SceneItem, SceneLayer, TextItem } from './scene.ts';
import { sceneToSvg } from './svg.ts';

/** The drawing as understood: blanks filled, rules by role, what was left out in grey, faults numbered as in the list. */
export function drawingSvg(file: string, dieline: Dieline): string {
  return sceneToSvg(drawingScene(file, dieline));
}

/** Rules tell themselves apart in black and white: whole lines are cut, dashes crease, dots perforate. */
const LOOKS: Readonly<Partial<Record<Role, Look>>> = {
  Cutting: { stroke: 'ink', width: 0.4 },
  Creasing: { stroke: 'ink', width: 0.3, dash: [3, 1.5] },
  Perforating: { stroke: 'ink', width: 0.4, dash: [0.01, 1.2], round: true },
  Unknown: { stroke: 'accent', width: 0.3, dash: [1.2, 0.8] },
};
const OTHER_RULE: Look = { stroke: 'ink', width: 0.3, dash: [5, 1, 1, 1] };
const LEFT_OUT: Look = { stroke: 'light', width: 0.2 };

function drawingScene(file: string, { blanks, rest, issues }: Dieline): Scene {
  const paths = [...blanks.map(({ outline }) => outline), ...rest.map(({ curves }) => curves)];
  const inner = paths.length > 0 ? boxOf(paths.flatMap((path) => flattenPath(path, 0.5))) : { minX: 0, minY: 0, maxX: 100, maxY: 100 };
  const unit = Math.max(inner.maxX - inner.minX, inner.maxY - inner.minY) / 100;
  const box = grown(inner, 6 * unit);
  const rules = new Map<Role, RulePath[]>();
  for (const rule of blanks.flatMap((blank) => blank.rules)) rules.set(rule.role, [...(rules.get(rule.role) ?? []), rule]);
  const layers: SceneLayer[] = [
    { name: 'left out', items: [pathItem(rest.map(({ curves }) => curves), LEFT_OUT)] },
    { name: 'blanks', items: blanks.map(({ outline, openings }) => pathItem([outline, ...openings], { fill: 'blank' })) },
    ...[...rules].map(([role, list]): SceneLayer => ({ name: role, items: [pathItem(list.map(({ curves }) => curves), LOOKS[role] ?? OTHER_RULE)] })),
    { name: 'numbers', items: blanks.length > 1 ? blanks.map(({ number, box: own }) => text(String(number), middle(own), 5 * unit)) : [] },
    { name: 'faults', items: [...numberFaults(issues)].flatMap(([issue, number]) => faultMark(issue.place!, number, unit)) },
  ];
  return {
    title: `${file} as understood`,
    description: `${blanks.length} blanks, ${issues.length} remarks`,
    box,
    sheet: { width: box.maxX - box.minX, height: box.maxY - box.minY },
    symbols: [],
    layers: layers.filter(({ items }) => items.length > 0),
  };
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

function text(content: string, at: Point, size: number): TextItem {
  return { kind: 'text', text: content, at, size, anchor: 'middle', turn: 0, bold: true, paint: 'accent' };
}

/** A ring round the place, and beside it the number. The place is in the drawing's axes, y down. */
function faultMark([x, y]: readonly [number, number], number: number, unit: number): SceneItem[] {
  const centre = { x, y: -y };
  const ring = ellipseArc({ centre, radiusX: unit, radiusY: unit, tilt: 0 }, 0, 2 * Math.PI);
  return [pathItem([[ring]], { stroke: 'accent', width: unit / 5 }), text(String(number), { x: x + 2.2 * unit, y: -y + 0.6 * unit }, 2 * unit)];
}
