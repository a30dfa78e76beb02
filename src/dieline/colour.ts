/**
 * Colours only tell lines apart, so one colour must have one spelling: `#rrggbb` for what is written as hexadecimal,
 * as rgb() or as one of the names drawing programs write; anything else stays as it is, in lower case.
 */
export function normaliseColour(text: string): string {
  const value = text.trim().toLowerCase();
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])[0-9a-f]?$/.exec(value);
  if (short) return `#${short.slice(1).map((digit) => digit + digit).join('')}`;
  const long = /^#([0-9a-f]{6})(?:[0-9a-f]{2})?$/.exec(value);
  if (long) return `#${long[1]}`;
  const parts = /^rgba?\(\s*([\d.]+%?)[\s,]+([\d.]+%?)[\s,]+([\d.]+%?)(?:[\s,/]+[\d.]+%?)?\s*\)$/.exec(value);
  if (parts) return `#${parts.slice(1).map(hexadecimal).join('')}`;
  return NAMED[value] ?? value;
}

function hexadecimal(channel: string): string {
  const value = channel.endsWith('%') ? Number(channel.slice(0, -1)) * 2.55 : Number(channel);
  return Math.max(0, Math.min(255, Math.round(value))).toString(16).padStart(2, '0');
}

/** CSS Color 4, 6.1: the basic names and those that programs use for line work. */
const NAMED: Readonly<Record<string, string>> = {
  black: '#000000', silver: '#c0c0c0', gray: '#808080', grey: '#808080', white: '#ffffff', maroon: '#800000',
  red: '#ff0000', purple: '#800080', fuchsia: '#ff00ff', magenta: '#ff00ff', green: '#008000', lime: '#00ff00',
  olive: '#808000', yellow: '#ffff00', navy: '#000080', blue: '#0000ff', teal: '#008080', aqua: '#00ffff',
  cyan: '#00ffff', orange: '#ffa500', brown: '#a52a2a', pink: '#ffc0cb', violet: '#ee82ee', crimson: '#dc143c',
  darkred: '#8b0000', darkgreen: '#006400', darkblue: '#00008b', lightgray: '#d3d3d3', lightgrey: '#d3d3d3',
  darkgray: '#a9a9a9', darkgrey: '#a9a9a9', dimgray: '#696969', dimgrey: '#696969', gold: '#ffd700', indigo: '#4b0082',
  tomato: '#ff6347', deeppink: '#ff1493', royalblue: '#4169e1', steelblue: '#4682b4', forestgreen: '#228b22',
};
