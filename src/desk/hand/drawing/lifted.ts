import { toMillimetres } from '../../../base/units.ts';
import type { Blank } from '../document.ts';
import type { Situation } from '../situation.ts';
import type { DesignDrawing } from './design-drawings.ts';
import { svg } from './elements.ts';

/**
 * The blanks under way, in a drawing of their own that is moved as a whole by CSS: while they are dragged the browser
 * paints nothing of the sheet anew. The blanks themselves stay in the sheet as pale ghosts until they are dropped.
 */
export interface LiftedLayer {
  readonly element: SVGGElement;
  show(situation: Situation, numberOf: (id: number) => number | undefined): void;
}

export function liftedLayer(drawings: readonly (readonly DesignDrawing[])[]): LiftedLayer {
  const element = svg('g', { 'aria-hidden': 'true' });
  let shown: readonly Blank[] = [];
  let groups = new Map<number, SVGGElement>();

  const draw = ({ part, turn, x, y }: Blank, number: number | undefined, mirrored: boolean | undefined) => {
    const { id, number: at, numberSize } = drawings[part][turn];
    return svg('g', { class: 'hand-blank is-selected', transform: `translate(${toMillimetres(x)} ${toMillimetres(y)})` }, [
      svg('use', { href: `#${id}` }),
      svg('text', { class: 'hand-number', ...numberPlace(at, numberSize, mirrored) }, [String(number ?? '')]),
    ]);
  };

  return {
    element,
    show: (situation, numberOf) => {
      const group = underWay(situation);
      if (group !== shown) {
        shown = group;
        groups = new Map(group.map((blank) => [blank.id, draw(blank, numberOf(blank.id), situation.view.mirrored)]));
        element.replaceChildren(...groups.values());
      }
      if (group.length === 0) return;
      const faulty = new Set(situation.faults.flatMap(({ blanks }) => blanks));
      for (const [id, drawn] of groups) {
        if (drawn.classList.contains('is-faulty') !== faulty.has(id)) drawn.classList.toggle('is-faulty');
      }
    },
  };
}

const NONE: readonly Blank[] = [];

/** The blanks that are being moved, where they stood when the move began. */
export function underWay({ interaction, live }: Situation): readonly Blank[] {
  return live && (interaction.kind === 'dragging' || interaction.kind === 'nudging') ? interaction.moving.group : NONE;
}

/** Attributes of a station's number: upright, its middle at the place. */
export function numberPlace({ x, y }: DesignDrawing['number'], size: number, mirrored = false): { readonly transform: string; readonly 'font-size': number } {
  return { transform: `translate(${x} ${y - size * 0.36}) scale(${mirrored ? -1 : 1} -1)`, 'font-size': size };
}

