import type { Fault } from '../../../layout/judge.ts';
import { placedBlank, type Blank, type SheetDocument } from '../document.ts';
import { near, type Standing } from '../snapping/near-blanks.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { requiredGap } from '../../../layout/problem.ts';

/** A fault by the ids of the blanks concerned, which stay the same when stations are numbered anew. */
export interface BlankFault extends Omit<Fault, 'blanks'> {
  readonly blanks: readonly number[];
}

/**
 * The faults of a document while some of its blanks are moved. Those between standing blanks cannot change and are
 * kept from before; the moved ones are judged anew, by the judge itself, against their near neighbours only.
 */
export function faultsAfterMove(before: readonly BlankFault[], moved: readonly Blank[], standing: Standing, frame: SheetFrame): BlankFault[] {
  const ids = new Set(moved.map(({ id }) => id));
  const kept = before.filter(({ blanks }) => !blanks.some((id) => ids.has(id)));
  if (moved.length === 0) return kept;
  const neighbours = near(standing, moved.map((blank) => boxOnSheet(frame, blank)), requiredGap(frame.problem.rules)).map((i) => standing.blanks[i]);
  return [...kept, ...judged([...moved, ...neighbours], frame).filter(({ blanks }) => blanks.some((id) => ids.has(id)))];
}

/** All faults of a document. */
export function faultsOf({ blanks }: SheetDocument, frame: SheetFrame): BlankFault[] {
  return blanks.length === 0 ? [] : judged(blanks, frame);
}

function judged(blanks: readonly Blank[], frame: SheetFrame): BlankFault[] {
  return frame.judge(blanks.map((blank) => placedBlank(frame, blank))).faults.map((fault) => ({ ...fault, blanks: fault.blanks.map((number) => blanks[number].id) }));
}
