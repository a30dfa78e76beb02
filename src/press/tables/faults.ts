import type { z } from 'zod';
import { InputError, type Issue } from '../../base/issue.ts';
import { plainReason } from '../plain-reason.ts';
import type { Row } from './rows.ts';

/** More faults than this are only counted: whoever mends these has seen what is wrong. */
const MOST_SHOWN = 20;

/** Gathers all faults of a table, so that one run names them all. */
export interface Faults {
  add(issues: readonly Issue[]): void;
  /** A field that is wrong, for a reason of ours. */
  field(where: string, reason: string): void;
  /** Whether the schema takes the JSON; `place` says where a wrong field stands. */
  check(schema: z.ZodType, json: unknown, place: (path: readonly PropertyKey[]) => string): boolean;
  /** Throws an InputError with the faults, if any. */
  finishIfAny(): void;
}

export function collectFaults(where: string): Faults {
  const found: Issue[] = [];
  const faults: Faults = {
    add: (issues) => void found.push(...issues),
    field: (at, reason) => void found.push({ code: 'field-not-valid', severity: 'error', where: at, facts: { reason } }),
    check(schema, json, place) {
      const result = schema.safeParse(json);
      if (!result.success) for (const issue of result.error.issues) faults.field(place(issue.path), plainReason(issue));
      return result.success;
    },
    finishIfAny() {
      if (found.length === 0) return;
      const more = found.length - MOST_SHOWN;
      throw new InputError(more > 0 ? [...found.slice(0, MOST_SHOWN), { code: 'more-faults', severity: 'error', where, facts: { count: more } }] : found);
    },
  };
  return faults;
}

export function placed(where: string, { line }: Row, path: readonly PropertyKey[]): string {
  return `${where}: line ${line}, ${path.map(String).join('.') || 'whole row'}`;
}
