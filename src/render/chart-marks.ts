import { plain } from './plain.ts';
import { element, escapeXml } from './xml.ts';

/** Marks of small charts, in the colours of the text around them, so that a chart can stand on dark ground. Pixels. */
export const CHART_TEXT = 11;

export function rule(x1: number, y1: number, x2: number, y2: number, strength: number, dash?: string): string {
  return element('path', { d: `M${plain(x1)} ${plain(y1)}L${plain(x2)} ${plain(y2)}`, stroke: 'currentColor', 'stroke-opacity': strength, 'stroke-dasharray': dash, fill: 'none' });
}

export function write(text: string, x: number, y: number, anchor: 'end' | 'middle' | 'start', bold = false): string {
  return element('text', { x: plain(x), y: plain(y), 'text-anchor': anchor, 'font-weight': bold ? 'bold' : undefined, fill: 'currentColor' }, escapeXml(text));
}
