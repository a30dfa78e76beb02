import { PDFName, type PDFDocument, type PDFObject, type PDFRef } from '@cantoo/pdf-lib';
import { READING_LIMITS } from '../../dieline/limits.ts';
import { limitPassed } from '../../dieline/xml.ts';
import type { Affine } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/point.ts';
import { plain } from '../plain.ts';
import type { Colour } from './colours.ts';

/** Forms, patterns and masks. Artwork has some hundreds; patterns of patterns would grow without end. */
const MOST_PIECES = 5000;

type Kind = 'ExtGState' | 'ColorSpace' | 'Pattern' | 'XObject' | 'Font';

/**
 * Content streams under construction and the resources that all of them share. Content is in millimetres. Throws InputError
 * `drawing-limit` where it grows beyond the reader's limit.
 */
export function createSheet(document: PDFDocument, box: Box) {
  const { context } = document;
  const resources = context.nextRef();
  const held = new Map<Kind, Map<string, readonly [name: string, object: PDFObject]>>();
  let lines: string[] = [];
  let written = 0;

  const emit = (line: string): void => {
    written += line.length + 1;
    if (written > READING_LIMITS.pdfContentBytes) throw limitPassed('bytes of page content', READING_LIMITS.pdfContentBytes);
    lines.push(line);
  };

  /** What `draw` emits, on its own. */
  const capture = (draw: () => void): string => {
    const outer = lines;
    lines = [];
    draw();
    const content = lines.join('\n');
    lines = outer;
    return content;
  };

  /** Name of a resource; one of the same key is there once. */
  const resource = (kind: Kind, key: string, make: () => PDFObject): string => {
    const ofKind = held.get(kind) ?? new Map<string, readonly [string, PDFObject]>();
    held.set(kind, ofKind);
    const [name, object] = ofKind.get(key) ?? [`${kind.slice(0, 2)}${ofKind.size + 1}`, make()];
    ofKind.set(key, [name, object]);
    return name;
  };

  let pieces = 0;
  /** Takes in a form or pattern. */
  const add = (object: PDFObject): PDFRef => {
    if (++pieces > MOST_PIECES) throw limitPassed('pieces of artwork that are painted as one', MOST_PIECES);
    return context.register(object);
  };

  /** A piece of content that is painted as one. `group`: the colour space it is mixed in, or that of what it is painted on. */
  const form = (content: string, group?: 'DeviceRGB' | 'DeviceGray' | 'inherited'): PDFRef =>
    add(context.flateStream(content, {
      Type: 'XObject', Subtype: 'Form', FormType: 1, BBox: [box.minX, box.minY, box.maxX, box.maxY], Resources: resources,
      ...(group && { Group: { Type: 'Group', S: 'Transparency', ...(group !== 'inherited' && { CS: group }) } }),
    }));

  const draw = (object: PDFRef): void => emit(`/${resource('XObject', object.tag, () => object)} Do`);

  /** Sets entries of the graphics state. */
  const state = (entries: Readonly<Record<string, unknown>>, key = JSON.stringify(entries)): void =>
    emit(`/${resource('ExtGState', key, () => context.obj({ Type: 'ExtGState', ...entries } as never))} gs`);

  const softMask = (group: PDFRef, by: 'Luminosity' | 'Alpha'): void => state({ SMask: { Type: 'Mask', S: by, G: group } }, `mask ${group.tag}`);

  const setColour = ({ space, components, ink }: Colour, use: 'fill' | 'stroke'): void => {
    const values = components.map((value) => plain(value)).join(' ');
    if (ink) return emit(use === 'fill' ? `/${separation(ink)} cs ${values} scn` : `/${separation(ink)} CS ${values} SCN`);
    const [fill, stroke] = OPERATORS[space as keyof typeof OPERATORS];
    emit(`${values} ${use === 'fill' ? fill : stroke}`);
  };

  const spaceObject = ({ space, ink }: Colour): PDFObject => {
    if (!ink) return context.obj(space);
    separation(ink);
    return held.get('ColorSpace')!.get(ink.name)![1];
  };

  /** Inks of one name are one plate; the first tells how it is shown. */
  const separation = ({ name, shown }: NonNullable<Colour['ink']>): string =>
    resource('ColorSpace', name, () => context.register(context.obj([
      'Separation', PDFName.of(nameBytes(name)), 'DeviceRGB', { FunctionType: 2, Domain: [0, 1], C0: [1, 1, 1], C1: [...shown], N: 1 },
    ])));

  const setPattern = (pattern: PDFRef, use: 'fill' | 'stroke'): void => {
    const name = resource('Pattern', pattern.tag, () => pattern);
    emit(use === 'fill' ? `/Pattern cs /${name} scn` : `/Pattern CS /${name} SCN`);
  };

  /** Hands the resources over: a dictionary of dictionaries that everything made here refers to. */
  const finish = (): PDFRef => {
    context.assign(resources, context.obj(Object.fromEntries([...held].map(([kind, entries]) => [kind, Object.fromEntries(entries.values())])) as never));
    return resources;
  };

  return { context, resources, box, add, emit, capture, resource, form, draw, state, softMask, setColour, setPattern, spaceObject, finish };
}

export type Sheet = ReturnType<typeof createSheet>;

const OPERATORS = { DeviceGray: ['g', 'G'], DeviceRGB: ['rg', 'RG'], DeviceCMYK: ['k', 'K'] } as const;

/** Any text as the letters of a PDF name: UTF-8, everything that is not plain written as `#xx`. */
function nameBytes(text: string): string {
  const bytes = new TextEncoder().encode(text);
  return Array.from(bytes, (byte) => (/[A-Za-z0-9]/.test(String.fromCharCode(byte)) ? String.fromCharCode(byte) : `#${byte.toString(16).toUpperCase().padStart(2, '0')}`)).join('');
}

/** Operands of `cm` and `Tm`. */
export function matrixOperands({ a, b, c, d, e, f }: Affine): string {
  return [a, b, c, d, e, f].map(precise).join(' ');
}

/** Factors need more digits than lengths. */
export function precise(value: number): string {
  return String(Number(value.toFixed(7)) + 0);
}
