/** Lengths: millimetres at the doors (files, options, reports), whole micrometres inside geometry. */

export const MICRONS_PER_MM = 1000;
export const MM_PER_INCH = 25.4;
/** m² in a square foot. */
export const M2_PER_FT2 = (12 * (MM_PER_INCH / 1000)) ** 2;

/** Millimetres to the nearest whole micrometre. */
export function toMicrons(mm: number): number {
  return Math.round(mm * MICRONS_PER_MM);
}

/** Whole micrometres to millimetres with at most three decimals (exactly the value a layout file holds). */
export function toMillimetres(microns: number): number {
  return microns / MICRONS_PER_MM;
}

/** Millimetres in one unit, by the suffix that SVG and our options use. `pt` is the desktop point, 1/72 in. */
export const UNIT_IN_MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
  px: MM_PER_INCH / 96,
};

const NUMBER = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?`;
const LENGTH = new RegExp(String.raw`^\s*(${NUMBER})\s*(mm|cm|m|in|pt|pc|px)?\s*$`, 'i');

/** Reads `12`, `12mm`, `0.5in`; millimetres where no unit is written. Returns undefined for anything else. */
export function parseLengthMm(text: string): number | undefined {
  const match = LENGTH.exec(text);
  if (!match) return undefined;
  const value = Number(match[1]) * UNIT_IN_MM[(match[2] ?? 'mm').toLowerCase()]!;
  return Number.isFinite(value) ? value : undefined;
}

const MICRON_OR_POINT = new RegExp(String.raw`^\s*(${NUMBER})\s*(µm|um|pt|points?)\s*$`, 'i');

/**
 * Thickness of board: as a length, in µm, or in points of caliper, which are thousandths of an inch: `18pt` is 0.457 mm,
 * not eighteen points of type. Undefined for anything else.
 */
export function parseCaliperMm(text: string): number | undefined {
  const match = MICRON_OR_POINT.exec(text);
  if (!match) return parseLengthMm(text);
  return Number(match[1]) * (/m$/i.test(match[2]!) ? 1 / MICRONS_PER_MM : MM_PER_INCH / 1000);
}

/** Reads `1020x720`, `28x40in`, `28inx40in`; returns millimetres, first number along the gripper edge, or undefined. */
export function parseSizeMm(text: string): { width: number; height: number } | undefined {
  const [first, second, ...rest] = text.split(/[x×]/i);
  if (first === undefined || second === undefined || rest.length > 0) return undefined;
  const unit = /[a-z]+\s*$/i.exec(second)?.[0].trim() ?? '';
  const width = parseLengthMm(/[a-z]\s*$/i.test(first) ? first : first + unit);
  const height = parseLengthMm(second);
  return width === undefined || height === undefined ? undefined : { width, height };
}
