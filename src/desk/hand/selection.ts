import { stationsOf } from './document.ts';
import type { Direction } from './interaction/nudging.ts';
import { nextInDirection } from './select-towards.ts';
import type { SheetFrame } from './sheet-frame.ts';
import { shown, type Situation } from './situation.ts';

export function selectAll(situation: Situation): Situation {
  return { ...situation, selected: new Set(shown(situation).blanks.map(({ id }) => id)) };
}

export function selectNone(situation: Situation): Situation {
  return { ...situation, selected: new Set(), notice: undefined };
}

/** The next or the previous station; after the last comes the first. */
export function selectBeside(situation: Situation, step: 1 | -1, frame: SheetFrame): Situation {
  const stations = stationsOf(shown(situation), frame);
  if (stations.length === 0) return situation;
  const at = stations.findIndex(({ id }) => id === situation.active);
  const next = at < 0 ? (step > 0 ? 0 : stations.length - 1) : (at + step + stations.length) % stations.length;
  return chooseOnly(situation, stations[next].id);
}

/** The blank that comes next in a direction from the one that was chosen last; at first the first station. */
export function selectTowards(situation: Situation, direction: Direction, frame: SheetFrame): Situation {
  const { blanks } = shown(situation);
  const from = blanks.find(({ id }) => id === situation.active);
  if (!from) return selectBeside(situation, 1, frame);
  return chooseOnly(situation, (nextInDirection(blanks, from, direction, frame) ?? from).id);
}

function chooseOnly(situation: Situation, id: number): Situation {
  return { ...situation, selected: new Set([id]), active: id, notice: undefined };
}
