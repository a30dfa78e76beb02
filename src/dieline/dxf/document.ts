import { UNIT_IN_MM } from '../../base/units.ts';
import { numberOf, numbersOf, readRecords, textOf, type DxfRecord, type Group } from './groups.ts';

/** A DXF file taken apart, nothing placed yet. */
export interface DxfDocument {
  /** Millimetres of a drawing unit; undefined where the header names none. */
  readonly mmPerUnit: number | undefined;
  /** Factor of all dash patterns. */
  readonly dashScale: number;
  /** By name in lower case. */
  readonly layers: ReadonlyMap<string, DxfLayer>;
  /** Lengths of dashes and gaps in drawing units, by name of the line type in lower case. */
  readonly dashes: ReadonlyMap<string, readonly number[]>;
  /** By name in lower case. */
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly entities: readonly DxfRecord[];
  /** The end mark stands. */
  readonly whole: boolean;
}

export interface DxfLayer {
  readonly name: string;
  /** Off or frozen. */
  readonly hidden: boolean;
  readonly record: DxfRecord;
}

export interface DxfBlock {
  readonly name: string;
  readonly base: { readonly x: number; readonly y: number };
  readonly entities: readonly DxfRecord[];
}

/** Throws what `readRecords` throws. */
export function readDocument(text: string): DxfDocument {
  const records = readRecords(text);
  const sections = sectionsOf(records);
  const header = headerOf(sections.get('HEADER'));
  const tables = sections.get('TABLES') ?? [];
  const units = numberOf({ groups: header.get('$INSUNITS') ?? [] }, 70) ?? 0;
  const dashScale = numberOf({ groups: header.get('$LTSCALE') ?? [] }, 40) ?? 1;
  return {
    mmPerUnit: UNITS[units],
    dashScale: dashScale > 0 ? dashScale : 1,
    layers: new Map(ofType(tables, 'LAYER').map((record) => [keyOf(textOf(record, 2)), layerOf(record)])),
    dashes: new Map(ofType(tables, 'LTYPE').map((record) => [keyOf(textOf(record, 2)), numbersOf(record, 49).map(Math.abs)])),
    blocks: blocksOf(sections.get('BLOCKS') ?? []),
    entities: sections.get('ENTITIES') ?? [],
    whole: records.at(-1)?.type === 'EOF',
  };
}

/** Names are the same in any case. */
export function keyOf(name: string | undefined): string {
  return (name ?? '').trim().toLowerCase();
}

/** $INSUNITS of the DXF reference: what a drawing unit is. Units of the sky are no units of a carton. */
const UNITS: Readonly<Record<number, number>> = { 1: UNIT_IN_MM.in!, 2: 12 * UNIT_IN_MM.in!, 4: 1, 5: 10, 6: 1000, 8: UNIT_IN_MM.in! / 1e6, 9: UNIT_IN_MM.in! / 1000, 10: 36 * UNIT_IN_MM.in!, 13: 0.001, 14: 100 };

/** Records between SECTION and ENDSEC by the section's name; the first of the name counts. That of the header is its own SECTION record. */
function sectionsOf(records: readonly DxfRecord[]): Map<string, DxfRecord[]> {
  const sections = new Map<string, DxfRecord[]>();
  let open: DxfRecord[] | undefined;
  for (const record of records) {
    if (record.type === 'SECTION') {
      const name = (textOf(record, 2) ?? '').toUpperCase();
      open = name === 'HEADER' ? [record] : [];
      if (!sections.has(name)) sections.set(name, open);
    } else if (record.type === 'ENDSEC') open = undefined;
    else open?.push(record);
  }
  return sections;
}

/** Groups of each variable by its name. */
function headerOf(records: readonly DxfRecord[] = []): Map<string, Group[]> {
  const variables = new Map<string, Group[]>();
  let open: Group[] = [];
  for (const group of records.flatMap(({ groups }) => groups)) {
    if (group.code === 9) variables.set(group.value.trim().toUpperCase(), (open = []));
    else open.push(group);
  }
  return variables;
}

function ofType(records: readonly DxfRecord[], type: string): DxfRecord[] {
  return records.filter((record) => record.type === type);
}

function layerOf(record: DxfRecord): DxfLayer {
  const isFrozen = ((numberOf(record, 70) ?? 0) & 1) === 1;
  return { name: textOf(record, 2) ?? '', hidden: isFrozen || (numberOf(record, 62) ?? 7) < 0, record };
}

function blocksOf(records: readonly DxfRecord[]): Map<string, DxfBlock> {
  const blocks = new Map<string, DxfBlock>();
  let entities: DxfRecord[] | undefined;
  for (const record of records) {
    if (record.type === 'BLOCK') {
      entities = [];
      const name = textOf(record, 2) ?? '';
      blocks.set(keyOf(name), { name, base: { x: numberOf(record, 10) ?? 0, y: numberOf(record, 20) ?? 0 }, entities });
    } else if (record.type === 'ENDBLK') entities = undefined;
    else entities?.push(record);
  }
  return blocks;
}
