import { M2_PER_FT2, MM_PER_INCH } from '../base/units.ts';
import { JUDGE_TOLERANCE_MM } from '../layout/judge-tolerance.ts';

/**
 * The one writer of figures for people. Thousands are set apart by a space in every language (SI brochure, 9th edition,
 * 5.4.4), so that neither comma nor point is ever read wrongly; the decimal sign follows the language.
 */
export interface Format {
  readonly unit: LengthUnit;
  readonly decimalSign: string;
  /** A plain number with at most (or, `fixed`, exactly) so many decimals. */
  number(value: number, decimals?: number, fixed?: boolean): string;
  /** Without its unit, for tables and dimension lines. */
  bareLength(mm: number): string;
  length(mm: number): string;
  /** Thickness of board, in thousandths of either unit. */
  caliper(mm: number): string;
  /** `1020 × 720 mm`; the first side runs along the gripper edge. */
  size(widthMm: number, heightMm: number): string;
  /** In the unit that makes `like` (by default the area itself) a readable figure: mm², cm² or m²; in² or ft² with inches. */
  area(mm2: number, like?: number): string;
  /** Of board by the sheet, the thousand and the year, whatever its amount; as fine as so many decimals of a m². */
  board(m2: number, decimals: number): string;
  /** The same without its unit, for tables and charts. */
  bareBoard(m2: number, decimals: number): string;
  readonly boardUnit: BoardUnit;
  /** Of a fraction: 0.66 → `66.0 %`. */
  percent(fraction: number): string;
  /** `26.65 EUR`, with as many decimals as the currency has. */
  money(amount: number, currency: string): string;
  /** `4.2 s`, `3 min 20 s`, `1 h 5 min`. */
  duration(seconds: number): string;
}

export type LengthUnit = 'mm' | 'in';

/** The unit in which board is bought. */
export interface BoardUnit {
  readonly name: 'm²' | 'ft²';
  /** How many of them make a m². */
  readonly perM2: number;
  /** Decimals that are not worth showing, for being finer than those of a m². */
  readonly fewerDecimals: number;
}

const BOARD_UNITS: Readonly<Record<LengthUnit, BoardUnit>> = { mm: { name: 'm²', perM2: 1, fewerDecimals: 0 }, in: { name: 'ft²', perM2: 1 / M2_PER_FT2, fewerDecimals: 1 } };

/** Decimals shown of a length: a hundredth of a millimetre is finer than any die, a thousandth of an inch likewise. */
const LENGTH_DECIMALS: Readonly<Record<LengthUnit, number>> = { mm: 2, in: 3 };

/** Decimals of a length in its unit: as many as usual, and more where what the judge would not pass over would be shown as none. */
export function lengthDecimals(mm: number, unit: LengthUnit): number {
  const value = Math.abs(unit === 'mm' ? mm : mm / MM_PER_INCH);
  const usual = LENGTH_DECIMALS[unit];
  return Math.abs(mm) < JUDGE_TOLERANCE_MM || value >= 0.5 * 10 ** -usual ? usual : Math.ceil(-Math.log10(value));
}

export function createFormat(locale: string, unit: LengthUnit = 'mm'): Format {
  const decimalSign = new Intl.NumberFormat(locale).formatToParts(0.5).find(({ type }) => type === 'decimal')?.value ?? '.';

  const number = (value: number, decimals = 2, fixed = false): string => {
    const rounded = Math.abs(value).toFixed(decimals);
    const [whole = '', fraction = ''] = (fixed || decimals === 0 ? rounded : rounded.replace(/\.?0+$/, '')).split('.');
    const sign = value < 0 && Number(rounded) !== 0 ? '−' : '';
    return sign + groupThousands(whole) + (fraction && decimalSign + fraction);
  };
  const bareLength = (mm: number): string => {
    const text = number(unit === 'mm' ? mm : mm / MM_PER_INCH, lengthDecimals(mm, unit));
    // Sides of a sheet are written without a space by everyone: 1020, not 1 020.
    return Math.abs(mm) < 10_000 ? text.replace(' ', '') : text;
  };
  const boardUnit = BOARD_UNITS[unit];
  const bareBoard = (m2: number, decimals: number) => number(m2 * boardUnit.perM2, Math.max(0, decimals - boardUnit.fewerDecimals), true);
  return {
    unit,
    decimalSign,
    boardUnit,
    bareBoard,
    board: (m2, decimals) => `${bareBoard(m2, decimals)} ${boardUnit.name}`,
    number,
    bareLength,
    length: (mm) => `${bareLength(mm)} ${unit}`,
    caliper: (mm) => `${number(unit === 'mm' ? mm : mm / MM_PER_INCH, 3)} ${unit}`,
    size: (width, height) => `${bareLength(width)} × ${bareLength(height)} ${unit}`,
    area: (mm2, like = mm2) => {
      const [scale, name, decimals] = areaUnit(like, unit);
      return `${number(mm2 / scale, decimals, true)} ${name}`;
    },
    percent: (fraction) => `${number(fraction * 100, 1, true)} %`,
    money: (amount, currency) => `${number(amount, currencyDecimals(locale, currency), true)} ${currency}`,
    duration: (seconds) => duration(seconds, number),
  };
}

function groupThousands(digits: string): string {
  return digits.replace(/\B(?=(\d{3})+$)/g, ' ');
}

function areaUnit(mm2: number, unit: LengthUnit): [scale: number, name: string, decimals: number] {
  const size = Math.abs(mm2);
  if (unit === 'in') {
    const squareInch = MM_PER_INCH ** 2;
    return size >= 144 * squareInch ? [144 * squareInch, 'ft²', 3] : [squareInch, 'in²', 2];
  }
  if (size >= 100_000) return [1_000_000, 'm²', 4];
  return size >= 1_000 ? [100, 'cm²', 1] : [1, 'mm²', 0];
}

/** Falls back to two decimals for codes that the engine does not know as currencies. */
function currencyDecimals(locale: string, currency: string): number {
  if (!/^[A-Z]{3}$/.test(currency)) return 2;
  return new Intl.NumberFormat(locale, { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

function duration(seconds: number, number: Format['number']): string {
  if (seconds < 9.95) return `${number(seconds, 1, true)} s`;
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  const minutes = Math.floor(whole / 60);
  return minutes < 60 ? `${minutes} min ${whole % 60} s` : `${number(Math.floor(minutes / 60), 0)} h ${minutes % 60} min`;
}
