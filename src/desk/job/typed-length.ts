import { parseLengthMm, parseSizeMm, UNIT_IN_MM } from '../../base/units.ts';
import type { Format, LengthUnit } from '../../render/format.ts';

/**
 * Lengths as they are typed and kept: a text without a suffix is in millimetres, whatever the desk shows. So nothing
 * typed changes its meaning when the unit shown does.
 */

/** A unit at the end. */
const SUFFIX = new RegExp(String.raw`\s*(${Object.keys(UNIT_IN_MM).join('|')})\s*$`, 'i');

/** What is kept of a text typed while lengths are shown in `unit`. */
export function keptLength(text: string, unit: LengthUnit): string {
  return unit === 'mm' || text.trim() === '' || SUFFIX.test(text) ? text : `${text}${unit}`;
}

/** What is shown of a kept text: as it was typed where it has the unit shown, else converted. */
export function shownLength(kept: string, format: Format): string {
  if (unitOf(kept) === format.unit) return kept.replace(SUFFIX, '');
  const mm = mmOf(kept);
  return mm === undefined ? kept : format.bareLength(mm);
}

function mmOf(kept: string): number | undefined {
  return parseLengthMm(kept.replace(',', '.'));
}

/** Whether two kept texts say the same: `4.` and `4`, `1in` and `25.4`. */
export function sameLength(a: string, b: string): boolean {
  return a === b || (mmOf(a) !== undefined && mmOf(a) === mmOf(b));
}

/** The same for `1020x720`; a decimal comma is kept as a point, as the engine reads it. */
export function keptSize(text: string, unit: LengthUnit): string {
  return keptLength(text.replaceAll(',', '.'), unit);
}

export function shownSize(kept: string, format: Format): string {
  if (unitOf(kept) === format.unit) return kept.replace(SUFFIX, '');
  const size = parseSizeMm(kept);
  return size ? `${format.bareLength(size.width)}x${format.bareLength(size.height)}` : kept;
}

/** The unit written last; that of nothing written is the millimetre. */
function unitOf(text: string): string {
  return SUFFIX.exec(text)?.[1]!.toLowerCase() ?? 'mm';
}
