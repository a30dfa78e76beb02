/**
 * What is wrong or doubtful, as data. Sentences are made from the code in one place, the message catalogue of `render`.
 */
export type Severity = 'error' | 'warning' | 'note';

export interface Issue {
  /** Stable identifier in kebab-case; the key of the message catalogue. */
  readonly code: string;
  readonly severity: Severity;
  /** Where in the drawing or on the sheet, millimetres, in that thing's own axes. */
  readonly place?: readonly [number, number];
  /** Where in the input: a file, an option, a line and field, an element. */
  readonly where?: string;
  /** The figures and names that the sentence quotes. Lengths are millimetres. */
  readonly facts?: Readonly<Record<string, string | number>>;
  /** What is wrong was named in a job or record: a field of it mends it, where a command would have an option. */
  readonly mendedBy?: 'field';
}

/** Input that cannot be used, with every reason found. The command line answers it with exit code 2. */
export class InputError extends Error {
  readonly issues: readonly Issue[];

  constructor(issues: readonly Issue[]) {
    super(issues.map((issue) => issue.code).join(', '));
    this.name = 'InputError';
    this.issues = issues;
  }
}

export function inputError(code: string, details: Omit<Issue, 'code' | 'severity'> = {}): InputError {
  return new InputError([{ code, severity: 'error', ...details }]);
}

/** Runs `work` on something that a job, record or request names: reasons then speak of its fields, and name `where` it stands. */
export async function inFields<Result>(where: string | undefined, work: () => Result | Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => mendedByField(issue, where)));
  }
}

export function mendedByField(issue: Issue, where?: string): Issue {
  const place = [where, issue.where].filter((part) => part !== undefined && part !== '').join(', ');
  return { ...issue, ...(place !== '' && { where: place }), mendedBy: 'field' };
}
