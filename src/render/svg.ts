import { writePathData } from '../geometry/path-data.ts';
import { degreesOf } from '../geometry/turn.ts';
import { LENGTH_DECIMALS, plain } from './plain.ts';
import { COLOURS, type Look, type Paint, type Scene, type SceneItem } from './scene.ts';
import { element, escapeXml, type Attributes } from './xml.ts';

export interface SvgOptions {
  /** Put before every id, so that several pictures can stand in one page. */
  readonly idPrefix?: string;
  /** `true size`: width and height in mm; `fitted`: only the view box, for a page that sets the width. */
  readonly size?: 'true size' | 'fitted';
}

export const FONTS = 'Helvetica, Arial, Liberation Sans, sans-serif';

/**
 * The scene as SVG, by plain text: the same bytes for the same scene in every engine. User units are millimetres; within
 * the one group of the picture y runs up from the gripper edge, so that numbers in path data are places on the sheet.
 * Every layer is a group with its name as id and as label for drawing programs.
 */
export function sceneToSvg(scene: Scene, { idPrefix = '', size = 'true size' }: SvgOptions = {}): string {
  const { minX, minY, maxX, maxY } = scene.box;
  const width = plain(maxX - minX);
  const height = plain(maxY - minY);
  const id = (name: string) => idPrefix + name.replace(/[^\w-]/g, '_');
  const items = (list: readonly SceneItem[]) => list.map((item) => `\n${itemToSvg(item, id)}`).join('');

  const symbols = scene.symbols.map((symbol) => `\n${element('g', { id: id(symbol.id) }, `${items(symbol.items)}\n`)}`).join('');
  const layers = scene.layers.map(({ name, items: list }) => `\n${element('g', { id: id(name), 'data-layer': name }, `${items(list)}\n`)}`).join('');
  const parts = [
    element('title', { id: id('title') }, escapeXml(scene.title)),
    element('desc', { id: id('description') }, escapeXml(scene.description)),
    element('defs', {}, `${symbols}\n`),
    element('g', { transform: 'scale(1 -1)', 'font-family': FONTS, fill: 'none', 'fill-rule': 'evenodd', 'stroke-linejoin': 'round' }, `${layers}\n`),
  ];
  const root = {
    xmlns: 'http://www.w3.org/2000/svg',
    ...(size === 'true size' ? { width: `${width}mm`, height: `${height}mm` } : {}),
    viewBox: `${plain(minX)} ${plain(-maxY)} ${width} ${height}`,
    role: 'img',
    'aria-labelledby': `${id('title')} ${id('description')}`,
  };
  return `${element('svg', root, `\n${parts.join('\n')}\n`)}\n`;
}

function itemToSvg(item: SceneItem, id: (name: string) => string): string {
  switch (item.kind) {
    case 'path':
      return element('path', { d: item.paths.map((path) => writePathData(path, LENGTH_DECIMALS)).join(' '), ...lookAttributes(item.look) });
    case 'use': {
      const turn = item.turn === 0 ? '' : ` rotate(${degreesOf(item.turn)})`;
      return element('use', { href: `#${id(item.symbol)}`, transform: `translate(${plain(item.at.x)} ${plain(item.at.y)})${turn}` });
    }
    case 'text': {
      const turn = item.turn === 0 ? '' : ` rotate(${degreesOf(item.turn)})`;
      const attributes = {
        transform: `translate(${plain(item.at.x)} ${plain(item.at.y)})${turn} scale(1 -1)`,
        'font-size': plain(item.size),
        'font-weight': item.bold ? 'bold' : undefined,
        'text-anchor': item.anchor === 'start' ? undefined : item.anchor,
        fill: colour(item.paint),
      };
      return element('text', attributes, escapeXml(item.text));
    }
  }
}

function lookAttributes(look: Look): Attributes {
  return {
    fill: look.fill && colour(look.fill),
    stroke: look.stroke && colour(look.stroke),
    'stroke-width': look.width && plain(look.width),
    'stroke-dasharray': look.dash?.map(plain).join(' '),
    'stroke-linecap': look.round ? 'round' : undefined,
  };
}

function colour(paint: Paint): string {
  return `#${COLOURS[paint].map((part) => part.toString(16).padStart(2, '0')).join('')}`;
}
