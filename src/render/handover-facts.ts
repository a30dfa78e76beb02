import { groupBy } from '../base/group-by.ts';
import { pathLength } from '../dieline/curve-part.ts';
import { cutsThrough, isKnife } from '../dieline/knife-roles.ts';
import type { Role } from '../dieline/dieline.ts';
import { dieRows, type DieRows } from '../estimate/die-rows.ts';
import { dieSteps, type DieSteps } from '../estimate/die-steps.ts';
import { boxOf } from '../geometry/point.ts';
import type { GivenBarCode } from '../layout/bar-codes.ts';
import type { WorkStyle } from '../layout/back-up.ts';
import { layoutFingerprint } from '../layout/fingerprint.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import type { BoardRecord } from '../press/records.ts';
import type { StrippingMode } from '../press/stripping.ts';
import type { DieRule } from './die-rules.ts';
import type { Nicks } from './nicks.ts';
import type { SheetView } from './sheet-view.ts';
import { placedBoxes } from './step-runs.ts';

/** What people say about a handover; the layout file knows none of it. */
export interface HandoverDetails {
  readonly layoutNumber?: string | undefined;
  readonly revision?: string | undefined;
  readonly approvedBy?: string | undefined;
  /** As the user writes it. */
  readonly date?: string | undefined;
  readonly product?: string | undefined;
  readonly board?: BoardRecord | undefined;
  readonly grain?: 'x' | 'y' | undefined;
  readonly quantity?: number | undefined;
  /** Sheets to print. */
  readonly sheets?: number | undefined;
  readonly back?: WorkStyle | undefined;
  /** What each station prints, in station order, where several versions share the form. */
  readonly versions?: readonly string[] | undefined;
  /** Boxes of bar codes besides those that the drawings mark. */
  readonly barCodes?: readonly GivenBarCode[] | undefined;
  readonly nicks?: Nicks | undefined;
  /** Strips of waste narrower than this are listed, whole mm. */
  readonly leastStrip?: number | undefined;
  /** How the waste is taken off; else as the layout was asked for. */
  readonly stripping?: StrippingMode | undefined;
  /** The food record, repeated as it was written. */
  readonly food?: string | undefined;
}

/** What the pages of a handover are made from. Millimetres. */
export interface HandoverFacts extends HandoverDetails {
  readonly layout: LayoutFile;
  readonly fingerprint: string;
  readonly designs: readonly { readonly id: string; readonly ups: number; readonly widthMm: number; readonly heightMm: number; readonly fingerprint?: string }[];
  /** Rules of the die by role, mm, the longest first. */
  readonly ruleMm: readonly (readonly [Role, number])[];
  /** Station by station, in the order of `ruleMm`. */
  readonly stationMm: readonly (readonly number[])[];
  readonly cuttingMm: number;
  /** Creases by how the fibres run to them; absent where the sheet's grain is not known. */
  readonly creaseMm?: { readonly along: number; readonly across: number };
  readonly steps: { readonly x: DieSteps; readonly y: DieSteps; readonly rows: DieRows };
}

export function handoverFacts(layout: LayoutFile, view: SheetView, rules: readonly DieRule[], details: HandoverDetails): HandoverFacts {
  const knives = rules.filter(({ role }) => isKnife(role));
  const lengthOf = (some: readonly DieRule[]) => some.reduce((sum, { curves }) => sum + pathLength(curves), 0);
  const ruleMm = [...groupBy(knives, ({ role }) => role)].map(([role, some]) => [role, lengthOf(some)] as const).toSorted(([, a], [, b]) => b - a);
  const boxes = placedBoxes(view);
  const creases = knives.filter(({ role }) => role === 'Creasing' || role === 'ReverseCreasing');
  const byStation = groupBy(knives, ({ station }) => station);
  return {
    ...details,
    layout,
    fingerprint: layoutFingerprint(layout),
    designs: view.designs.map(({ id, ring }, i) => {
      const { maxX, maxY } = boxOf(ring);
      const fingerprint = layout.designs[i]!.drawing?.fingerprint;
      return { id, ups: view.placements.filter(({ design }) => design === i).length, widthMm: maxX, heightMm: maxY, ...(fingerprint !== undefined && { fingerprint }) };
    }),
    ruleMm,
    stationMm: view.placements.map((_, station) => ruleMm.map(([role]) => lengthOf((byStation.get(station) ?? []).filter((rule) => rule.role === role)))),
    cuttingMm: lengthOf(knives.filter(({ role }) => cutsThrough(role))),
    ...(details.grain && { creaseMm: creaseByGrain(creases, details.grain) }),
    steps: { x: dieSteps(boxes, 'x'), y: dieSteps(boxes, 'y'), rows: dieRows(boxes) },
  };
}

/** Each curve counts by the direction of its chord: nearer to the fibres' own is along. */
function creaseByGrain(creases: readonly DieRule[], grain: 'x' | 'y'): { along: number; across: number } {
  const sums = { along: 0, across: 0 };
  for (const curve of creases.flatMap(({ curves }) => curves)) {
    const isAlongX = Math.abs(curve.to.x - curve.from.x) > Math.abs(curve.to.y - curve.from.y);
    sums[isAlongX === (grain === 'x') ? 'along' : 'across'] += pathLength([curve]);
  }
  return sums;
}
