import { parseSizeMm } from '../../base/units.ts';
import { turnOfDegrees, type Turn } from '../../geometry/turn.ts';
import type { BarPlace } from '../../press/sheet-areas.ts';
import type { DeskLaying, RawMachines } from '../engine/protocol.ts';
import { mmOf } from './typed-length.ts';
import { LIMIT_LENGTHS, type Job, type LimitFields, type LimitLength } from './job.ts';

/** A field whose text cannot be used. */
export type FieldName = LimitLength | 'size' | 'barHeight';

export type Laying = { readonly laying: DeskLaying } | { readonly faults: readonly FieldName[] };

/** Longest length a field may give, mm: outlines and sheets are held to 2²⁴ µm. */
export const LONGEST_MM = 16_000;
/** Least side of a sheet, mm. */
export const LEAST_SIDE_MM = 1;

/** What the fields say, in mm, or which of them cannot be used. */
export function layingOf({ sheet, limits }: Pick<Job, 'sheet' | 'limits'>, machines: RawMachines): Laying {
  const faults: FieldName[] = [];
  const lengths: Partial<Record<LimitLength, number>> = {};
  for (const field of LIMIT_LENGTHS) {
    const mm = lengthOf(limits[field]);
    if (mm === 'fault') faults.push(field);
    else if (mm !== undefined) lengths[field] = mm;
  }
  const size = parseSizeMm(sheet.size);
  const fits = (mm: number) => mm >= LEAST_SIDE_MM && mm <= LONGEST_MM;
  if (!size || !fits(size.width) || !fits(size.height)) faults.push('size');
  const bar = barOf(limits);
  if (bar === 'fault') faults.push('barHeight');
  if (faults.length > 0 || !size || bar === 'fault') return { faults };
  const { sideLeft, sideRight, ...others } = lengths;
  const sides = sideLeft ?? sideRight;
  return {
    laying: {
      sheet: size,
      settings: { ...others, ...(sides !== undefined && { sideMargins: [sideLeft ?? sides, sideRight ?? sides] }), ...(bar && { bar }), ...(limits.lay && { lay: limits.lay }) },
      machines,
      bleedMeeting: limits.bleedMeeting,
      ...rotationsOf(limits),
      ...(limits.grain && sheet.sheetGrain && { sheetGrain: sheet.sheetGrain }),
    },
  };
}

/** Undefined for an empty field. */
export function lengthOf(text: string): number | 'fault' | undefined {
  if (text.trim() === '') return undefined;
  const mm = mmOf(text);
  return mm !== undefined && mm >= 0 && mm <= LONGEST_MM ? mm : 'fault';
}

function barOf({ bar, barHeight }: LimitFields): { place: BarPlace; height: number } | 'none' | 'fault' | undefined {
  if (bar === '' || bar === 'none') return bar === '' ? undefined : bar;
  const height = lengthOf(barHeight);
  return height === undefined || height === 'fault' || height === 0 ? 'fault' : { place: bar, height };
}

/** The two ways to say which rotations are allowed exclude each other: the one typed last counts, the other is empty. */
function rotationsOf({ rotations, grain }: LimitFields): Pick<DeskLaying, 'rotations' | 'grain'> {
  if (rotations !== '') return { rotations: rotations.split(',').map((degrees) => turnOfDegrees(Number(degrees)) as Turn) };
  return grain === '' ? {} : { grain };
}
