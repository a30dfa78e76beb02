import { converter, parse } from 'culori';

/** A colour as a PDF paints it, every component from 0 to 1. */
export interface Colour {
  readonly space: 'DeviceGray' | 'DeviceRGB' | 'DeviceCMYK' | 'Separation';
  readonly components: readonly number[];
  readonly alpha: number;
  /** Name of the ink of a separation, and how it looks at its full. */
  readonly ink?: { readonly name: string; readonly shown: readonly [number, number, number] };
}

/** An ink that a colour of a drawing stands for. */
export interface NamedInk {
  readonly name: string;
  /** As CSS writes it. */
  readonly colour: string;
}

const BLACK = [0, 0, 0] as const;

/**
 * A colour of SVG: of CSS, `device-cmyk()`, `device-gray()`, and after an sRGB colour the `icc-color()` and `icc-named-color()`
 * of SVG. Equal parts of red, green and blue are grey, so that black text prints with black alone. Undefined for what is no
 * colour.
 */
export function readColour(text: string, inks: readonly NamedInk[]): Colour | undefined {
  const value = text.trim();
  const named = /^(.*?)\bicc-named-color\(\s*[^\s,)]+[\s,]+["']?([^"')]+?)["']?\s*\)$/i.exec(value);
  if (named) return inkOf(named[2]!, 1, rgbOf(named[1]!)?.channels ?? BLACK);
  const profiled = /\bicc-color\(\s*[^\s,)]+[\s,]+([^)]*)\)/i.exec(value);
  if (profiled) return deviceColour(profiled[1]!);
  const device = /^device-(?:cmyk|gray|rgb)\(([^)]*)\)$/i.exec(value);
  if (device) return deviceColour(device[1]!);
  const found = rgbOf(value);
  if (!found) return undefined;
  const ink = inks.find(({ colour }) => sameChannels(rgbOf(colour)?.channels, found.channels));
  if (ink) return { ...inkOf(ink.name, 1, found.channels), alpha: found.alpha };
  const [red, green, blue] = found.channels;
  return red === green && green === blue
    ? { space: 'DeviceGray', components: [red], alpha: found.alpha }
    : { space: 'DeviceRGB', components: found.channels, alpha: found.alpha };
}

/** `Fernhollow Green` at its full, `Fernhollow Green 40%` as a tint. */
export function readInk(text: string, shown: readonly [number, number, number]): Colour {
  const [, name, tint] = /^(.*?)(?:\s+(\d+(?:\.\d+)?)\s*%)?$/.exec(text.trim())!;
  return inkOf(name!, tint === undefined ? 1 : Math.min(1, Number(tint) / 100), shown);
}

/** How a colour looks; CMYK by the plain rule. */
export function shownChannels({ space, components, ink }: Colour): readonly [number, number, number] {
  const [first = 0, second = 0, third = 0, fourth = 0] = components;
  switch (space) {
    case 'DeviceGray':
      return [first, first, first];
    case 'DeviceRGB':
      return [first, second, third];
    case 'DeviceCMYK':
      return [first, second, third].map((part) => (1 - part) * (1 - fourth)) as [number, number, number];
    case 'Separation':
      return ink!.shown.map((channel) => 1 - first * (1 - channel)) as [number, number, number];
  }
}

function inkOf(name: string, tint: number, shown: readonly [number, number, number]): Colour {
  return { space: 'Separation', components: [tint], alpha: 1, ink: { name, shown } };
}

const SPACE_OF_COUNT = { 1: 'DeviceGray', 3: 'DeviceRGB', 4: 'DeviceCMYK' } as const;

/** One, three or four numbers, an alpha after a slash. */
function deviceColour(text: string): Colour | undefined {
  const [values, alpha] = text.split('/').map((part) => part.split(/[\s,]+/).filter((word) => word !== '').map(share));
  const space = SPACE_OF_COUNT[values!.length as 1];
  return space && values!.every(Number.isFinite) ? { space, components: values!, alpha: alpha?.[0] ?? 1 } : undefined;
}

function share(word: string): number {
  return clamped(word.endsWith('%') ? Number(word.slice(0, -1)) / 100 : Number(word));
}

const toRgb = converter('rgb');

function rgbOf(text: string): { readonly channels: readonly [number, number, number]; readonly alpha: number } | undefined {
  const parsed = text.trim() === '' ? undefined : parse(text.trim());
  const found = parsed && toRgb(parsed);
  return found && { channels: [clamped(found.r), clamped(found.g), clamped(found.b)], alpha: clamped(found.alpha ?? 1) };
}

function sameChannels(a: readonly number[] | undefined, b: readonly number[]): boolean {
  return a !== undefined && a.every((value, i) => Math.abs(value - b[i]!) < 0.5 / 255);
}

function clamped(value: number): number {
  return Math.min(1, Math.max(0, value));
}
