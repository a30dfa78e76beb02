import { toMillimetres } from '../../../base/units.ts';
import type { Point } from '../../../geometry/point.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { boxAround, type SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import { toScreen, type View } from '../view.ts';
import { svg } from './elements.ts';

export interface OverlayOptions {
  readonly words: HandWords;
  readonly format: Format;
  readonly distances: boolean;
}

/** More flags than this hide the sheet; the status line counts them all. */
const MOST_FLAGS = 60;

/**
 * What lies over the sheet in screen pixels, drawn anew with each frame: marquee, lines and steps met, distances, measure,
 * flags at faults. Few elements at any time.
 */
export function overlayItems(situation: Situation, frame: SheetFrame, { words, format, distances }: OverlayOptions): SVGElement[] {
  const { view, interaction, live, measured, faults } = situation;
  const items: SVGElement[] = [];
  if (live) {
    items.push(...lineItems(situation, frame, words));
    if (distances) {
      for (const { from, to, distance, against } of live.distances) {
        items.push(...distanceItems(toScreen(view, from), toScreen(view, to), format.bareLength(toMillimetres(distance)), `hand-distance hand-distance-${against}`));
      }
    }
  }
  items.push(...faults.slice(0, MOST_FLAGS).map(({ place: [x, y] }) => flag(toScreen(view, { x: x * 1000, y: y * 1000 }))));
  if (measured) {
    const [from, to] = [toScreen(view, measured.from), toScreen(view, measured.to)];
    const by = { x: toMillimetres(measured.to.x - measured.from.x), y: toMillimetres(measured.to.y - measured.from.y) };
    items.push(...distanceItems(from, to, format.length(Math.sqrt(by.x * by.x + by.y * by.y)), 'hand-measure'));
  }
  if (view.mirrored) items.push(...text({ x: view.width / 2, y: 14 }, words.ruleSide, 'hand-label'));
  if (interaction.kind === 'marquee') items.push(marquee(view, interaction.start, interaction.end));
  return items;
}

function marquee(view: View, start: Point, end: Point): SVGElement {
  const [a, b] = [toScreen(view, start), toScreen(view, end)];
  return svg('rect', {
    class: `hand-marquee ${end.x >= start.x ? 'is-inside' : 'is-touching'}`,
    x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), width: Math.abs(a.x - b.x), height: Math.abs(a.y - b.y),
  });
}

function lineItems(situation: Situation, frame: SheetFrame, words: HandWords): SVGElement[] {
  const { view, live } = situation;
  const blanks = new Map(shown(situation).blanks.map((blank) => [blank.id, blank]));
  const moved = shown(situation).blanks.filter(({ id }) => situation.selected.has(id));
  return (live?.snapped?.lines ?? []).flatMap((line) => {
    const others = line.with.flatMap((id) => blanks.get(id) ?? []);
    const box = boxAround(frame, [...others, ...moved]);
    if (!box) return [];
    const at = line.axis === 'x' ? toScreen(view, { x: line.at, y: 0 }).x : toScreen(view, { x: 0, y: line.at }).y;
    const ends = [toScreen(view, { x: box.minX, y: box.minY }), toScreen(view, { x: box.maxX, y: box.maxY })];
    const [low, high] = [{ x: Math.min(ends[0].x, ends[1].x), y: ends[0].y }, { x: Math.max(ends[0].x, ends[1].x), y: ends[1].y }];
    const d = line.axis === 'x' ? `M${at} ${high.y - 12}V${low.y + 12}` : `M${low.x - 12} ${at}H${high.x + 12}`;
    const name = line.kind === 'step' ? [text({ x: line.axis === 'x' ? at : low.x - 12, y: line.axis === 'x' ? high.y - 22 : at }, words.step, 'hand-label')] : [];
    return [svg('path', { class: `hand-line hand-line-${line.kind}`, d }), ...name.flat()];
  });
}

/** A line with short strokes at its ends and its figure on a label in the middle. */
function distanceItems(from: Point, to: Point, figure: string, name: string): SVGElement[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  const end = ({ x, y }: Point) => `M${x - (dy / length) * 4} ${y + (dx / length) * 4}L${x + (dy / length) * 4} ${y - (dx / length) * 4}`;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return [svg('path', { class: name, d: `M${from.x} ${from.y}L${to.x} ${to.y}${end(from)}${end(to)}` }), ...text(middle, figure, 'hand-label')];
}

/** Wide enough for figures in the page's small type, pixels. */
const CHARACTER_PX = 6.8;

function text({ x, y }: Point, content: string, name: string): SVGElement[] {
  const width = content.length * CHARACTER_PX + 8;
  return [svg('rect', { class: `${name}-ground`, x: x - width / 2, y: y - 9, width, height: 18, rx: 2 }), svg('text', { class: name, x, y: y + 4 }, [content])];
}

/** A triangle with an exclamation mark that stands on the place of the fault. */
function flag({ x, y }: Point): SVGElement {
  return svg('g', { class: 'hand-flag', transform: `translate(${x} ${y})` }, [
    svg('path', { d: 'M0 0L-9 -16H9Z' }),
    svg('path', { class: 'hand-flag-sign', d: 'M0 -13.5V-8M0 -6.2V-4.4' }),
  ]);
}
