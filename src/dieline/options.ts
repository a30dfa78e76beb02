import type { RoleRule } from './role-rule.ts';
import { GAP_TOLERANCE_MM } from './tolerances.ts';

/** What the user says about a drawing, beyond what is in it. */
export interface ReadOptions {
  /** Millimetres one user unit of the outermost svg element stands for. */
  readonly scale?: number;
  /** The known width of the blank, mm; the scale follows from it. */
  readonly widthIs?: number;
  /** The blank that `widthIs` speaks of; needed when there are several. */
  readonly blank?: number;
  /** Page of a PDF, from 1; the first where it is not given. */
  readonly page?: number;
  /** First match wins. */
  readonly roles: readonly RoleRule[];
  /** Said of earlier drawings: in doubt the names in this one stand above them, and one that fits nothing is no fault. */
  readonly habits?: readonly RoleRule[];
  /** Gaps up to this width in the outline are closed and listed, mm. */
  readonly closeGaps: number;
  /** Told at every step that the work goes on. Large drawings have millions of steps: it must be quick. */
  readonly onWork?: () => void;
}

export const DEFAULT_READ_OPTIONS: ReadOptions = { roles: [], closeGaps: GAP_TOLERANCE_MM };
