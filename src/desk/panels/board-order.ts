import { parseSizeMm } from '../../base/units.ts';
import type { CompareFacts, ComparedSheetFacts } from '../../render/compare-facts.ts';
import type { NamedRecord } from '../job/records.ts';

export type Order = 'cost' | 'board' | 'ups' | 'size';

/** How sheets are bought. */
export const ORIGINS = ['stock', 'parent', 'reel', 'made-to-order'] as const;

/** What is shown of the sheets compared. */
export interface Filter {
  readonly grain: '' | 'x' | 'y';
  /** What this press takes. */
  readonly press: NamedRecord | undefined;
  /** What a list offers, by their numbers. */
  readonly listed: readonly number[] | undefined;
  readonly origin: '' | (typeof ORIGINS)[number];
}

/** Board with waste at the quantity asked. */
export function inOrder(facts: CompareFacts, order: Order, filter: Filter): number[] {
  const figure: Readonly<Record<Order, (sheet: ComparedSheetFacts) => number>> = {
    cost: (sheet) => sheet.costPerThousand[0] ?? Infinity,
    board: (sheet) => sheet.boardM2WithWaste[0] ?? sheet.boardM2PerThousand,
    ups: (sheet) => -sheet.ups,
    size: ({ sheet }) => sheet.width * sheet.height,
  };
  const { sheets } = facts;
  const by = (index: number) => figure[order](sheets[index]!);
  return [...sheets.keys()].filter((index) => isShown(sheets[index]!, filter) && (!filter.listed || filter.listed.includes(index))).toSorted((a, b) => (by(a) === by(b) ? a - b : by(a) - by(b)));
}

function isShown(sheet: ComparedSheetFacts, { grain, press, origin }: Filter): boolean {
  return (origin === '' || sheet.origin.kind === origin) && (grain === '' || sheet.grain === grain) && (!press || isTaken(sheet, press));
}

/** As it is fed. */
function isTaken({ sheet }: ComparedSheetFacts, { record }: NamedRecord): boolean {
  const [least, most] = [sizeOf(record['minSheet']), sizeOf(record['maxSheet'])];
  const fits = (side: 'width' | 'height') => (!least || sheet[side] >= least[side]) && (!most || sheet[side] <= most[side]);
  return fits('width') && fits('height');
}

function sizeOf(value: unknown): { readonly width: number; readonly height: number } | undefined {
  if (typeof value === 'string') return parseSizeMm(value);
  const { width, height } = (value ?? {}) as Partial<Record<'width' | 'height', unknown>>;
  return typeof width === 'number' && typeof height === 'number' ? { width, height } : undefined;
}
