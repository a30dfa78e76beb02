import type { Role } from '../dieline/dieline.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Point } from '../geometry/point.ts';
import type { Turn } from '../geometry/turn.ts';

/** What a picture of a sheet is made from. Millimetres, sheet coordinates; designs in their own axes. */
export interface SheetView {
  readonly sheet: { readonly width: number; readonly height: number };
  /** Where knives may be. */
  readonly usable: Area;
  /** Where ink may be. */
  readonly printable: Area;
  readonly lay: 'left' | 'right';
  /** A length cut from a reel, x its machine direction: no gripper edge, no side lay. */
  readonly fromReel?: boolean;
  /** Fibre direction of the sheet, where it is known: x is along the gripper edge. */
  readonly grain?: 'x' | 'y';
  readonly keepOuts: readonly { readonly kind: string; readonly ring: readonly Point[] }[];
  readonly designs: readonly DesignView[];
  /** In station order. */
  readonly placements: readonly { readonly design: number; readonly turn: Turn; readonly x: number; readonly y: number }[];
  readonly bleed: number;
  /** Places of faults, numbered as in the list that goes with the picture. */
  readonly faults?: readonly Point[];
  /** Cells of the title block, the most important first. */
  readonly figures: readonly { readonly label: string; readonly value: string }[];
}

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface DesignView {
  readonly id: string;
  /** Polygons of outline and openings; they decide places of numbers and lengths of steps. */
  readonly ring: readonly Point[];
  readonly openingRings: readonly (readonly Point[])[];
  /** True curves of the same. */
  readonly outline: CurvePath;
  readonly openings: readonly CurvePath[];
  /** Rules other than the outline and the openings. */
  readonly rules: readonly { readonly role: Role; readonly curves: CurvePath }[];
  /** The outline grown by the bleed. */
  readonly bleedOutline?: readonly Point[];
}
