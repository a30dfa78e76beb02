import { AMOUNT, COLOURS, GRAMMAGE, SHARE, VARNISH_UNITS, type Range } from '../../press/figure-ranges.ts';
import { RATE_FIELDS, type RateName } from './rate-fields.ts';

/** The fields for figures of the money panel. */
export type MoneyFigure = 'grammage' | 'boardPrice' | 'colours' | 'varnishUnits' | RateName;

const ORDER: Readonly<Partial<Record<MoneyFigure, Range>>> = { grammage: GRAMMAGE, colours: COLOURS, varnishUnits: VARNISH_UNITS, inkCoverage: SHARE };
/** An hour; a machine that stands still makes nothing. */
const SPEED: Range = { ...AMOUNT, least: 1 };
const SPEEDS: ReadonlySet<string> = new Set(RATE_FIELDS.filter(({ at }) => at[1] === 'speed').map(({ name }) => name));

/** What may be typed there. */
export function rangeOf(figure: MoneyFigure): Range {
  return ORDER[figure] ?? (SPEEDS.has(figure) ? SPEED : AMOUNT);
}
