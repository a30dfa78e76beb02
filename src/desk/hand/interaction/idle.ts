import { IDLE, type Pointer } from './interaction.ts';
import type { Situation } from '../situation.ts';

/** A pointer goes down while nothing is under way. */
export function pressInIdle(situation: Situation, pointer: Pointer): Situation {
  const { interaction } = situation;
  if (pointer.pans) return { ...situation, interaction: { kind: 'panning', last: pointer.screen, before: interaction } };
  const { over } = pointer;
  if (over === undefined) {
    const base = pointer.shift ? situation.selected : NOTHING;
    return { ...situation, selected: base, notice: undefined, interaction: { kind: 'marquee', start: pointer.at, end: pointer.at, startScreen: pointer.screen, base } };
  }
  const wasSelected = situation.selected.has(over);
  const selected = wasSelected ? situation.selected : pointer.shift ? new Set([...situation.selected, over]) : new Set([over]);
  return { ...situation, selected, active: over, notice: undefined, interaction: { kind: 'pressed', id: over, start: pointer, wasSelected } };
}

const NOTHING: ReadonlySet<number> = new Set();

/** The pointer was let go without having moved: a click. */
export function clicked(situation: Situation, id: number, wasSelected: boolean, shift: boolean): Situation {
  const selected = shift && wasSelected ? new Set([...situation.selected].filter((other) => other !== id)) : shift ? situation.selected : new Set([id]);
  return { ...situation, selected, interaction: IDLE };
}
