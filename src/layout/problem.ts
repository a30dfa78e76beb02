import type { Box, Point, Ring } from '../geometry/point.ts';
import type { Turn } from '../geometry/turn.ts';
import type { CommonKnifePair } from './common-knife-pairs.ts';

/**
 * The contract between the stages: what is asked of a search, and what it hands back. Whole micrometres; sheet origin
 * lower left, y = 0 the gripper edge, y growing away from it.
 */

/** One design as the search sees it. The outline's box has its lower left corner at the origin. */
export interface Part {
  readonly id: string;
  /** Counter-clockwise, simple; holds the true blank (arcs flattened to the outside). */
  readonly outline: Ring;
  /** How far the outline may stand outside the true blank, µm; 0 if absent. Limits grant it, as the judge measures true curves. */
  readonly outlineExcess?: number;
  /** Clockwise, inside the outline. A search may use them as free space only where `nestInOpenings` says so. */
  readonly openings: readonly Ring[];
  /** Allowed rotations, in the order of preference. */
  readonly turns: readonly Turn[];
}

/** One blank on the sheet: the outline turned about the design's origin, then moved by (x, y). */
export interface Placement {
  /** Index into `parts`. */
  readonly part: number;
  readonly turn: Turn;
  readonly x: number;
  readonly y: number;
}

/** An area no blank may come near. */
export interface KeepOut {
  /** `colour-bar`, `spoiled`, `label`, `used`, … as the layout file names it. */
  readonly kind: string;
  readonly ring: Ring;
  /** Least distance from the ring to an outline. */
  readonly clearance: number;
}

export interface Rules {
  /** Least knife-to-knife distance. */
  readonly gap: number;
  readonly bleed: number;
  /** `apart`: bleeds clear each other; `cut`: they are cut at the middle of the gap. */
  readonly bleedMeeting: 'apart' | 'cut';
  readonly commonKnife: boolean;
  /** Sides that may share a knife; absent: any. */
  readonly commonKnifePairs?: readonly CommonKnifePair[];
}

/** What is wanted of the parts. */
export type Demand =
  /** As many as fit of the only part, or of all parts together. */
  | { readonly kind: 'most' }
  /** Exactly these counts, part by part, on the shortest sheet (a reel). */
  | { readonly kind: 'counts'; readonly counts: readonly number[] };

export interface Problem {
  readonly sheet: { readonly width: number; readonly height: number };
  /** Where knives may be. For a reel `maxX` is the longest cut-off considered. */
  readonly usable: Box;
  /** Where ink may be. */
  readonly printable: Box;
  readonly lay: 'left' | 'right';
  readonly keepOuts: readonly KeepOut[];
  readonly rules: Rules;
  readonly parts: readonly Part[];
  readonly demand: Demand;
  /** Blanks that stay where they are; the search adds to them. They count as ups. */
  readonly locked: readonly Placement[];
  /** Force a regular arrangement of so many rows and columns. */
  readonly grid?: { readonly rows: number; readonly columns: number };
  /** A layout that must map onto itself when the sheet is turned (work-and-turn) or tumbled (work-and-tumble). */
  readonly symmetry: 'none' | 'turned' | 'tumbled';
}

/** The distance outlines must keep: the gap, or twice the bleed where bleeds may not meet. */
export function requiredGap(rules: Rules): number {
  return rules.bleedMeeting === 'apart' ? Math.max(rules.gap, 2 * rules.bleed) : rules.gap;
}

/** Where blanks may lie: inside the usable area, and their bleed inside the printable one. */
export function blankArea({ usable, printable, rules: { bleed } }: Problem): Box {
  return {
    minX: Math.max(usable.minX, printable.minX + bleed),
    minY: Math.max(usable.minY, printable.minY + bleed),
    maxX: Math.min(usable.maxX, printable.maxX - bleed),
    maxY: Math.min(usable.maxY, printable.maxY - bleed),
  };
}

/** A search's proposal. Nothing is claimed until the judge has seen it. */
export interface Candidate {
  readonly placements: readonly Placement[];
  /** Which search found it, in the words of a report: `plain rows`, `every second row turned`, `nested rows`, … */
  readonly source: string;
}

/** The densest repeating cell met: area of its blanks over area of the cell. */
export interface Cell {
  readonly density: number;
  readonly vectors: readonly [Point, Point];
  readonly blanks: readonly Placement[];
}

export type StopReason = 'limit-met' | 'effort' | 'seconds' | 'interrupted';
export type BoundName = 'area' | 'ovals' | 'hexagon' | 'pockets' | 'rectangles';

/** A proved upper limit of ups. `certificate` is what `proof` can recompute it from; closed forms have none. */
export interface Limit {
  readonly ups: number;
  /** The value before it was rounded down to a whole number. */
  readonly value: number;
  readonly by: BoundName;
  readonly certificate?: unknown;
}
