import { parseLengthMm, UNIT_IN_MM } from '../../base/units.ts';
import type { Format } from '../../render/format.ts';
import { doubtful, isDoubtful, keptFigure, shownFigure } from './typed-figure.ts';

/**
 * Lengths as they are typed and kept: a text without a suffix is in millimetres, whatever the desk shows. So nothing
 * typed changes its meaning when the unit shown or the language does.
 */

/** A unit at the end. */
const SUFFIX = new RegExp(String.raw`\s*(${Object.keys(UNIT_IN_MM).join('|')})\s*$`, 'i');
/** Also as a keyboard has it, or in words. */
const TIMES = /\s*(?:[x×*]|\bby\b|\bmal\b)\s*/i;

/** What is kept of a text typed while lengths are shown so. */
export function keptLength(text: string, { unit, decimalSign }: Format): string {
  const figure = keptFigure(text.replace(SUFFIX, ''), decimalSign);
  if (isDoubtful(figure)) return doubtful(text);
  const suffix = SUFFIX.exec(text)?.[1] ?? (unit === 'mm' || figure === '' ? '' : unit);
  return figure + suffix;
}

/** What is shown of a kept text: as it was typed where it has the unit shown, else converted. */
export function shownLength(kept: string, format: Format): string {
  const own = kept.replace(SUFFIX, '');
  if (isDoubtful(kept)) return shownFigure(kept, format.decimalSign);
  if (unitOf(kept) === format.unit) return shownFigure(keptFigure(own, '.'), format.decimalSign);
  const mm = mmOf(kept);
  return mm === undefined ? kept : format.bareLength(mm);
}

/** Whether two kept texts say the same: `4.` and `4`, `1in` and `25.4`. */
export function sameLength(a: string, b: string): boolean {
  return a === b || (mmOf(a) !== undefined && mmOf(a) === mmOf(b));
}

/** Millimetres; undefined for what is no length. */
export function mmOf(kept: string): number | undefined {
  const unit = SUFFIX.exec(kept)?.[1] ?? '';
  return parseLengthMm(keptFigure(kept.replace(SUFFIX, ''), '.') + unit);
}

/** The same for two sides; a suffix at the end goes for both. */
export function keptSize(text: string, format: Format): string {
  const suffix = SUFFIX.exec(text)?.[1];
  const sides = text.replace(SUFFIX, '').split(TIMES).map((side) => keptLength(side, { ...format, unit: 'mm' }));
  if (sides.some(isDoubtful)) return doubtful(text);
  return sides.join('x') + (suffix ?? (format.unit === 'mm' || text.trim() === '' ? '' : format.unit));
}

/** Of any number of sides. */
export function shownSize(kept: string, format: Format): string {
  if (isDoubtful(kept)) return shownFigure(kept, format.decimalSign);
  const sides = unitOf(kept) === format.unit ? undefined : sidesMm(kept);
  return sides ? sides.map(format.bareLength).join(' × ') : ownSize(kept, format);
}

/** Undefined where one of the sides is no length. */
export function sidesMm(kept: string): readonly number[] | undefined {
  const sides = sidesOf(kept).map(mmOf).filter((mm) => mm !== undefined);
  return sides.length === kept.split(TIMES).length ? sides : undefined;
}

/** A size to choose, which keeps its own unit and so its exact figures, and how it reads in the unit shown where that is another. */
export function sizeChoice(kept: string, format: Format): readonly [value: string, label?: string] {
  const unit = unitOf(kept);
  return unit === format.unit ? [shownSize(kept, format)] : [`${ownSize(kept, format)} ${unit}`, `${shownSize(kept, format)} ${format.unit}`];
}

function ownSize(kept: string, { decimalSign }: Format): string {
  return sidesOf(kept).map((side) => shownFigure(keptFigure(side.replace(SUFFIX, ''), '.'), decimalSign)).join(' × ');
}

/** Each with the suffix at the end where it has none of its own. */
function sidesOf(kept: string): string[] {
  const suffix = SUFFIX.exec(kept)?.[1] ?? '';
  return kept.replace(SUFFIX, '').split(TIMES).map((side) => (SUFFIX.test(side) ? side : side + suffix));
}

/** Lengths and sizes as examples of what may be typed: one in the unit shown, one in the other with its suffix. */
export function typedExamples({ unit, decimalSign }: Format): { readonly length: string; readonly otherLength: string; readonly size: string; readonly otherSize: string } {
  const inches = shownFigure('0.5', decimalSign);
  return unit === 'mm'
    ? { length: '12', otherLength: `${inches} in`, size: '1020 × 720', otherSize: '28 × 40 in' }
    : { length: inches, otherLength: '12 mm', size: '28 × 40', otherSize: '1020 × 720 mm' };
}

/** The unit written last; that of nothing written is the millimetre. */
function unitOf(text: string): string {
  return SUFFIX.exec(text)?.[1]!.toLowerCase() ?? 'mm';
}
