import type { ChangeoverTable } from '../../press/changeover.ts';

/** What of a form decides how long the press takes to change to it and from it. */
export interface PressState {
  readonly inks: readonly string[];
  /** Such as "conventional" or "UV"; forms that name none are of one family. */
  readonly inkFamily?: string | undefined;
  /** Undefined: the coater stands idle. */
  readonly coating?: string | undefined;
  readonly widthMm?: number | undefined;
  readonly heightMm?: number | undefined;
  /** Index into the table's classes. */
  readonly caliperClass?: number | undefined;
  readonly die?: string | undefined;
}

/** In the order in which a crew reads them. */
export const CHANGE_CAUSES = ['washUp', 'inkingUp', 'inkFamily', 'coating', 'sheetSize', 'caliperClass', 'die'] as const;
export type ChangeCause = (typeof CHANGE_CAUSES)[number];

export interface Change {
  readonly cause: ChangeCause;
  /** Units, classes or 1. */
  readonly count: number;
  readonly minutes: number;
}

/**
 * Minutes from one form to the next by cause; causes that take no time are left out. Units hold the inks of the last form
 * only: an ink that the next form does not want is washed out at once. Without a form before, the press is clean and set
 * for nothing, and only the units are filled.
 */
export function changesBetween(from: PressState | undefined, to: PressState, table: ChangeoverTable): Change[] {
  const counts: Record<ChangeCause, number> = { ...inkChanges(from, to), ...settings(from, to) };
  return CHANGE_CAUSES.filter((cause) => counts[cause] * table[cause] > 0).map((cause) => ({ cause, count: counts[cause], minutes: counts[cause] * table[cause] }));
}

export function minutesOf(changes: readonly Change[]): number {
  return changes.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** Inks that stay in their units. */
export function inksKept(from: PressState | undefined, to: PressState): string[] {
  return from && from.inkFamily === to.inkFamily ? to.inks.filter((ink) => from.inks.includes(ink)) : [];
}

function inkChanges(from: PressState | undefined, to: PressState) {
  const kept = inksKept(from, to).length;
  return { washUp: (from?.inks.length ?? 0) - kept, inkingUp: to.inks.length - kept, inkFamily: from && from.inks.length > 0 && to.inks.length > 0 && from.inkFamily !== to.inkFamily ? 1 : 0 };
}

function settings(from: PressState | undefined, to: PressState) {
  const other = (a: string | number | undefined, b: string | number | undefined) => (from && a !== undefined && b !== undefined && a !== b ? 1 : 0);
  return {
    coating: from && from.coating !== to.coating ? 1 : 0,
    sheetSize: Math.max(other(from?.widthMm, to.widthMm), other(from?.heightMm, to.heightMm)),
    caliperClass: Math.abs((from?.caliperClass ?? to.caliperClass ?? 0) - (to.caliperClass ?? from?.caliperClass ?? 0)),
    die: other(from?.die, to.die),
  };
}

/**
 * Which ink each unit holds while a form is printed, `undefined` where it stands empty: inks kept stay where they are,
 * new ones go to the first free unit.
 */
export function unitsFor(before: readonly (string | undefined)[], kept: readonly string[], inks: readonly string[]): (string | undefined)[] {
  const units = before.map((ink) => (ink !== undefined && kept.includes(ink) ? ink : undefined));
  for (const ink of inks) if (!units.includes(ink)) units[units.indexOf(undefined)] = ink;
  return units;
}
