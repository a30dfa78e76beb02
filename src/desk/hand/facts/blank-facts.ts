import { toMillimetres } from '../../../base/units.ts';
import { degreesOf } from '../../../geometry/turn.ts';
import type { FaultKind } from '../../../layout/judge.ts';
import type { BlankFacts } from '../../../render/messages/hand-words.ts';
import type { Blank } from '../document.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';

/** What is told of one blank in words. `station`: its number; undefined for one that has none yet. */
export function blankFacts(blank: Blank, station: number | undefined, faults: readonly FaultKind[], frame: SheetFrame): BlankFacts {
  const { minX, minY } = boxOnSheet(frame, blank);
  const design = frame.problem.parts[blank.part].id;
  return { station, design, rotation: degreesOf(blank.turn), fromLeft: toMillimetres(minX), fromGripper: toMillimetres(minY), locked: blank.locked, faults };
}
