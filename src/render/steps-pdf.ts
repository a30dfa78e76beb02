import { PDFDocument, PDFName, PDFString, StandardFonts, type PDFFont, type PDFRef } from '@cantoo/pdf-lib';
import type { Role } from '../dieline/dieline.ts';
import { compose, mapPath, rotation, translation } from '../geometry/affine.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Box } from '../geometry/point.ts';
import { degreesOf } from '../geometry/turn.ts';
import { samePoint } from '../geometry/vector.ts';
import type { DieRule } from './die-rules.ts';
import type { Format } from './format.ts';
import type { HandoverWords } from './messages/english-handover.ts';
import { artworkLayer, type ArtworkLayer, type ImposedArtwork } from './imposed-artwork.ts';
import { pathConstruction, POINTS_PER_MM, textShown } from './pdf-operators.ts';
import { plain } from './plain.ts';
import { isArea, processingStep, type ProcessingStep } from './processing-steps.ts';
import { dimensionNotes, legendNotes } from './production-notes.ts';
import { PRODUCTION_SCALE } from './production-scale.ts';
import { printMarks, type PrintMarks } from './print-marks.ts';
import type { SceneItem } from './scene.ts';
import { circle, label, line, polyline, rectangle } from './shapes.ts';
import type { SheetView } from './sheet-view.ts';

/** One optional content group of the file: its step, its ink, and how its content is drawn. */
interface Layer {
  readonly name: string;
  /** Absent for printed marks, which are no processing step. */
  readonly step?: ProcessingStep;
  readonly content: string;
}

/** Arcs become cubics of at most an eighth of a turn: 0.3 µm at a radius of 60 mm. */
const LONGEST_ARC = Math.PI / 4;

/** CMYK shown for the separation of a step on screens and proofs; the steps themselves are never printed. */
const SHOWN_AS: Readonly<Record<string, readonly [number, number, number, number]>> = {
  Cutting: [0, 1, 1, 0], Creasing: [1, 0.6, 0, 0], ReverseCreasing: [0.8, 0.2, 0, 0.2], Perforating: [0, 0.8, 0, 0], CuttingCreasing: [0.6, 1, 0, 0],
  PartialCutting: [0, 0.6, 1, 0], ReversePartialCutting: [0, 0.4, 1, 0.2], Gluing: [0.2, 0, 0.6, 0], VarnishFree: [0.3, 0.1, 0, 0], Bleed: [0.9, 0, 0.9, 0.1],
  Legend: [0, 0, 0, 0.8], Dimensions: [0.5, 0.3, 0, 0.4],
};
const OTHERWISE = [0.4, 0.4, 0, 0.1] as const;

/**
 * The sheet for production: one page of the sheet's size, true curves, one optional content group a processing step with
 * the metadata of ISO 19593-1:2018, each step in a Separation of its own that overprints. Lines are stroked, areas
 * filled. Marks that are printed with the job stand in a group of their own without metadata, in the colour All; so does
 * the artwork, under everything else and as it is; with artwork, legend and dimensions are seen but not printed.
 * Carries no dates, so that the same layout gives the same bytes.
 */
export async function stepsPdf(view: SheetView, rules: readonly DieRule[], notice: string, { words, format }: { readonly words: HandoverWords; readonly format: Format }, imposed?: ImposedArtwork): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(notice, { showInWindowTitleBar: true });
  document.setProducer('Blankwright');
  document.setCreator('Blankwright');
  const fonts = { Regular: await document.embedFont(StandardFonts.Helvetica), Bold: await document.embedFont(StandardFonts.HelveticaBold) };
  const all: Layer[] = [
    ...roleLayers([...rules, ...bleedLines(view)]),
    { name: 'Legend', step: { group: 'Legend' }, content: itemsContent(legendNotes(view, notice, words), fonts) },
    { name: 'Dimensions', step: { group: 'Dimensions' }, content: itemsContent(dimensionNotes(view, format), fonts) },
    { name: 'Printed marks', content: marksContent(printMarks(view, notice), fonts, rules.every(({ role }) => role !== 'Varnish')) },
  ];
  const layers = all.filter(({ content }) => content !== '');
  addPage(document, view, layers, { Regular: fonts.Regular.ref, Bold: fonts.Bold.ref }, imposed && artworkLayer(document, view, imposed));
  return document.save();
}

function roleLayers(rules: readonly Pick<DieRule, 'role' | 'curves'>[]): Layer[] {
  const roles = [...new Set(rules.map(({ role }) => role))].toSorted();
  return roles.flatMap((role): Layer[] => {
    const step = processingStep(role);
    return step ? [{ name: step.type ?? step.group, step, content: roleContent(role, rules.filter((rule) => rule.role === role).map(({ curves }) => curves)) }] : [];
  });
}

function roleContent(role: Role, paths: readonly CurvePath[]): string {
  const isClosed = (path: CurvePath) => path.length > 0 && samePoint(path[0]!.from, path.at(-1)!.to);
  const filled = isArea(role) ? paths.filter(isClosed) : [];
  const stroked = isArea(role) ? paths.filter((path) => !isClosed(path)) : paths;
  return [
    ...(filled.length > 0 ? [`${pathConstruction(filled, LONGEST_ARC)}\nf*`] : []),
    ...(stroked.length > 0 ? [`${plain(role === 'Bleed' ? PRODUCTION_SCALE.thin : LINE_MM)} w\n${pathConstruction(stroked, LONGEST_ARC)}\nS`] : []),
  ].join('\n');
}

/** Width of a drawn rule, mm (1 point): seen at once, and fine enough to measure from its middle. */
const LINE_MM = 0.353;

function bleedLines({ designs, placements }: SheetView): Pick<DieRule, 'role' | 'curves'>[] {
  return placements.flatMap(({ design, turn, x, y }) => {
    const { bleedOutline } = designs[design]!;
    if (!bleedOutline) return [];
    return [{ role: 'Bleed' as const, curves: mapPath(compose(translation(x, y), rotation(degreesOf(turn))), polyline(bleedOutline, true)) }];
  });
}

function itemsContent(items: readonly SceneItem[], fonts: Readonly<Record<'Regular' | 'Bold', PDFFont>>): string {
  return items.map((item) => {
    switch (item.kind) {
      case 'text': {
        const name = item.bold ? 'Bold' : 'Regular';
        return `BT ${textShown(item, fonts[name], name)} ET`;
      }
      case 'path': {
        const { stroke, fill, width, dash } = item.look;
        const paint = fill && stroke ? 'B*' : fill ? 'f*' : 'S';
        return `${plain(width ?? PRODUCTION_SCALE.thin)} w [${(dash ?? []).map(plain).join(' ')}] 0 d\n${pathConstruction(item.paths, LONGEST_ARC)}\n${paint}`;
      }
      case 'use':
        throw new Error('notes hold no symbols');
    }
  }).join('\n');
}

/** In the colour of the layer, but for the patches, which are in the colours of the process. */
function marksContent({ register, sideLay, centre, printToCut, id, patches }: PrintMarks, fonts: Readonly<Record<'Regular' | 'Bold', PDFFont>>, withPatches: boolean): string {
  const crosses = register.flatMap(({ at: { x, y }, size }) => {
    const half = size / 2;
    return [line({ x: x - half, y }, { x: x + half, y }), line({ x, y: y - half }, { x, y: y + half }), circle({ x, y }, half * 0.6)];
  });
  const strokes = [...crosses, ...[...centre, ...printToCut].map(({ from, to }) => line(from, to))];
  const boxed = ({ minX, minY, maxX, maxY }: Box) => pathConstruction([rectangle(minX, minY, maxX, maxY)]);
  return [
    ...(strokes.length > 0 ? [`${plain(PRODUCTION_SCALE.thin)} w\n${pathConstruction(strokes, LONGEST_ARC)}\nS`] : []),
    ...(sideLay ? [`${boxed(sideLay)}\nf`] : []),
    ...(id ? [`BT ${textShown({ ...label(id.text, id.at, id.size, { turn: id.turn }) }, fonts.Regular, 'Regular')} ET`] : []),
    ...(withPatches ? patches.map(({ box, cmyk }) => `${cmyk.map(plain).join(' ')} k ${boxed(box)}\nf`) : []),
  ].join('\n');
}

function addPage(document: PDFDocument, { sheet }: SheetView, layers: readonly Layer[], fonts: Readonly<Record<string, PDFRef>>, artwork?: ArtworkLayer): void {
  const { context } = document;
  const page = document.addPage([sheet.width * POINTS_PER_MM, sheet.height * POINTS_PER_MM]);
  const isNote = ({ step }: Layer) => step?.group === 'Legend' || step?.group === 'Dimensions';
  const groups = layers.map((layer) => context.register(context.obj(groupDictionary(layer, artwork === undefined || !isNote(layer)))));
  const notes = artwork ? groups.filter((_, i) => isNote(layers[i]!)) : [];
  const colours = layers.map(({ name, step }) => context.obj(['Separation', step ? name : 'All', 'DeviceCMYK', tint(step ? (SHOWN_AS[name] ?? OTHERWISE) : [1, 1, 1, 1])]));
  const printed = artwork && context.register(context.obj({ Type: 'OCG', Name: PDFString.of('Artwork') }));
  const numbered = <T>(prefix: string, values: readonly T[]) => Object.fromEntries(values.map((value, i) => [`${prefix}${i + 1}`, value]));
  page.node.set(PDFName.of('Resources'), context.obj({
    Font: { ...fonts },
    Properties: { ...numbered('Step', groups), ...(printed && { Artwork: printed }) },
    ...(artwork && { XObject: { ...artwork.forms } }),
    ColorSpace: numbered('Ink', colours),
    ExtGState: { Overprint: { Type: 'ExtGState', OP: true, op: true, OPM: 1 } },
  }));
  const scale = POINTS_PER_MM.toFixed(8);
  const content = layers.map((layer, i) => `/OC /Step${i + 1} BDC\nq /Overprint gs /Ink${i + 1} CS 1 SCN /Ink${i + 1} cs 1 scn\n${layer.content}\nQ\nEMC`).join('\n');
  const under = artwork ? `/OC /Artwork BDC\n${artwork.content}\nEMC\n` : '';
  page.node.addContentStream(context.register(context.flateStream(`q ${scale} 0 0 ${scale} 0 0 cm\n${under}1 j\n${content}\nQ`)));
  const own = [...(printed ? [printed] : []), ...groups];
  const hidden = artwork?.hidden ?? [];
  const shown = [...own, ...(artwork?.groups ?? []).filter((group) => !hidden.includes(group))];
  document.catalog.set(PDFName.of('OCProperties'), context.obj({ OCGs: [...shown, ...hidden], D: { ON: shown, OFF: [...hidden], Order: own, ...(notes.length > 0 && { AS: [{ Event: 'Print', Category: ['Print'], OCGs: notes }] }) } }));
}

/** Keys of the metadata: the PDF Association's model of optional content groups, edition 2018 of the standard. */
function groupDictionary({ name, step }: Layer, isPrinted: boolean) {
  const metadata = step && { GTS_Metadata: { GTS_ProcStepsGroup: step.group, ...(step.type && { GTS_ProcStepsType: step.type }) } };
  return { Type: 'OCG', Name: PDFString.of(name), ...metadata, ...(!isPrinted && { Usage: { Print: { PrintState: 'OFF' } } }) };
}

function tint(full: readonly number[]) {
  return { FunctionType: 2, Domain: [0, 1], C0: [0, 0, 0, 0], C1: [...full], N: 1 };
}
