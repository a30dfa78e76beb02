import { z } from 'zod';
import { parseSizeMm } from '../base/units.ts';
import type { GrainAxis } from './grain.ts';
import type { Machines } from './machines.ts';
import type { Size } from './sheet-areas.ts';

/** A sheet that could be bought, as it would be fed: x along the gripper edge. Millimetres. */
export interface SheetCandidate {
  readonly sheet: Size;
  readonly grain: GrainAxis | undefined;
  readonly origin: SheetOrigin;
  /** Board bought for one such sheet, m²: more than the sheet where a parent leaves a strip. */
  readonly boughtM2: number;
  readonly pricePerTonne?: number | undefined;
  readonly pricePerThousand?: number | undefined;
}

export type SheetOrigin =
  | { readonly kind: 'stock' }
  | { readonly kind: 'parent'; readonly parent: Size; readonly parts: number }
  | { readonly kind: 'reel'; readonly width: number }
  | { readonly kind: 'made-to-order' };

const size = z.string().transform((text, context) => {
  const mm = parseSizeMm(text);
  if (mm && mm.width > 0 && mm.height > 0) return mm;
  context.addIssue({ code: 'custom', message: 'a size is wanted, such as "1020x720"' });
  return z.NEVER;
});
const grain = z.enum(['x', 'y', 'both']).optional();
const price = z.number().nonnegative().optional();

/** What can be bought: sheets as they are, parents that are cut in 2, 3 or 4, reels cut to length, sizes made to order. */
export const sheetListSchema = z.looseObject({
  name: z.string().optional(),
  sheets: z.array(z.looseObject({ sheet: size, grain, pricePerTonne: price, pricePerThousand: price })).max(500).default([]),
  parents: z.array(z.looseObject({ sheet: size, grain, pricePerTonne: price })).max(100).default([]),
  reels: z.array(z.looseObject({ width: z.number().positive(), cutOffs: z.array(z.number().positive()).min(1).max(100), pricePerTonne: price })).max(50).default([]),
  madeToOrder: z.looseObject({ least: size, greatest: size, step: z.number().positive().default(5), grain, pricePerTonne: price }).optional(),
});
export type SheetList = z.infer<typeof sheetListSchema>;

/** Every sheet of the list in the form in which it would be fed, made-to-order sizes apart; those no machine takes are left out. */
export function listedCandidates(list: SheetList, machines: Machines): SheetCandidate[] {
  const stock = list.sheets.flatMap(({ sheet, grain: axis, pricePerTonne, pricePerThousand }) =>
    axes(axis).map((one): SheetCandidate => ({ sheet, grain: one, origin: { kind: 'stock' }, boughtM2: squareMetres(sheet), pricePerTonne, pricePerThousand })),
  );
  const pieces = list.parents.flatMap(({ sheet: parent, grain: axis, pricePerTonne }) =>
    axes(axis).flatMap((one) =>
      cuts(parent).map(({ piece, parts }): SheetCandidate => {
        const fed = asFed(piece, one);
        return { ...fed, origin: { kind: 'parent', parent, parts }, boughtM2: squareMetres(parent) / parts, pricePerTonne };
      }),
    ),
  );
  // A reel's fibres run along its length, which is the side that is cut off.
  const reels = list.reels.flatMap(({ width, cutOffs, pricePerTonne }) =>
    cutOffs.map((cutOff): SheetCandidate => {
      const piece = { width: cutOff, height: width };
      return { ...asFed(piece, 'x'), origin: { kind: 'reel', width }, boughtM2: squareMetres(piece), pricePerTonne };
    }),
  );
  return distinct([...stock, ...pieces, ...reels].filter(({ sheet }) => machinesTake(sheet, machines)));
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

function axes(grain: 'x' | 'y' | 'both' | undefined): (GrainAxis | undefined)[] {
  return grain === 'both' ? ['x', 'y'] : [grain];
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
