import { toMillimetres } from '../../../base/units.ts';
import type { Format } from '../../../render/format.ts';
import { toSheet, type View } from '../view.ts';
import { html, svg } from './elements.ts';
import { ticks } from './ticks.ts';

/** Breadth of a ruler, pixels. */
export const RULER_PX = 22;
const LENGTHS_PX = [14, 9, 5] as const;

export interface Rulers {
  readonly elements: readonly HTMLElement[];
  show(view: View, format: Format): void;
}

/** Two rulers, from the left edge of the sheet and from its gripper edge. For the eye only; figures are said elsewhere. */
export function rulers(): Rulers {
  const sides = (['along', 'away'] as const).map((side) => {
    const marks = svg('path', { class: 'hand-ticks' });
    const figures = svg('g');
    const picture = svg('svg', { 'aria-hidden': 'true' }, [marks, figures]);
    return { side, marks, figures, element: html('div', { class: `hand-ruler hand-ruler-${side}` }, [picture]) };
  });
  return {
    elements: sides.map(({ element }) => element),
    show: (view, format) => {
      const [one, other] = [toSheet(view, { x: 0, y: view.height }), toSheet(view, { x: view.width, y: 0 })];
      const [start, end] = [{ x: Math.min(one.x, other.x), y: one.y }, { x: Math.max(one.x, other.x), y: other.y }];
      for (const { side, marks, figures } of sides) {
        const isAlong = side === 'along';
        const [from, to] = isAlong ? [toMillimetres(start.x), toMillimetres(end.x)] : [toMillimetres(start.y), toMillimetres(end.y)];
        const place = (mm: number) => (isAlong ? (view.mirrored ? to - mm : mm - from) * view.zoom : view.height - (mm - from) * view.zoom);
        const all = ticks(from, to, view.zoom, format.unit);
        marks.setAttribute('d', all.map(({ at, rank }) => (isAlong ? `M${place(at)} ${RULER_PX}v${-LENGTHS_PX[rank]}` : `M${RULER_PX} ${place(at)}h${-LENGTHS_PX[rank]}`)).join(''));
        figures.replaceChildren(
          ...all.filter(({ rank }) => rank === 0).map(({ at }) => svg('text', { transform: isAlong ? `translate(${place(at) + 3} 10)` : `translate(10 ${place(at) - 3}) rotate(-90)` }, [format.bareLength(at)])),
        );
      }
    },
  };
}
