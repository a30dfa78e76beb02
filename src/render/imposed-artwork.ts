import { PDFDict, PDFName, PDFObjectCopier, PDFRef, type PDFArray, type PDFDocument, type PDFObject } from '@cantoo/pdf-lib';
import { pageContents, pageMap, type PdfFile, type PdfPage } from '../dieline/pdf/document.ts';
import { asDict, dictEntry, entry } from '../dieline/pdf/objects.ts';
import type { XmlElement } from '../dieline/xml.ts';
import { compose, translation } from '../geometry/affine.ts';
import type { Point, Polygon } from '../geometry/point.ts';
import { pathConstruction, turnMatrix } from './pdf-operators.ts';
import { plain } from './plain.ts';
import { polygonPaths } from './polygon-paths.ts';
import type { SheetView } from './sheet-view.ts';

/** One page of artwork and its place on a blank. */
export interface PlacedArtwork {
  readonly file: PdfFile;
  readonly page: PdfPage;
  /** The drawing that the page shows, where it came as SVG. */
  readonly svg?: XmlElement;
  /** Place of the page's lower left corner in the design's axes, mm. */
  readonly offset: Point;
}

/** Artwork of one side of the sheet. */
export interface ImposedArtwork {
  readonly artworks: readonly PlacedArtwork[];
  /** Index of each station's artwork; undefined where it has none. */
  readonly ofStation: readonly (number | undefined)[];
  /** Where each station's print may be, whole µm of the sheet. */
  readonly areas: readonly (readonly Polygon[])[];
}

/** What the imposed artwork adds to a page. */
export interface ArtworkLayer {
  /** Operators in millimetres of the sheet. */
  readonly content: string;
  readonly forms: Readonly<Record<string, PDFRef>>;
  /** Optional content groups that came with the artwork, and those of them that are not shown. */
  readonly groups: readonly PDFRef[];
  readonly hidden: readonly PDFRef[];
}

/**
 * Copies each page of artwork once into the document, as it is (vectors, colours, fonts), and draws it on its stations,
 * turned with the blank and clipped to the station's area. Processing steps within the artwork are switched off: the form
 * has its own.
 */
export function artworkLayer(document: PDFDocument, { placements }: SheetView, { artworks, ofStation, areas }: ImposedArtwork): ArtworkLayer {
  const copied = artworks.map((artwork) => copyPage(document, artwork));
  const content = placements.flatMap(({ turn, x, y }, station) => {
    const index = ofStation[station];
    if (index === undefined) return [];
    const { x: left, y: lower } = artworks[index]!.offset;
    const clip = pathConstruction(polygonPaths(areas[station]!));
    return [`q ${clip} W* n\n${turnMatrix(turn, x, y)} cm 1 0 0 1 ${plain(left)} ${plain(lower)} cm /Art${index + 1} Do\nQ`];
  });
  return {
    content: content.join('\n'),
    forms: Object.fromEntries(copied.map(({ form }, i) => [`Art${i + 1}`, form])),
    groups: copied.flatMap(({ groups }) => groups),
    hidden: copied.flatMap(({ hidden }) => hidden),
  };
}

/** The page as a form whose space is millimetres from its lower left corner. */
function copyPage(document: PDFDocument, { file, page }: PlacedArtwork): { form: PDFRef; groups: readonly PDFRef[]; hidden: readonly PDFRef[] } {
  const { context } = document;
  const copier = PDFObjectCopier.for(file.context, context);
  const { map, size } = pageMap(page, page.mmPerUnit);
  const { a, b, c, d, e, f } = compose(translation(0, size.height), map);
  const { minX, minY, maxX, maxY } = page.box;
  const group = entry(page.dict, 'Group');
  const form = context.flateStream(pageContents(page), {
    Type: 'XObject', Subtype: 'Form', FormType: 1, BBox: [minX, minY, maxX, maxY], Matrix: [a, b, c, d, e, f],
    ...(page.resources && { Resources: copier.copy(page.resources) }),
    ...(group && { Group: copier.copy(group) }),
  });
  return { form: context.register(form), ...layersOf(file, copier) };
}

function layersOf({ catalog, context }: PdfFile, copier: PDFObjectCopier): { groups: PDFRef[]; hidden: PDFRef[] } {
  const properties = dictEntry(catalog, 'OCProperties');
  const settings = dictEntry(properties, 'D');
  const listed = (dict: PDFDict | undefined, key: string): PDFRef[] => references(entry(dict, key));
  const groups = listed(properties, 'OCGs');
  const isOff = entry(settings, 'BaseState') === PDFName.of('OFF');
  const [on, off] = [new Set(listed(settings, 'ON')), new Set(listed(settings, 'OFF'))];
  const isStep = (group: PDFRef) => dictEntry(asDict(context.lookup(group)), 'GTS_Metadata') !== undefined;
  const hidden = groups.filter((group) => isStep(group) || (isOff ? !on.has(group) : off.has(group)));
  const copy = (refs: readonly PDFRef[]) => refs.map((ref) => copier.copy(ref));
  return { groups: copy(groups), hidden: copy(hidden) };
}

function references(array: PDFObject | undefined): PDFRef[] {
  const held = (array as Partial<PDFArray> | undefined)?.asArray?.() ?? [];
  return held.filter((item) => item instanceof PDFRef);
}
