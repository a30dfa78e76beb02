import type { StyledBlank } from '../dieline/styles/dieline-of-style.ts';
import type { FlatBlank } from '../dieline/styles/lay-flat.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { boxOf, type Box, type Point } from '../geometry/point.ts';
import { chainFits, dimensionChain } from './dimension.ts';
import { createFormat } from './format.ts';
import { ruleLook } from './design-symbols.ts';
import { scaleFor, type Scale } from './scale.ts';
import type { Scene, SceneItem } from './scene.ts';
import { drawn, label, rectangle } from './shapes.ts';
import { runsBetween, type Run } from './steps.ts';
import { textWidth } from './text-width.ts';
import { titleBlock } from './title-block.ts';

const format = createFormat('en');

/** Only for the places of names and the extent of the picture. */
const CHORD_MM = 0.2;

/** Creases nearer to one another than this are measured as one: flaps are set in by fractions of a millimetre. */
const ONE_CREASE_MM = 1.5;

/** A blank drawn from dimensions, with its panels named, creases measured along both edges, and every value below it. */
export function stylePicture({ style, values, flat }: StyledBlank): Scene {
  const box = boxOf(flattenPath(flat.outline, CHORD_MM));
  const size = { width: box.maxX - box.minX, height: box.maxY - box.minY };
  const scale = scaleFor(size);
  const { unit } = scale;
  const left = box.minX - unit;
  const right = box.maxX + 5 * unit;
  const cells = [{ label: 'style', value: style.id }, ...Object.entries(values).map(([name, value]) => ({ label: name, value: format.length(value) }))];
  const legend = [{ look: ruleLook('Cutting', scale), text: 'cut' }, ...(flat.creases.length > 0 ? [{ look: ruleLook('Creasing', scale), text: 'crease' }] : []), ...(flat.gluing.length > 0 ? [{ look: ruleLook('Gluing', scale), text: 'glue area' }] : [])];
  const title = titleBlock(cells, legend, left, box.minY - 2 * unit, right - left, scale);
  const whole: Box = { minX: left - unit, minY: box.minY - 3 * unit - title.depth, maxX: right + unit, maxY: box.maxY + 5 * unit };
  return {
    title: `${style.id}: ${style.description}`,
    description: `Flat blank, ${format.size(size.width, size.height)}, with its creases measured.`,
    box: whole,
    sheet: { width: whole.maxX - whole.minX, height: whole.maxY - whole.minY },
    symbols: [],
    layers: [
      { name: 'Surround', items: [drawn([rectangle(whole.minX, whole.minY, whole.maxX, whole.maxY)], { fill: 'paper' })] },
      { name: 'Blank', items: [drawn([flat.outline, ...flat.openings], { fill: 'blank' })] },
      { name: 'Gluing', items: flat.gluing.map(({ area }) => drawn([area], ruleLook('Gluing', scale))) },
      { name: 'Creasing', items: [drawn(flat.creases, ruleLook('Creasing', scale))] },
      { name: 'Cutting', items: [drawn([flat.outline, ...flat.openings, ...flat.slits], ruleLook('Cutting', scale))] },
      { name: 'Panels', items: flat.panels.flatMap((panel) => panelName(panel, scale)) },
      { name: 'Dimensions', items: [...chain(flat, box, 'x', scale), ...chain(flat, box, 'y', scale)] },
      { name: 'Title block', items: title.items },
    ].filter(({ items }) => items.length > 0),
  };
}

/** In the middle of the panel where it has room, lying or upright. */
function panelName({ id, outline }: FlatBlank['panels'][number], { unit }: Scale): SceneItem[] {
  const { minX, minY, maxX, maxY } = boxOf(flattenPath(outline, CHORD_MM));
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const size = unit * 0.9;
  // Flaps taper, so that a name has less room than their box.
  const width = (textWidth(id, size) + unit) * 1.25;
  if (width <= maxX - minX && maxY - minY > 1.6 * size) return [label(id, { x, y: y - size * 0.36 }, size, { anchor: 'middle', paint: 'grey' })];
  if (width <= maxY - minY && maxX - minX > 1.6 * size) return [label(id, { x: x + size * 0.36, y }, size, { anchor: 'middle', turn: 1, paint: 'grey' })];
  return [];
}

/** From crease to crease; the whole alone where the creases stand too close to be measured one by one. */
function chain({ panels }: FlatBlank, box: Box, axis: 'x' | 'y', scale: Scale): SceneItem[] {
  const across = axis === 'x' ? 'y' : 'x';
  const [low, high] = axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY];
  const along = (point: Point) => point[axis];
  const hinges = panels.flatMap(({ hangsOn }) => (hangsOn && hangsOn.hinge.from[axis] === hangsOn.hinge.to[axis] && hangsOn.hinge.from[across] !== hangsOn.hinge.to[across] ? [along(hangsOn.hinge.from)] : []));
  const places = [low, ...hinges.toSorted((a, b) => a - b), high];
  const apart = places.filter((place, i) => i === 0 || place === high || (place - places[i - 1]! > ONE_CREASE_MM && high - place > ONE_CREASE_MM));
  const wholeRun: Run[] = [{ from: low, step: high - low, count: 1 }];
  const runs = runsBetween(apart);
  const at = (row: number) => (axis === 'x' ? box.maxY : box.maxX) + (1.2 + 1.7 * row) * scale.unit;
  const edge = axis === 'x' ? box.maxY : box.maxX;
  const draw = (some: readonly Run[], row: number) => dimensionChain({ axis, at: at(row), edge, runs: some }, format, scale);
  return runs.length > 1 && chainFits(runs, format, scale) ? [...draw(runs, 0), ...draw(wholeRun, 1)] : draw(wholeRun, 0);
}
