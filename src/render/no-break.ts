import type { Format } from './format.ts';

/** Units and currencies that stand after a figure. */
const UNIT = String.raw`(?:%|°|(?:µm|mm|cm|m|in|ft)[²³]?|kg|g|t|lb|N|h|min|s|[A-Z]{3})(?![\p{L}\d²³])`;
const SPACE = new RegExp(
  [
    // Between the thousands of a figure, before its unit, and around the sign between two sides.
    String.raw`(?<=\d) (?=\d{3}(?!\d))`,
    String.raw`(?<=\d) (?=${UNIT})`,
    String.raw`(?<=\d) (?=×)`,
    String.raw`(?<=×) (?=\d)`,
    // French sets a space before these signs and within « ».
    String.raw` (?=[;:!?»])`,
    String.raw`(?<=«) `,
  ].join('|'),
  'gu',
);

/** No-break spaces where a line may not end. The one place that knows where. */
export function keepTogether(text: string): string {
  return text.replace(SPACE, '\u00a0');
}

/** The same writer of figures, for texts whose lines end where there is room. */
export function keptTogether(format: Format): Format {
  return {
    ...format,
    number: (...figure) => keepTogether(format.number(...figure)),
    bareLength: (mm) => keepTogether(format.bareLength(mm)),
    length: (mm) => keepTogether(format.length(mm)),
    caliper: (mm) => keepTogether(format.caliper(mm)),
    size: (...sides) => keepTogether(format.size(...sides)),
    area: (...area) => keepTogether(format.area(...area)),
    board: (...board) => keepTogether(format.board(...board)),
    bareBoard: (...board) => keepTogether(format.bareBoard(...board)),
    percent: (fraction) => keepTogether(format.percent(fraction)),
    money: (...amount) => keepTogether(format.money(...amount)),
    duration: (seconds) => keepTogether(format.duration(seconds)),
  };
}
