/** A record as its file holds it, under the name by which a job knows it. */
export interface NamedRecord {
  readonly id: string;
  readonly record: Readonly<Record<string, unknown>>;
  /** Taken in by the person and remembered, or opened with the desk; absent for the invented ones that come with it. */
  readonly own?: 'remembered' | 'opened';
}

/** The machines, boards, sheets and rates to choose from. */
export interface Records {
  readonly presses: readonly NamedRecord[];
  readonly cutters: readonly NamedRecord[];
  readonly boards: readonly NamedRecord[];
  readonly sheets: readonly NamedRecord[];
  readonly rates: readonly NamedRecord[];
}

export type RecordKind = keyof Records;

export const NO_RECORDS: Records = { presses: [], cutters: [], boards: [], sheets: [], rates: [] };

export function nameOfRecord({ id, record }: NamedRecord): string {
  return typeof record['name'] === 'string' ? record['name'] : id;
}

/** Both lists; of two with one id the later stands. */
export function joinRecords(first: Records, second: Partial<Records>): Records {
  const join = (a: readonly NamedRecord[], b: readonly NamedRecord[] = []) => [...a.filter(({ id }) => !b.some((one) => one.id === id)), ...b];
  return { presses: join(first.presses, second.presses), cutters: join(first.cutters, second.cutters), boards: join(first.boards, second.boards), sheets: join(first.sheets, second.sheets), rates: join(first.rates ?? [], second.rates) };
}

/** Those that the person took in and that are remembered. */
export function rememberedRecords(records: Records): Records {
  const kept = (list: readonly NamedRecord[]) => list.filter(({ own }) => own === 'remembered');
  return { presses: kept(records.presses), cutters: kept(records.cutters), boards: kept(records.boards), sheets: kept(records.sheets), rates: kept(records.rates) };
}

/** The lists of sheets that count: one's own instead of the invented ones. */
export function sheetLists({ sheets }: Records): readonly NamedRecord[] {
  const own = sheets.filter((list) => list.own !== undefined);
  return own.length > 0 ? own : sheets;
}

const RATES = ['platePrice', 'diePrice', 'inkPricePerKg', 'gluer', 'packer', 'coater', 'foilPress', 'embosser', 'stripper', 'marginPercent', 'casePrice', 'packingPerThousand'];

/** What a record is, by the fields only one kind has. */
export function kindOfRecord(record: Readonly<Record<string, unknown>>): RecordKind | undefined {
  if (Array.isArray(record['sheets']) || Array.isArray(record['parents']) || Array.isArray(record['reels']) || 'madeToOrder' in record) return 'sheets';
  if (RATES.some((field) => field in record)) return 'rates';
  if ('grammage' in record || 'pricePerTonne' in record) return 'boards';
  if ('units' in record || 'inkGripper' in record || 'bar' in record || 'coater' in record) return 'presses';
  return 'gripper' in record || 'maxSheet' in record ? 'cutters' : undefined;
}

/** Sizes of the sheet lists, as they are typed. */
export function stockSizes(records: Records): string[] {
  const sizes = sheetLists(records).flatMap(({ record }) => (Array.isArray(record['sheets']) ? record['sheets'] : [])).map((sheet: { sheet?: unknown }) => String(sheet.sheet ?? ''));
  return [...new Set(sizes.filter((size) => size !== ''))];
}

export function boardOf({ boards }: Records, wanted: string): NamedRecord['record'] | undefined {
  return boards.find(({ id }) => id === wanted)?.record;
}
