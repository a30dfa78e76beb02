import type { SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import { standingOf } from '../snapping/near-blanks.ts';
import { faultsAfterMove } from './live-faults.ts';
import type { Blank } from '../document.ts';

/** The situation with its faults brought up to the document it shows: blanks that are the same objects as before did not move. */
export function settled(before: Situation, after: Situation, frame: SheetFrame): Situation {
  const [old, document] = [shown(before), shown(after)];
  if (old === document) return after;
  const { interaction } = after;
  if (interaction.kind === 'dragging' || interaction.kind === 'nudging') {
    const ids = new Set(interaction.moving.group.map(({ id }) => id));
    const moved = document.blanks.filter(({ id }) => ids.has(id));
    return { ...after, faults: faultsAfterMove(before.faults, moved, interaction.moving.standing, frame) };
  }
  const known = new Set<Blank>(old.blanks);
  const present = new Set(document.blanks.map(({ id }) => id));
  const still = before.faults.filter(({ blanks }) => blanks.every((id) => present.has(id)));
  const stays = document.blanks.filter((blank) => known.has(blank));
  const changed = document.blanks.filter((blank) => !known.has(blank));
  return { ...after, faults: faultsAfterMove(still, changed, standingOf(stays, frame), frame) };
}
