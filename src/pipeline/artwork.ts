import { InputError, inputError, type Issue } from '../base/issue.ts';
import { groupBy } from '../base/group-by.ts';
import { toMicrons } from '../base/units.ts';
import type { Dieline } from '../dieline/dieline.ts';
import type { Drawing } from '../dieline/drawing.ts';
import { DEFAULT_READ_OPTIONS } from '../dieline/options.ts';
import { mapBox, openPdf, pageMap, type PdfFile, type PdfPage } from '../dieline/pdf/document.ts';
import { missingFonts } from '../dieline/pdf/font.ts';
import { openPdfDrawing } from '../dieline/pdf/pdf-drawing.ts';
import { looksLikeSvg } from '../dieline/read-drawing.ts';
import { openSvg, readSvg } from '../dieline/svg-drawing.ts';
import { understand } from '../dieline/understand.ts';
import { compose, translation } from '../geometry/affine.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { intersect, unite } from '../geometry/boolean.ts';
import { boxOf, type Box, type Point, type Polygon } from '../geometry/point.ts';
import { fitArtwork, type ArtworkContent, type FittedBy } from '../layout/artwork-fit.ts';
import type { BarAxis } from '../layout/bar-codes.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import type { ImposedArtwork, PlacedArtwork } from '../render/imposed-artwork.ts';
import type { XmlElement } from '../dieline/xml.ts';
import type { NamedInk } from '../render/svg-pdf/colours.ts';
import { createStepByName } from '../render/svg-pdf/step-by-name.ts';
import { svgToPdf } from '../render/svg-pdf/convert.ts';
import { printAreas } from '../render/print-areas.ts';

/** Artwork of one blank, as it is placed and as far as it is known. */
export interface Artwork {
  readonly file: PdfFile;
  readonly page: PdfPage;
  /** Where it came as SVG, which the page then shows. */
  readonly svg?: XmlElement;
  readonly content: ArtworkContent;
  /** Boxes of long thin pieces, millimetres from the page's lower left corner. */
  readonly thin: readonly Box[];
  readonly issues: readonly Issue[];
}

/** Artwork for the stations of one version or design, or for all. */
export interface GivenArtwork {
  /** Name of the version, or of the design where stations have no versions. */
  readonly design: string | undefined;
  readonly where: string;
  readonly artwork: Artwork;
  /** Place of its page's lower left corner in the design's axes, mm; found where it is not given. */
  readonly at: Point | undefined;
}

export interface Imposition extends ImposedArtwork {
  readonly placed: readonly { readonly design: string; readonly where: string; readonly by: FittedBy; readonly offset: Point }[];
  readonly issues: readonly Issue[];
  /** Which way the bars within a box of a design run, in the design's axes, as far as the artwork shows it. */
  readonly barsSeen: (design: string, box: Box) => BarAxis | undefined;
}

/**
 * Artwork laid on every station of one side, by the version that the station prints, else by its design. Throws InputError
 * where a page fits no blank, names what no station prints, or a version has two.
 */
export function imposeArtwork(layout: LayoutFile, given: readonly GivenArtwork[], versions?: readonly string[]): Imposition {
  const designs = layout.placements.map(({ design }) => design);
  const printed = versions ?? designs;
  const names = [...new Set(printed)];
  const wanted = given.flatMap((one) => (one.design === undefined ? names : [one.design]).map((name) => ({ ...one, name })));
  for (const { name, where } of wanted) if (!names.includes(name)) throw inputError('artwork-for-no-design', { where, facts: { design: name, designs: names.join(', ') } });
  const doubled = wanted.find(({ name }, i) => wanted.findIndex((other) => other.name === name) < i);
  if (doubled) throw inputError('artwork-twice', { where: doubled.where, facts: { design: doubled.name } });
  const fits = wanted.flatMap(({ name, artwork, at, where }) => {
    const stood = new Set(designs.filter((_, station) => printed[station] === name));
    return layout.designs.filter(({ id }) => stood.has(id)).map((design) => ({ name, design: design.id, where, artwork, fit: fitArtwork(artwork.content, design, { bleed: layout.rules.bleed, at, where }) }));
  });
  const bare = names.filter((name) => !wanted.some((one) => one.name === name));
  return {
    artworks: fits.map(({ artwork: { file, page, svg }, fit }): PlacedArtwork => ({ file, page, ...(svg && { svg }), offset: fit.offset })),
    ofStation: designs.map((design, station) => {
      const index = fits.findIndex((one) => one.design === design && one.name === printed[station]);
      return index < 0 ? undefined : index;
    }),
    areas: printAreas(layout),
    barsSeen: (id, box) => fits.filter(({ design }) => design === id).map(({ artwork, fit }) => barsWithin(artwork.thin, fit.offset, box)).find((axis) => axis !== undefined),
    placed: fits.map(({ name, where, fit: { by, offset } }) => ({ design: name, where, by, offset })),
    issues: [
      ...given.flatMap(({ artwork }) => artwork.issues),
      ...fits.flatMap(({ fit }) => fit.issues),
      ...bare.map((design): Issue => ({ code: 'artwork-missing', severity: 'warning', facts: { design } })),
    ],
  };
}

/**
 * Reads artwork: a page of a PDF, or an SVG, whose colours may stand for `inks`. `where` names the file in the issues. Throws
 * InputError where it is neither, cannot be read, or has no such page.
 */
export async function readArtwork(bytes: Uint8Array, number: number, where: string, inks: readonly NamedInk[] = []): Promise<Artwork> {
  const head = String.fromCharCode(...bytes.subarray(0, 1024));
  if (head.includes('%PDF-')) return readPdfArtwork(bytes, number, where);
  if (!looksLikeSvg(head)) throw inputError('artwork-kind', { where });
  if (number !== 1) throw inputError('no-such-page', { facts: { number, count: 1 } });
  const { bytes: page, issues } = await svgToPdf(bytes, inks);
  const artwork = await readPdfArtwork(page, 1, where);
  const { height } = artwork.content;
  const dieLines = contentOf(() => readSvg(bytes, undefined), height).content.dieLines;
  const { root } = openSvg(bytes);
  return { ...artwork, svg: root, content: { ...artwork.content, dieLines }, issues: [...issues.map((issue) => ({ ...issue, where: issue.where === undefined ? where : `${where}, ${issue.where}` })), ...artwork.issues.filter(({ code }) => code !== 'artwork-font-missing')] };
}

async function readPdfArtwork(bytes: Uint8Array, number: number, where: string): Promise<Artwork> {
  // A reader that mends what it can would place half a page of a file cut off.
  if (!new TextDecoder('latin1').decode(bytes.subarray(-TAIL_BYTES)).includes('%%EOF')) throw inputError('artwork-cut-off', { where });
  const file = await openPdf(bytes);
  const read = await openPdfDrawing(bytes, number);
  const page = file.pages[number - 1]!;
  const { map, size } = pageMap(page, page.mmPerUnit);
  const fromLowerLeft = compose(translation(0, size.height), map);
  const shown = (box: Box | undefined) => box && mapBox(fromLowerLeft, box);
  const known = contentOf(read, size.height);
  const content: ArtworkContent = { ...size, trim: shown(page.trimBox), bleed: shown(page.bleedBox), ...known.content };
  const named = content.dieLines.length > 0 ? [{ code: 'artwork-holds-die-line', severity: 'note', where } as const] : [];
  const fonts = missingFonts(page.resources, file.context).map((font): Issue => ({ code: 'artwork-font-missing', severity: 'warning', where, facts: { font } }));
  return { file, page, content, thin: known.thin, issues: [...named, ...fonts, ...(known.looked ? [] : [{ code: 'artwork-not-looked-at', severity: 'warning', where } as const])] };
}

/** The mark of the end stands within so many bytes of it. */
const TAIL_BYTES = 2048;

interface Known {
  readonly looked: boolean;
  readonly content: Pick<ArtworkContent, 'dieLines' | 'printed' | 'texts'>;
  /** Boxes of long thin pieces: bars of codes are among them. Millimetres from the page's lower left corner. */
  readonly thin: readonly Box[];
}

/** Artwork may hold more than is read of a drawing; it is placed all the same, and said that it was not looked at. */
function contentOf(read: (scale: undefined) => Drawing, height: number): Known {
  try {
    const drawing = read(undefined);
    const dieline = understand(drawing, DEFAULT_READ_OPTIONS);
    const raised = ({ minX, minY, maxX, maxY }: Box): Box => ({ minX, minY: minY + height, maxX, maxY: maxY + height });
    const texts = [...drawing.texts, ...(drawing.unreadTexts ?? [])].map(({ place: { x, y }, ...text }) => ({ ...text, place: { x, y: y + height } }));
    return { looked: true, content: { dieLines: namedBlanks(dieline).map(raised), printed: printedOf(drawing, height), texts }, thin: thinBoxes(drawing).map(raised) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { looked: false, content: { dieLines: [], printed: undefined, texts: [] }, thin: [] };
  }
}

/** Blanks whose outline a name gives; a frame that is only printed has none. */
function namedBlanks({ blanks }: Dieline): Box[] {
  return blanks.filter(({ rules }) => rules.some(({ role, reason }) => role === 'Cutting' && reason === 'name')).map(({ box }) => box);
}

/** What is filled, element by element: no white, which is paper, and nothing that a name makes a processing step. */
function printedOf(drawing: Drawing, height: number): Polygon[][] {
  const stepNamed = createStepByName();
  const filled = [...drawing.fills, ...drawing.lines].filter(({ source }) => source.filled && source.fill !== '#ffffff' && stepNamed(source.levels, true) === undefined);
  const raise = ({ x, y }: Point): Point => ({ x: toMicrons(x), y: toMicrons(y + height) });
  return [...groupBy(filled, ({ source }) => source)].flatMap(([{ clip }, lines]) => {
    const rings = lines.map(({ curves }) => flattenPath(curves, INK_TOLERANCE_MM).map(raise)).filter((ring) => ring.length >= 3);
    const polygons = unite(rings.map((outer): Polygon => ({ outer, holes: [] })));
    const shown = clip ? intersect(polygons, [{ outer: cornersOf(clip).map(raise), holes: [] }]) : polygons;
    return shown.length > 0 ? [shown] : [];
  });
}

function cornersOf({ minX, minY, maxX, maxY }: Box): Point[] {
  return [{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }];
}

const INK_TOLERANCE_MM = 0.05;

/** A bar is at least so many times as long as it is thick. */
const BAR_SHARE = 4;
/** Fewer are no code. */
const LEAST_BARS = 10;
/** So much of what is long and thin runs one way in a code. */
const ONE_WAY = 0.8;

function thinBoxes({ fills, lines }: Drawing): Box[] {
  return [...fills, ...lines].map(({ curves }) => boxOf(curves.flatMap(({ from, to }) => [from, to]))).filter((box) => {
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    return Math.max(width, height) >= BAR_SHARE * Math.min(width, height);
  });
}

/** Which way most of the long thin pieces within a box run; undefined where there are too few, or no one way. */
function barsWithin(thin: readonly Box[], { x, y }: Point, box: Box): BarAxis | undefined {
  const within = thin.filter(({ minX, minY, maxX, maxY }) => minX + x >= box.minX && maxX + x <= box.maxX && minY + y >= box.minY && maxY + y <= box.maxY);
  const upright = within.filter(({ minX, minY, maxX, maxY }) => maxY - minY > maxX - minX).length;
  if (within.length < LEAST_BARS) return undefined;
  return upright >= ONE_WAY * within.length ? 'y' : within.length - upright >= ONE_WAY * within.length ? 'x' : undefined;
}
