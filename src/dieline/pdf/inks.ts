import { PDFDict, PDFName, PDFRawStream, type PDFContext, type PDFObject } from '@cantoo/pdf-lib';
import { asDict, asName, asNumber, entry, items } from './objects.ts';

/** What a line or area is painted with, as far as it tells lines apart. */
export interface Ink {
  /** As `normaliseColour` spells it: `#rrggbb`, or the name of a spot colour in lower case. */
  readonly colour: string;
  /** Name of the spot colour, as the file writes it. */
  readonly spot?: string;
}

/** A colour space: the ink that some components of it are. */
export type InkSpace = (components: readonly number[]) => Ink;

export const BLACK: Ink = { colour: '#000000' };

/** ISO 32000-1, 8.6. Of spaces that hold no colour by themselves the family's name tells lines apart. */
export function inkSpace(object: PDFObject | undefined, context: PDFContext, depth = 0): InkSpace {
  if (object instanceof PDFName) return named(asName(object) ?? '');
  const [family, ...parts] = items(object, context);
  const name = asName(family) ?? '';
  const inner = (space: PDFObject | undefined) => (depth < DEEPEST ? inkSpace(space, context, depth + 1) : named(''));
  switch (name) {
    case 'Separation':
      return separation([asName(parts[0]) ?? '']);
    case 'DeviceN':
      return separation(items(parts[0], context).map((colorant) => asName(colorant) ?? ''));
    case 'ICCBased': {
      const components = asNumber(entry(parts[0] instanceof PDFRawStream ? parts[0].dict : asDict(parts[0]), 'N'));
      return components === 4 ? cmyk : components === 1 ? grey : rgb;
    }
    case 'Indexed':
      return ([index]) => ({ colour: `indexed ${index ?? 0}` });
    case 'Pattern':
      return parts[0] instanceof PDFDict ? named('Pattern') : parts.length > 0 ? inner(parts[0]) : named('Pattern');
    default:
      return named(name);
  }
}

/** Colour spaces within one another. */
const DEEPEST = 8;

/** The first colour of a space (ISO 32000-1, 8.6.5 and 8.6.6): black, and a spot colour at its full. */
export const grey: InkSpace = ([value = 0]) => ({ colour: hexadecimal([value, value, value]) });
export const rgb: InkSpace = ([red = 0, green = 0, blue = 0]) => ({ colour: hexadecimal([red, green, blue]) });
export const cmyk: InkSpace = ([cyan = 0, magenta = 0, yellow = 0, black = 1]) => ({ colour: hexadecimal([cyan, magenta, yellow].map((ink) => (1 - ink) * (1 - black))) });

export function named(name: string): InkSpace {
  switch (name) {
    case 'DeviceGray':
    case 'CalGray':
    case 'G':
      return grey;
    case 'DeviceCMYK':
    case 'CMYK':
      return cmyk;
    case 'DeviceRGB':
    case 'CalRGB':
    case 'RGB':
      return rgb;
    case 'Lab':
      return (values) => ({ colour: `lab ${values.map((value) => value.toFixed(1)).join(' ')}` });
    default:
      return () => ({ colour: name === '' ? BLACK.colour : name.toLowerCase() });
  }
}

/** Of several colorants the only one that prints; two that print together are a mixture, known by both names. */
function separation(colorants: readonly string[]): InkSpace {
  return (tints) => {
    const printing = colorants.filter((name, i) => name !== 'None' && (tints[i] ?? 1) > 0);
    const [spot] = printing;
    if (printing.length === 1 && !PROCESS.has(spot!)) return { colour: spot!.toLowerCase(), spot: spot! };
    return { colour: printing.join(' and ').toLowerCase() || 'none' };
  };
}

/** Colorants that print pictures; they name nothing. */
const PROCESS: ReadonlySet<string> = new Set(['Cyan', 'Magenta', 'Yellow', 'Black', 'All']);

function hexadecimal(channels: readonly number[]): string {
  return `#${channels.map((value) => Math.max(0, Math.min(255, Math.round(value * 255))).toString(16).padStart(2, '0')).join('')}`;
}
