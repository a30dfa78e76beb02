import { writePathData } from '../../geometry/path-data.ts';
import { degreesOf } from '../../geometry/turn.ts';
import { LENGTH_DECIMALS, plain } from '../../render/plain.ts';
import type { Look, Scene, SceneItem } from '../../render/scene.ts';

const SVG = 'http://www.w3.org/2000/svg';

/**
 * A scene as elements of the page. Text of a drawing only ever becomes text, never markup. Paints are classes, so that the
 * page's light and dark colours hold here too. `prefix` keeps names of several pictures on one page apart.
 */
export function sceneNodes(scene: Scene, prefix: string): SVGElement[] {
  const id = (name: string) => prefix + name.replace(/[^\w-]/g, '_');
  const defs = node('defs', {});
  for (const symbol of scene.symbols) defs.append(group({ id: id(symbol.id) }, symbol.items, id));
  const picture = node('g', { transform: 'scale(1 -1)', class: 'scene' });
  for (const { name, items } of scene.layers) picture.append(group({ 'data-layer': name }, items, id));
  return [defs, picture];
}

function group(attributes: Attributes, items: readonly SceneItem[], id: (name: string) => string): SVGElement {
  const made = node('g', attributes);
  made.append(...items.map((item) => itemNode(item, id)));
  return made;
}

function itemNode(item: SceneItem, id: (name: string) => string): SVGElement {
  if (item.kind === 'path') return node('path', { d: item.paths.map((path) => writePathData(path, LENGTH_DECIMALS)).join(' '), ...lookAttributes(item.look) });
  const turn = item.turn === 0 ? '' : ` rotate(${degreesOf(item.turn)})`;
  const place = `translate(${plain(item.at.x)} ${plain(item.at.y)})${turn}`;
  if (item.kind === 'use') return node('use', { href: `#${id(item.symbol)}`, transform: place });
  const text = node('text', {
    transform: `${place} scale(1 -1)`,
    'font-size': plain(item.size),
    'font-weight': item.bold ? 'bold' : undefined,
    'text-anchor': item.anchor === 'start' ? undefined : item.anchor,
    class: `fill-${item.paint}`,
  });
  text.textContent = item.text;
  return text;
}

function lookAttributes({ fill, stroke, width, dash, round }: Look): Attributes {
  const classes = [fill && `fill-${fill}`, stroke && `stroke-${stroke}`].filter(Boolean).join(' ');
  return {
    class: classes,
    'stroke-width': width === undefined ? undefined : plain(width),
    'stroke-dasharray': dash?.map(plain).join(' '),
    'stroke-linecap': round ? 'round' : undefined,
  };
}

type Attributes = Readonly<Record<string, string | undefined>>;

export function node(name: string, attributes: Attributes): SVGElement {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) if (value !== undefined && value !== '') made.setAttribute(key, value);
  return made;
}
