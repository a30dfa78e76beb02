import type { Issue } from '../base/issue.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Box } from '../geometry/point.ts';

/**
 * What a line of a drawing is. The first block are the names of ISO 19593-1:2018, group Structural, spelled as there;
 * then rules of that standard's other groups that a drawing may carry; then what is not a rule.
 */
export const STRUCTURAL_ROLES = [
  'Cutting', 'PartialCutting', 'ReversePartialCutting', 'Creasing', 'ReverseCreasing', 'CuttingCreasing',
  'ReverseCuttingCreasing', 'PartialCuttingCreasing', 'ReversePartialCuttingCreasing', 'Drilling', 'Gluing',
  'FoilStamping', 'ColdFoilStamping', 'Embossing', 'Debossing', 'Perforating', 'Bleed', 'VarnishFree', 'InkFree',
  'InkVarnishFree', 'Folding', 'Punching', 'Stapling',
] as const;
export const OTHER_ROLES = ['Dimensions', 'Braille', 'Legend', 'Positions', 'White', 'Varnish', 'Artwork', 'Unknown'] as const;

export type Role = (typeof STRUCTURAL_ROLES)[number] | (typeof OTHER_ROLES)[number];

/** How a role was decided, strongest first. */
export type RoleReason = 'user rule' | 'name' | 'dash' | 'only line' | 'outer outline' | 'shape' | 'not known';

/** One connected run of line work with one role. Millimetres, y up, drawing origin kept. */
export interface RulePath {
  readonly role: Role;
  readonly reason: RoleReason;
  readonly curves: CurvePath;
  readonly closed: boolean;
  /** Names the place in the drawing: element id, layer or index, e.g. `path#k3 in layer "Stanze"`. */
  readonly source: string;
}

/** One blank found in the drawing. Loops are closed and do not cross themselves or one another. Millimetres, y up. */
export interface Blank {
  /** Counts from 1, from the drawing's upper left as it is looked at, row by row. */
  readonly number: number;
  /** Counter-clockwise. */
  readonly outline: CurvePath;
  /** Each clockwise, inside the outline. */
  readonly openings: readonly CurvePath[];
  /** All rules that lie within this blank, its outline and openings included, each physical line once. */
  readonly rules: readonly RulePath[];
  readonly box: Box;
  /** Area within the outline, openings not taken off. */
  readonly areaMm2: number;
}

/** Lines that one rule can speak of (`Creasing=layer:K1 & dash:none`), and what they were taken for. */
export interface LineGroup {
  readonly subject: 'layer' | 'stroke';
  /** Name of the layer, or colour. */
  readonly value: string;
  /** Where a layer or a colour holds both dashed and solid lines: which of them. */
  readonly dash: 'any' | 'none' | undefined;
  /** The longest first. */
  readonly roles: readonly Role[];
  readonly lengthMm: number;
}

/** A drawing as understood: between reading and everything else, whatever format it came in. */
export interface Dieline {
  readonly blanks: readonly Blank[];
  /** Everything that belongs to no blank or is no rule: dimensions, frames, artwork. */
  readonly rest: readonly RulePath[];
  /** Of a drawing that was read; a blank drawn from dimensions has none. The longest first. */
  readonly lineGroups?: readonly LineGroup[];
  /** Fibre direction if the drawing names it: along the drawing's x or y. */
  readonly grain?: 'x' | 'y';
  /** Millimetres a user unit stands for, and how that was known. */
  readonly scale: { readonly mmPerUnit: number; readonly from: 'unit' | 'assumed 96 per inch' | 'assumed millimetres' | 'given scale' | 'given width' };
  /** Which way y grows in the program that shows the drawing. Only the places of `issues` are in such axes. */
  readonly yAxis: 'up' | 'down';
  /** Lower-case hexadecimal SHA-256 of the drawing's bytes. */
  readonly fingerprint: string;
  readonly issues: readonly Issue[];
}
