/** A record as its file holds it, under the name by which a job knows it. */
export interface NamedRecord {
  readonly id: string;
  readonly record: Readonly<Record<string, unknown>>;
}

/** The machines, boards and sheets to choose from. */
export interface Records {
  readonly presses: readonly NamedRecord[];
  readonly cutters: readonly NamedRecord[];
  readonly boards: readonly NamedRecord[];
  readonly sheets: readonly NamedRecord[];
}

export type RecordKind = 'presses' | 'cutters' | 'boards';

export const NO_RECORDS: Records = { presses: [], cutters: [], boards: [], sheets: [] };

export function nameOfRecord({ id, record }: NamedRecord): string {
  return typeof record['name'] === 'string' ? record['name'] : id;
}

/** Both lists; of two with one id the later stands. */
export function joinRecords(first: Records, second: Partial<Records>): Records {
  const join = (a: readonly NamedRecord[], b: readonly NamedRecord[] = []) => [...a.filter(({ id }) => !b.some((one) => one.id === id)), ...b];
  return { presses: join(first.presses, second.presses), cutters: join(first.cutters, second.cutters), boards: join(first.boards, second.boards), sheets: join(first.sheets, second.sheets) };
}

/** What a record is, by the fields only one kind has. */
export function kindOfRecord(record: Readonly<Record<string, unknown>>): RecordKind | undefined {
  if ('grammage' in record || 'pricePerTonne' in record) return 'boards';
  if ('units' in record || 'inkGripper' in record || 'bar' in record || 'coater' in record) return 'presses';
  return 'gripper' in record || 'maxSheet' in record ? 'cutters' : undefined;
}

/** Sizes of the sheet lists, as they are typed. */
export function stockSizes({ sheets }: Records): string[] {
  const sizes = sheets.flatMap(({ record }) => (Array.isArray(record['sheets']) ? record['sheets'] : [])).map((sheet: { sheet?: unknown }) => String(sheet.sheet ?? ''));
  return [...new Set(sizes.filter((size) => size !== ''))];
}

export function boardOf({ boards }: Records, wanted: string): NamedRecord['record'] | undefined {
  return boards.find(({ id }) => id === wanted)?.record;
}
