import { z } from 'zod';
import { GRAIN_WORDS, sheetGrainAxis, type GrainAxis, type GrainWord } from './grain.ts';
import type { Machines } from './machines.ts';
import { size, tonnePrice } from './records.ts';
import type { Size } from './sheet-areas.ts';

/** A sheet that could be bought, as it would be fed: x along the gripper edge. Millimetres. */
export interface SheetCandidate {
  readonly sheet: Size;
  readonly grain: GrainAxis | undefined;
  readonly origin: SheetOrigin;
  /** Board bought for one such sheet, m²: more than the sheet where a parent leaves a strip. */
  readonly boughtM2: number;
  readonly pricePerTonne?: number | undefined;
  /** Of these sheets, not of the parents they are cut from. */
  readonly pricePerThousand?: number | undefined;
  /** The mill makes no less of it. */
  readonly minimumTonnes?: number | undefined;
}

/** Sizes of which any can be had, in steps. Both sides as fed, mm. */
export interface SheetRange {
  readonly least: Size;
  readonly greatest: Size;
  readonly step: number;
  readonly candidateOf: (sheet: Size) => SheetCandidate;
}

export type SheetOrigin =
  | { readonly kind: 'stock' }
  | { readonly kind: 'parent'; readonly parent: Size; readonly parts: number }
  | { readonly kind: 'reel'; readonly width: number }
  | { readonly kind: 'made-to-order' };

/** Of the record's own axes: x runs along the first figure of its size. `both` and `any`: it can be had either way. */
const grain = z.enum([...GRAIN_WORDS, 'both', 'any']).optional();
type StockGrain = z.infer<typeof grain>;
const price = tonnePrice.optional();
const count = z.int().positive().max(1_000_000).optional();
/** How it is sold. */
const terms = { pricePerTonne: price, packet: count, pallet: count, leadDays: z.number().nonnegative().max(1000).optional() };
const prices = { ...terms, pricePerThousand: z.number().nonnegative().optional() };
/** Sizes made to order are rounded up to this where the list names no step, mm. */
const USUAL_STEP = 5;
const step = z.number().min(0.5).default(USUAL_STEP);
const minimumTonnes = z.number().nonnegative().optional();

const isSquare = ({ width, height }: Size) => width === height;
const stock = z
  .looseObject({ sheet: size, grain, minimumTonnes, ...prices })
  .refine((one) => !((one.grain === 'long' || one.grain === 'short') && isSquare(one.sheet)), { path: ['grain'], message: 'a square has no longer side: x or y is wanted' });

/** What can be bought: sheets as they are, parents that are cut in 2, 3 or 4, reels cut to length, sizes made to order. */
export const sheetListSchema = z.looseObject({
  name: z.string().optional(),
  /** How much shorter than ordered a sheet may come, mm. */
  toleranceMm: z.number().nonnegative().max(20).optional(),
  sheets: z.array(stock).max(500).default([]),
  parents: z.array(stock).max(100).default([]),
  /** Cut to the lengths named, or to any length in a range that the machines take. */
  reels: z
    .array(z.looseObject({ width: z.number().positive(), cutOffs: z.array(z.number().positive()).min(1).max(100).optional(), least: z.number().positive().optional(), greatest: z.number().positive().optional(), step, minimumTonnes, ...terms }))
    .max(50)
    .default([]),
  madeToOrder: z.looseObject({ least: size, greatest: size, step, grain, minimumTonnes, ...terms }).optional(),
});
export type SheetList = z.infer<typeof sheetListSchema>;

/** Every sheet of the list in the form in which it would be fed, made-to-order sizes apart; those no machine takes are left out. */
export function listedCandidates(list: SheetList, machines: Machines): SheetCandidate[] {
  const sheets = list.sheets.flatMap(({ sheet, grain: axis, pricePerTonne, pricePerThousand }) =>
    axes(axis, sheet).map((one): SheetCandidate => ({ sheet, grain: one, origin: { kind: 'stock' }, boughtM2: squareMetres(sheet), pricePerTonne, pricePerThousand })),
  );
  const pieces = list.parents.flatMap(({ sheet: parent, grain: axis, pricePerTonne, pricePerThousand }) =>
    axes(axis, parent).flatMap((one) =>
      cuts(parent).map(({ piece, parts }): SheetCandidate => {
        const fed = asFed(piece, one);
        return { ...fed, origin: { kind: 'parent', parent, parts }, boughtM2: squareMetres(parent) / parts, pricePerTonne, pricePerThousand: pricePerThousand && pricePerThousand / parts };
      }),
    ),
  );
  // A reel's fibres run along its length, which is the side that is cut off.
  const reels = list.reels.flatMap(({ width, cutOffs, pricePerTonne }) =>
    (cutOffs ?? []).map((cutOff) => cutFromReel({ width: cutOff, height: width }, width, pricePerTonne)),
  );
  return distinct([...sheets, ...pieces, ...reels].filter(({ sheet }) => machinesTake(sheet, machines)));
}

function cutFromReel(piece: Size, width: number, pricePerTonne: number | undefined): SheetCandidate {
  return { ...asFed(piece, 'x'), origin: { kind: 'reel', width }, boughtM2: squareMetres(piece), pricePerTonne };
}

/** Longest cut-off looked at where neither list nor machine says less, mm. */
const LONGEST_CUT_OFF = 2000;

/** Sizes made to order and reels without given cut-offs, within what the machines take. */
export function listedRanges(list: SheetList, machines: Machines): SheetRange[] {
  const { madeToOrder } = list;
  const ordered = madeToOrder
    ? waysOf(madeToOrder.grain).map((one): SheetRange => {
        const { least, greatest, step, pricePerTonne, minimumTonnes } = madeToOrder;
        // A square takes the fibres along the gripper edge.
        return { least, greatest, step, candidateOf: (sheet) => ({ sheet, grain: one && (isSquare(sheet) && one !== 'y' ? 'x' : sheetGrainAxis(one, sheet)), origin: { kind: 'made-to-order' }, boughtM2: squareMetres(sheet), pricePerTonne, minimumTonnes }) };
      })
    : [];
  // Fed with its longer side along the gripper edge: the cut-off is that side, or the reel's width is.
  const reels = list.reels.filter(({ cutOffs }) => cutOffs === undefined).flatMap(({ width, least = 1, greatest = LONGEST_CUT_OFF, step, pricePerTonne }): SheetRange[] => [
    { least: { width: Math.max(least, width), height: width }, greatest: { width: greatest, height: width }, step, candidateOf: (sheet) => cutFromReel({ width: sheet.width, height: width }, width, pricePerTonne) },
    { least: { width, height: least }, greatest: { width, height: Math.min(greatest, width) }, step, candidateOf: (sheet) => cutFromReel({ width: sheet.height, height: width }, width, pricePerTonne) },
  ]);
  return [...ordered, ...reels].map((range) => withinMachines(range, machines)).filter(({ least, greatest }) => least.width <= greatest.width && least.height <= greatest.height);
}

function withinMachines(range: SheetRange, { press, cutter }: Machines): SheetRange {
  const sizes = (read: (machine: { minSheet?: Size | undefined; maxSheet?: Size | undefined }) => Size | undefined) => [press, cutter].flatMap((machine) => (machine && read(machine)) ?? []);
  const most = (side: keyof Size) => Math.max(range.least[side], ...sizes(({ minSheet }) => minSheet).map((size) => size[side]));
  const least = (side: keyof Size) => Math.min(range.greatest[side], ...sizes(({ maxSheet }) => maxSheet).map((size) => size[side]));
  return { ...range, least: { width: most('width'), height: most('height') }, greatest: { width: least('width'), height: least('height') } };
}

/** Whether the list offers this sheet, bought this way; one whose grain nobody gave, whatever its grain, and off the shelf either way round. */
export function offers(list: SheetList, { sheet, grain, origin }: Pick<SheetCandidate, 'sheet' | 'grain' | 'origin'>): boolean {
  const isSame = (one: SheetCandidate) => JSON.stringify(one.origin) === JSON.stringify(origin) && (grain === undefined || one.grain === grain);
  const turned = { width: sheet.height, height: sheet.width };
  const isOfSize = ({ sheet: { width, height } }: SheetCandidate) => [sheet, ...(grain === undefined && origin.kind === 'stock' ? [turned] : [])].some((size) => size.width === width && size.height === height);
  const within = ({ least, greatest }: SheetRange) => (['width', 'height'] as const).every((side) => least[side] <= sheet[side] && sheet[side] <= greatest[side]);
  return listedCandidates(list, {}).some((one) => isOfSize(one) && isSame(one)) || listedRanges(list, {}).some((range) => within(range) && isSame(range.candidateOf(sheet)));
}

/** Whether press and die-cutter take the sheet as it is fed. */
export function machinesTake(sheet: Size, { press, cutter }: Machines): boolean {
  return [press, cutter].every((machine) => {
    const { minSheet, maxSheet } = machine ?? {};
    const smallEnough = !maxSheet || (sheet.width <= maxSheet.width && sheet.height <= maxSheet.height);
    return smallEnough && (!minSheet || (sheet.width >= minSheet.width && sheet.height >= minSheet.height));
  });
}

export function squareMetres({ width, height }: Size): number {
  return (width * height) / 1e6;
}

function waysOf(grain: StockGrain): (GrainWord | undefined)[] {
  return grain === 'both' || grain === 'any' ? ['x', 'y'] : [grain];
}

function axes(grain: StockGrain, sheet: Size): (GrainAxis | undefined)[] {
  return waysOf(grain).map((word) => word && sheetGrainAxis(word, sheet, 'grain'));
}

/** Ways to cut a parent into 2, 3 or 4 equal sheets by straight cuts. */
function cuts({ width, height }: Size): { piece: Size; parts: number }[] {
  return [2, 3, 4].flatMap((parts) =>
    [1, 2, 3, 4].filter((across) => parts % across === 0).map((across) => ({ piece: { width: width / across, height: (height * across) / parts }, parts })),
  );
}

/** Turned so that the longer side lies along the gripper edge; the fibres turn with the sheet. */
function asFed(piece: Size, grain: GrainAxis | undefined): { sheet: Size; grain: GrainAxis | undefined } {
  if (piece.width >= piece.height) return { sheet: piece, grain };
  return { sheet: { width: piece.height, height: piece.width }, grain: grain && (grain === 'x' ? 'y' : 'x') };
}

function distinct(candidates: readonly SheetCandidate[]): SheetCandidate[] {
  const byKey = new Map<string, SheetCandidate>();
  for (const candidate of candidates) {
    const { sheet, grain: axis, boughtM2, pricePerTonne, pricePerThousand } = candidate;
    const key = [sheet.width, sheet.height, axis, boughtM2, pricePerTonne, pricePerThousand].join();
    if (!byKey.has(key)) byKey.set(key, candidate);
  }
  return [...byKey.values()];
}
