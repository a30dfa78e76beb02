import type { Machines } from '../../../press/machines.ts';
import { boardSchema, cutterSchema, pressSchema, readRecord } from '../../../press/records.ts';
import type { RawMachines } from '../protocol.ts';

/** Throws an InputError that names record and field. */
export function machinesOf({ press, cutter, board }: RawMachines): Machines {
  return {
    press: press === undefined ? undefined : readRecord(pressSchema, press, 'press'),
    cutter: cutter === undefined ? undefined : readRecord(cutterSchema, cutter, 'die-cutter'),
    board: board === undefined ? undefined : readRecord(boardSchema, board, 'board'),
  };
}
