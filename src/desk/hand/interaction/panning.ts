import type { Situation } from '../situation.ts';
import { panBy } from '../view.ts';
import type { Interaction, Pointer } from './interaction.ts';

type Panning = Extract<Interaction, { kind: 'panning' }>;

export function pan(situation: Situation, state: Panning, { screen }: Pointer): Situation {
  return { ...situation, view: panBy(situation.view, screen.x - state.last.x, screen.y - state.last.y), interaction: { ...state, last: screen } };
}

/** Whatever was under way before goes on. */
export function endPanning(situation: Situation, { before }: Panning): Situation {
  return { ...situation, interaction: before };
}
