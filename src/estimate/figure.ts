import { evaluate } from './formula.ts';

/** A figure with its unit, its formula and what went in. Null where an input is missing; `missing` says which. */
export interface Figure {
  readonly name: string;
  /** What people call it, beside its name in formulas. */
  readonly label?: string | undefined;
  readonly value: number | null;
  readonly unit: string;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, number | null>>;
  readonly missing: readonly string[];
}

/** A rate that nobody gave, by the name a person would ask for it. */
export interface Missing {
  readonly missing: string;
}

export type Input = number | Figure | Missing;

/** Computes a figure from its formula. A comparison computes some hundred thousand: one pass over the inputs. */
export function figure(name: string, unit: string, formula: string, inputs: Readonly<Record<string, Input>>): Figure {
  const values: Record<string, number | null> = {};
  const missing: string[] = [];
  for (const [key, input] of Object.entries(inputs)) {
    values[key] = valueOf(input);
    for (const one of missingIn(input)) if (!missing.includes(one)) missing.push(one);
  }
  const value = missing.length > 0 ? null : evaluate(formula, values as Record<string, number>);
  return { name, value, unit, formula, inputs: values, missing };
}

/** The given value, or the name of what is missing. */
export function given(value: number | undefined, name: string): number | Missing {
  return value ?? { missing: name };
}

const NONE: readonly string[] = [];

function missingIn(input: Input): readonly string[] {
  if (typeof input === 'number') return NONE;
  return typeof input.missing === 'string' ? [input.missing] : input.missing;
}

function valueOf(input: Input): number | null {
  if (typeof input === 'number') return input;
  return 'value' in input ? input.value : null;
}
