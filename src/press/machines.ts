import { inputError, type Issue } from '../base/issue.ts';
import type { BoardRecord, CutterRecord, PressRecord } from './records.ts';
import type { Bar, MarginSettings, Size } from './sheet-areas.ts';

/** What the command line or a job gave, over what the records say. `none` overrides a record's bar. */
export interface MachineSettings extends Omit<MarginSettings, 'bar'> {
  readonly bar?: Bar | 'none' | undefined;
  readonly gap?: number | undefined;
  readonly bleed?: number | undefined;
  readonly lay?: 'left' | 'right' | undefined;
}

export interface Machines {
  readonly press?: PressRecord | undefined;
  readonly cutter?: CutterRecord | undefined;
  readonly board?: BoardRecord | undefined;
}

export interface CombinedSettings extends MarginSettings {
  readonly gap: number | undefined;
  readonly bleed: number | undefined;
  readonly lay: 'left' | 'right';
  /** Which machine binds where both set a limit. */
  readonly notes: readonly Issue[];
}

/** Options over records; where press and die-cutter both set a limit, the one that leaves less binds, and that is noted. */
export function combineSettings(options: MachineSettings, { press, cutter }: Machines): CombinedSettings {
  const notes: Issue[] = [];
  const wider = (what: string, given: number | undefined, a: number | undefined, b: number | undefined) => {
    if (given !== undefined) return given;
    if (a === undefined || b === undefined) return a ?? b;
    const machine = a === b ? 'press and die-cutter alike' : a > b ? 'press' : 'die-cutter';
    notes.push({ code: 'machine-binds', severity: 'note', facts: { what, machine, press: a, cutter: b } });
    return Math.max(a, b);
  };
  const side = (index: 0 | 1, name: string) => wider(name, options.sideMargins?.[index], press?.sideMargins?.[index], cutter?.sideMargins?.[index]);
  const [left, right] = [side(0, 'left side margin'), side(1, 'right side margin')];
  const bar = options.bar ?? press?.bar;
  return {
    gripper: wider('gripper margin', options.gripper, press?.gripper, cutter?.gripper),
    tail: wider('tail margin', options.tail, press?.tail, cutter?.tail),
    sideMargins: left === undefined || right === undefined ? undefined : [left, right],
    inkGripper: options.inkGripper ?? press?.inkGripper,
    inkTail: options.inkTail ?? press?.inkTail,
    inkSides: options.inkSides ?? press?.inkSides,
    bar: bar === 'none' ? undefined : bar,
    gap: wider('gap', options.gap, press?.gap, cutter?.gap),
    bleed: options.bleed ?? press?.bleed,
    lay: options.lay ?? press?.lay ?? 'left',
    notes,
  };
}

/** Refuses a sheet or board that a machine cannot take. `where` names the sheet to the user. */
export function checkMachines(sheet: Size, machines: Machines, where = '--sheet'): void {
  for (const [kind, machine] of [['press', machines.press], ['die-cutter', machines.cutter]] as const) {
    if (!machine) continue;
    const name = machine.name ?? `the ${kind}`;
    const { minSheet, maxSheet } = machine;
    if (maxSheet && (sheet.width > maxSheet.width || sheet.height > maxSheet.height)) {
      throw inputError('sheet-too-large-for-machine', { where, facts: { width: sheet.width, height: sheet.height, machine: name, maxWidth: maxSheet.width, maxHeight: maxSheet.height } });
    }
    if (minSheet && (sheet.width < minSheet.width || sheet.height < minSheet.height)) {
      throw inputError('sheet-too-small-for-machine', { where, facts: { width: sheet.width, height: sheet.height, machine: name, minWidth: minSheet.width, minHeight: minSheet.height } });
    }
    const caliper = machines.board?.caliper;
    const [least, most] = [machine.caliperMin ?? 0, machine.caliperMax ?? Infinity];
    if (caliper !== undefined && (caliper < least || caliper > most)) {
      throw inputError('board-caliper-outside-machine', { where: where === '--sheet' ? '--board' : where, facts: { caliper, machine: name, least, most: Number.isFinite(most) ? most : 'any' } });
    }
  }
}
