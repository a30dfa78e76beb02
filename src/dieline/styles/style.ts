import type { Flap } from './flap.ts';
import type { Parameters, Values } from './parameter.ts';

/** A kind of blank that is drawn from dimensions. */
export interface Style extends Parameters {
  readonly id: string;
  readonly description: string;
  /** Usual fibre direction on the drawing, if there is one, and where that comes from. */
  readonly grain?: { readonly along: 'x' | 'y'; readonly source: string };
  build(values: Values): Flap;
}

/** Grain at right angles to the creases of the body keeps its panels flat. */
export const ACROSS_BODY_CREASES = { along: 'x', source: 'at right angles to the body creases (common practice; the handbook example agrees)' } as const;
