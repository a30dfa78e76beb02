import type { LayoutFile, MmRing } from '../layout/layout-file.ts';
import { CHART_TEXT, write } from './chart-marks.ts';
import { chartSvg } from './chart-parts.ts';
import { plain } from './plain.ts';
import { textWidth } from './text-width.ts';
import { element } from './xml.ts';

/** A sheet to be drawn small. */
export interface Thumbnail {
  readonly layout: LayoutFile;
  /** Below the picture; the first in bold. */
  readonly caption: readonly string[];
  /** Stands out by a heavier edge. */
  readonly marked: boolean;
}

/** Pixels at the picture's own size. */
const WIDTH = 720;
const COLUMNS = 4;
const SPACE = 18;
const LINE = CHART_TEXT * 1.3;
const ACCENT = '#a63426';

/** Sheets side by side, all at one scale, gripper edge at the bottom: what is large looks large. */
export function sheetThumbnails(title: string, thumbnails: readonly Thumbnail[]): string {
  const columns = Math.min(COLUMNS, thumbnails.length);
  const cell = (WIDTH - SPACE * (columns + 1)) / columns;
  const scale = Math.min(cell / Math.max(...thumbnails.map(({ layout }) => layout.sheet.width)), 220 / Math.max(...thumbnails.map(({ layout }) => layout.sheet.height)));
  const parts: string[] = [];
  let y = 0;
  const captioned = thumbnails.map((one) => ({ ...one, caption: one.caption.flatMap((text, i) => linesOf(text, i === 0, cell)) }));
  for (let start = 0; start < thumbnails.length; start += columns) {
    const row = captioned.slice(start, start + columns);
    const height = Math.max(...row.map(({ layout }) => layout.sheet.height)) * scale;
    const base = y + SPACE + height;
    row.forEach((thumbnail, i) => parts.push(sheetAt(thumbnail, SPACE + i * (cell + SPACE), base, scale, cell)));
    y = base + LINE * Math.max(...row.map(({ caption }) => caption.length)) + 6;
  }
  return chartSvg(title, WIDTH, y + 6, parts);
}

interface Line {
  readonly text: string;
  readonly isBold: boolean;
}

/** As many words to a line as the room holds. */
function linesOf(text: string, isBold: boolean, room: number): Line[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)!} ${word}`;
    if (lines.length > 0 && textWidth(longer, CHART_TEXT, isBold) <= room) lines.splice(-1, 1, longer);
    else lines.push(word);
  }
  return lines.map((line) => ({ text: line, isBold }));
}

function sheetAt({ layout, caption, marked }: Omit<Thumbnail, 'caption'> & { readonly caption: readonly Line[] }, x: number, base: number, scale: number, room: number): string {
  const { sheet, usable, designs, placements, keepOut } = layout;
  const rings = new Map(designs.map(({ id, outline, openings }) => [id, [outline, ...openings].map(ringPath).join('')]));
  const placed = placements.map(({ design, rotation, x: px, y: py }) => `<path transform="translate(${plain(px)} ${plain(py)}) rotate(${rotation})" d="${rings.get(design)}"/>`);
  const thin = 0.7 / scale;
  const picture = [
    element('rect', { width: plain(sheet.width), height: plain(sheet.height), fill: '#ffffff', stroke: marked ? ACCENT : '#1f2428', 'stroke-width': plain(marked ? 3 * thin : 1.4 * thin) }),
    element('rect', { width: plain(sheet.width), height: plain(usable.y), fill: '#cdc8bc' }),
    ...keepOut.map(({ ring }) => `<path d="${ringPath(ring)}" fill="#686e70"/>`),
    element('g', { fill: '#f3ede0', stroke: '#1f2428', 'stroke-width': plain(thin), 'fill-rule': 'evenodd' }, placed.join('')),
  ];
  // Only a word longer than the room is written smaller.
  const size = ({ text, isBold }: Line) => Math.min(1, room / textWidth(text, CHART_TEXT, isBold));
  return [
    element('g', { transform: `translate(${plain(x)} ${plain(base)}) scale(${scale.toFixed(5)} ${(-scale).toFixed(5)})` }, picture.join('')),
    ...caption.map((line, i) => element('g', { transform: `translate(${plain(x)} ${plain(base + LINE * (i + 1))}) scale(${plain(size(line))})` }, write(line.text, 0, 0, 'start', line.isBold))),
  ].join('\n');
}

function ringPath(ring: MmRing): string {
  return `${ring.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${plain(x)} ${plain(y)}`).join('')}Z`;
}
