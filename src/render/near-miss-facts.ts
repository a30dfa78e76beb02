import type { LayoutFile } from '../layout/layout-file.ts';

/** One single change that brings more ups, with the judged layout that shows it. Millimetres. */
export interface NearMiss {
  /** `gap`, `gripper`, `tail`, `sides`, `bar-…`, `sheet-width`, `sheet-height`, `rotations`, `common-knife`, `edge-…`, `flap:…`. */
  readonly thing: string;
  /** Absent for what is allowed or not. */
  readonly from?: number;
  readonly to?: number;
  readonly ups: number;
  readonly layout: LayoutFile;
  /** Board of a thousand cartons, nothing lost, m². */
  readonly boardM2PerThousand: number;
  readonly saved: Saving;
}

/** Against the layout as it is. Negative where the change costs more than it brings. */
export interface Saving {
  readonly m2PerThousand: number;
  /** At the yearly volume, where one was given. */
  readonly m2PerYear: number | undefined;
  readonly kgPerYear: number | undefined;
  readonly moneyPerYear: number | undefined;
}

export interface NearMissFacts {
  readonly ups: number;
  readonly sheet: { readonly width: number; readonly height: number };
  readonly yearly: number | undefined;
  readonly currency: string;
  /** What money counts: the board alone, or press and die-cutter hours as well. */
  readonly counts: 'board' | 'board and machines';
  /** Best first. */
  readonly found: readonly NearMiss[];
  /** Changes that brought nothing, and how far each was tried. */
  readonly notFound: readonly { readonly thing: string; readonly from?: number; readonly to?: number }[];
  /** How many changes were tried; fewer than there are where it was stopped. */
  readonly tried: number;
  readonly changes: number;
  /** Changes are tried in steps of so many mm. */
  readonly stepMm: number;
  /** Counted work. */
  readonly work: number;
}
