import { combineSettings, type Machines } from './machines.ts';
import type { CutterRecord, PressRecord } from './records.ts';
import type { Bar, Size } from './sheet-areas.ts';

/** What holds because of one machine's record, millimetres; absent where it says nothing or the other machine leaves less. */
export interface Brought {
  readonly gripper?: number | undefined;
  readonly tail?: number | undefined;
  readonly sideLeft?: number | undefined;
  readonly sideRight?: number | undefined;
  readonly inkGripper?: number | undefined;
  readonly inkTail?: number | undefined;
  readonly inkSides?: number | undefined;
  readonly bar?: Bar | undefined;
  readonly gap?: number | undefined;
  readonly bleed?: number | undefined;
  readonly lay?: 'left' | 'right' | undefined;
  /** What it takes at all. */
  readonly sheets: Range<Size>;
  readonly caliper: Range<number>;
}

export interface Range<Value> {
  readonly least: Value | undefined;
  readonly most: Value | undefined;
}

/** What each machine brings before anything is set by hand. Where both set the same, both do. */
export function broughtBy(machines: Pick<Machines, 'press' | 'cutter'>): { readonly press?: Brought; readonly cutter?: Brought } {
  const { press, cutter } = machines;
  const held = combineSettings({}, machines);
  const ofMachine = (machine: PressRecord | CutterRecord): Brought => {
    const binding = (own: number | undefined, both: number | undefined) => (own === both ? own : undefined);
    return {
      gripper: binding(machine.gripper, held.gripper),
      tail: binding(machine.tail, held.tail),
      sideLeft: binding(machine.sideMargins?.[0], held.sideMargins?.[0]),
      sideRight: binding(machine.sideMargins?.[1], held.sideMargins?.[1]),
      gap: binding(machine.gap, held.gap),
      sheets: { least: machine.minSheet, most: machine.maxSheet },
      caliper: { least: machine.caliperMin, most: machine.caliperMax },
    };
  };
  const { inkGripper, inkTail, inkSides, bleed, lay } = press ?? {};
  return {
    ...(press && { press: { ...ofMachine(press), inkGripper, inkTail, inkSides, bar: held.bar, bleed, lay } }),
    ...(cutter && { cutter: ofMachine(cutter) }),
  };
}
