import { PDFArray, PDFDict, PDFName, type PDFContext, type PDFObject } from '@cantoo/pdf-lib';
import { OTHER_ROLES, STRUCTURAL_ROLES } from '../dieline.ts';
import type { NameLevel } from '../drawing.ts';
import { asDict, asName, asText, dictEntry, entry, identityOf } from './objects.ts';

/** An optional content group as a layer of the drawing. */
export interface PdfLayer {
  readonly name: string;
  readonly level: NameLevel;
  /** What its metadata say that its lines are. */
  readonly step: NameLevel | undefined;
  readonly shown: boolean;
}

/**
 * Layers by the object that marks content with them. What a group is called is free text; the metadata of ISO 19593-1 say
 * what its lines are.
 */
export function createLayers(catalog: PDFDict, context: PDFContext) {
  const properties = dictEntry(catalog, 'OCProperties');
  const settings = dictEntry(properties, 'D');
  const isHidden = hiddenBy(settings, context);
  const known = new Map<PDFObject | string, PdfLayer>();

  const groupOf = (raw: PDFObject | undefined): PdfLayer | undefined => {
    const identity = identityOf(raw);
    const dict = asDict(context.lookup(raw));
    if (identity === undefined || !dict) return undefined;
    const before = known.get(identity);
    if (before) return before;
    const name = asText(entry(dict, 'Name')) ?? '';
    const step = stepOf(dict);
    const level = (names: readonly string[], key: number): NameLevel => ({ group: true, id: undefined, classes: [], names, key });
    const layer: PdfLayer = {
      name,
      level: level(name === '' ? [] : [name], -2 * known.size - 1),
      step: step === undefined ? undefined : level([step], -2 * known.size - 2),
      shown: !isHidden(identity),
    };
    known.set(identity, layer);
    return layer;
  };

  /** Of a group, or of a membership in several: shown when one of them is, or as its policy says. */
  return (raw: PDFObject | undefined): readonly PdfLayer[] => {
    const dict = asDict(context.lookup(raw));
    if (asName(entry(dict, 'Type')) !== 'OCMD') return [groupOf(raw)].filter((layer) => layer !== undefined);
    const held = dict!.get(PDFName.of('OCGs'));
    const array = context.lookup(held);
    const groups = (array instanceof PDFArray ? array.asArray() : [held]).map(groupOf).filter((layer) => layer !== undefined);
    const shown = groups.length === 0 || POLICIES[asName(entry(dict, 'P')) ?? 'AnyOn']?.(groups.map((layer) => layer.shown)) !== false;
    return groups.map((layer) => ({ ...layer, shown }));
  };
}

const POLICIES: Readonly<Record<string, (shown: readonly boolean[]) => boolean>> = {
  AnyOn: (shown) => shown.includes(true),
  AllOn: (shown) => !shown.includes(false),
  AnyOff: (shown) => shown.includes(false),
  AllOff: (shown) => !shown.includes(true),
};

/** As the file is opened: ISO 32000-1, 8.11.4.3. */
function hiddenBy(settings: PDFDict | undefined, context: PDFContext): (identity: PDFObject | string) => boolean {
  const listed = (key: string) => {
    const array = entry(settings, key);
    return new Set(array instanceof PDFArray ? array.asArray().map(identityOf) : []);
  };
  const [on, off] = [listed('ON'), listed('OFF')];
  const isOff = asName(context.lookup(settings?.get(PDFName.of('BaseState')))) === 'OFF';
  return (identity) => (isOff ? !on.has(identity) : off.has(identity));
}

/** The role that ISO 19593-1 metadata name: the type of a structural group, else the group. */
function stepOf(dict: PDFDict): string | undefined {
  const metadata = dictEntry(dict, 'GTS_Metadata');
  const group = asName(entry(metadata, 'GTS_ProcStepsGroup'));
  const type = asName(entry(metadata, 'GTS_ProcStepsType'));
  if (group === 'Structural') return STRUCTURAL_ROLES.find((role) => role === type);
  return OTHER_ROLES.find((role) => role === group);
}
