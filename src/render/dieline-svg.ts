import type { Dieline, Role } from '../dieline/dieline.ts';
import { mapPath, scaling } from '../geometry/affine.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { writePathData } from '../geometry/path-data.ts';
import { LENGTH_DECIMALS, plain } from './plain.ts';
import { FONTS } from './svg.ts';
import { element, escapeXml, type Attributes } from './xml.ts';

/** Clear sheet around the blank, mm: room for the grain note below it. */
const MARGIN = 10;

/** How each role looks, so that it can be told apart without colours too; any other rule is drawn dash-dotted. */
const LOOKS: Readonly<Partial<Record<Role, Attributes>>> = {
  Cutting: { stroke: '#1f2428' },
  Creasing: { stroke: '#a63426', 'stroke-dasharray': '3 1.5' },
  Gluing: { stroke: '#686e70', 'stroke-width': 0.2, 'stroke-dasharray': '1 1' },
};
const OTHER: Attributes = { stroke: '#1f2428', 'stroke-dasharray': '5 1 1 1' };

/**
 * A dieline as SVG for drawing programs: true size in mm, y down, a layer for each role under its ISO 19593-1 name, the
 * fibre direction as a note with an arrow. `style`, for a blank drawn from dimensions, goes onto the root, so that a flap
 * can later be changed by its name. Reading it gives the same blanks, rules and grain back. Throws RangeError for
 * a dieline without blanks.
 */
export function dielineSvg(title: string, { blanks, grain }: Dieline, style?: { readonly id: string; readonly values: Readonly<Record<string, number>> }): string {
  if (blanks.length === 0) throw new RangeError('a dieline without blanks has no drawing');
  const minX = Math.min(...blanks.map(({ box }) => box.minX)) - MARGIN;
  const maxY = Math.max(...blanks.map(({ box }) => box.maxY)) + MARGIN;
  const width = Math.max(...blanks.map(({ box }) => box.maxX)) + MARGIN - minX;
  const height = maxY - Math.min(...blanks.map(({ box }) => box.minY)) + MARGIN;
  const paths = new Map<Role, CurvePath[]>();
  for (const { role, curves } of blanks.flatMap(({ rules }) => rules)) paths.set(role, [...(paths.get(role) ?? []), curves]);
  const layers = [...paths].map(([role, list]) => layer(role, LOOKS[role] ?? OTHER, list.map(pathElement)));
  const root = { xmlns: 'http://www.w3.org/2000/svg', width: `${plain(width)}mm`, height: `${plain(height)}mm`, viewBox: `${plain(minX)} ${plain(-maxY)} ${plain(width)} ${plain(height)}`, 'data-style': style?.id, 'data-values': style && JSON.stringify(style.values) };
  const parts = [
    element('title', {}, escapeXml(title)),
    element('g', { fill: 'none', 'stroke-width': 0.35, 'stroke-linejoin': 'round' }, `\n${layers.join('\n')}\n`),
    ...(grain ? [grainNote(grain, minX + MARGIN / 2, height - maxY - MARGIN / 3)] : []),
  ];
  return `${element('svg', root, `\n${parts.join('\n')}\n`)}\n`;
}

function layer(role: Role, look: Attributes, items: readonly string[]): string {
  return element('g', { id: role, 'data-layer': role, ...look }, `\n${items.join('\n')}\n`);
}

function pathElement(curves: CurvePath): string {
  return element('path', { d: writePathData(mapPath(scaling(1, -1), curves), LENGTH_DECIMALS) });
}

/** Written along the fibres: the arrow in it shows the direction. */
function grainNote(grain: 'x' | 'y', x: number, y: number): string {
  const turn = grain === 'x' ? '' : ' rotate(-90)';
  const note = element('text', { transform: `translate(${plain(x)} ${plain(y)})${turn}`, 'font-size': 4 }, 'Grain ↔');
  return element('g', { id: 'Legend', 'data-layer': 'Legend', 'font-family': FONTS, fill: '#1f2428' }, `\n${note}\n`);
}
