import type { Overs } from '../engine/protocol.ts';
import { numberOf, wholeOf } from './number-of.ts';

/** Copies beyond a quantity, as typed: `200`, or `5%` of the quantity; empty: none at least, as many as there are. */
export interface OversFields {
  readonly least: string;
  readonly greatest: string;
}

export const NO_OVERS: OversFields = { least: '', greatest: '' };

/** For each quantity; undefined where nothing is typed. */
export function oversOf({ least, greatest }: OversFields, quantities: readonly number[]): readonly Overs[] | 'fault' | undefined {
  const [from, to] = [limitOf(least), limitOf(greatest)];
  if (from === 'fault' || to === 'fault') return 'fault';
  if (!from && !to) return undefined;
  const limits = quantities.map((quantity) => ({ least: Math.ceil(from?.(quantity) ?? 0), ...(to && { greatest: Math.floor(to(quantity)) }) }));
  return limits.some((limit) => limit.greatest !== undefined && limit.greatest < limit.least) ? 'fault' : limits;
}

export interface OversOfEach {
  /** Undefined where nothing is typed anywhere. */
  readonly limits: readonly Overs[] | undefined;
  /** Whether the fields for all cannot be used, and in which rows their own cannot. */
  readonly isFaulty: boolean;
  readonly rows: readonly number[];
}

/** Each quantity by fields of its own; where one of them is empty, that for all holds. */
export function oversOfEach(all: OversFields, own: readonly (OversFields | undefined)[], quantities: readonly number[]): OversOfEach {
  const isFaulty = oversOf(all, quantities) === 'fault';
  const isTyped = (one: OversFields | undefined) => one !== undefined && (one.least.trim() !== '' || one.greatest.trim() !== '');
  const each = own.map((one, row) => oversOf({ least: one?.least.trim() || all.least, greatest: one?.greatest.trim() || all.greatest }, [quantities[row]!]));
  const rows = each.flatMap((limits, row) => (limits === 'fault' && isTyped(own[row]) ? [row] : []));
  if (isFaulty || rows.length > 0 || each.every((limits) => limits === undefined)) return { limits: undefined, isFaulty, rows };
  return { limits: each.map((limits) => (limits === undefined || limits === 'fault' ? { least: 0 } : limits[0]!)), isFaulty, rows };
}

function limitOf(text: string): ((quantity: number) => number) | 'fault' | undefined {
  const isShare = text.trim().endsWith('%');
  const value = isShare ? numberOf(text.trim().slice(0, -1)) : wholeOf(text);
  if (value === undefined) return isShare ? 'fault' : undefined;
  if (value === 'fault') return 'fault';
  // Hundredths first: 5 % of 1000 is 50 in floating point, 0.05 × 1000 need not be.
  return isShare ? (quantity) => (quantity * value) / 100 : () => value;
}
