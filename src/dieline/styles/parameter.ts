import { InputError, type Issue } from '../../base/issue.ts';

/** All dimensions and allowances of a style by name, mm. */
export type Values = Readonly<Record<string, number>>;

/** A figure, or one that follows from those before it, with the formula as people write it. */
export type Bound = number | { readonly of: (values: Values) => number; readonly said: string };

/** A dimension that the user gives. Millimetres. */
export interface Dimension {
  readonly name: string;
  readonly meaning: string;
  readonly least: Bound;
  readonly most: Bound;
  /** For pictures and explanations. */
  readonly example: number;
}

/** An allowance of the house: has a usual value and may be set to another. Millimetres. */
export interface Allowance extends Omit<Dimension, 'example'> {
  readonly usual: Bound;
  /** Where the usual value comes from; `house value` where nowhere. */
  readonly source: string;
}

export function boundValue(bound: Bound, values: Values): number {
  return typeof bound === 'number' ? bound : bound.of(values);
}

export function boundText(bound: Bound): string {
  return typeof bound === 'number' ? String(bound) : bound.said;
}

/** The parameters of a style in order; limits and usual values look only at what stands before them. */
export interface Parameters {
  readonly dimensions: readonly Dimension[];
  readonly allowances: readonly Allowance[];
}

/**
 * Every value, usual ones filled in. Throws InputError with all that is missing, unknown or out of limits; `where` is the
 * parameter's name.
 */
export function resolveValues({ dimensions, allowances }: Parameters, given: Values): Values {
  const values: Record<string, number> = {};
  const issues: Issue[] = [];
  const known = [...dimensions, ...allowances].map(({ name }) => name);
  for (const name of Object.keys(given)) {
    if (!known.includes(name)) issues.push({ code: 'style-parameter-unknown', severity: 'error', where: name, facts: { known: known.join(', ') } });
  }
  for (const parameter of [...dimensions, ...allowances]) {
    const { name, meaning } = parameter;
    const usual = 'usual' in parameter ? boundValue(parameter.usual, values) : undefined;
    const value = given[name] ?? usual;
    if (value === undefined) {
      issues.push({ code: 'style-dimension-missing', severity: 'error', where: name, facts: { meaning } });
      break;
    }
    const issue = outOfLimits(parameter, value, values);
    if (issue) {
      issues.push(issue);
      // Limits that follow from a wrong dimension would make no sense.
      if (dimensions.some((dimension) => dimension.name === name)) break;
    }
    values[name] = value;
  }
  if (issues.length > 0) throw new InputError(issues);
  return values;
}

function outOfLimits({ name, meaning, least, most }: Omit<Dimension, 'example'>, value: number, before: Values): Issue | undefined {
  const [low, high] = [boundValue(least, before), boundValue(most, before)];
  if (value >= low && value <= high) return undefined;
  const facts = { meaning, value: Number.isFinite(value) ? value : String(value), least: low, most: high, leastText: reason(least), mostText: reason(most) };
  return { code: 'style-parameter-out-of-limits', severity: 'error', where: name, facts };
}

function reason(bound: Bound): string {
  return typeof bound === 'number' ? '' : ` (${bound.said})`;
}
