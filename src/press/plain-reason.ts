import type { z } from 'zod';

const NAMES: Readonly<Record<string, string>> = {
  number: 'a number', int: 'a whole number', string: 'text', array: 'a list', object: 'an object with named fields', record: 'an object with named fields', boolean: 'true or false', null: 'null', undefined: 'nothing',
};

/** How the library's own messages begin. */
const LIBRARY_WORDS = /^(Invalid|Too small|Too big|Unrecognized)/;

/** What is wrong with a field in plain words; messages of our own schemas stay as they are. */
export function plainReason(issue: z.core.$ZodIssue): string {
  if (!LIBRARY_WORDS.test(issue.message)) return issue.message;
  if (issue.code === 'invalid_type') {
    const received = / received (\w+)/.exec(issue.message)?.[1] ?? '';
    const wanted = NAMES[issue.expected] ?? issue.expected;
    if (received === 'undefined') return `is missing; ${wanted} is wanted`;
    // A number that is none of the whole ones is told so, not that it is a number.
    return received === 'number' && (issue.expected === 'int' || issue.expected === 'number') ? `${wanted} is wanted, without decimals and not beyond what can be counted` : `${wanted} is wanted, not ${NAMES[received] ?? received}`;
  }
  if (issue.code === 'too_small') return issue.origin === 'array' ? `at least ${counted(issue.minimum)} wanted` : `must be ${issue.inclusive === false ? 'above' : 'at least'} ${issue.minimum}`;
  if (issue.code === 'too_big') return issue.origin === 'array' ? `at most ${counted(issue.maximum)} allowed` : `must be ${issue.inclusive === false ? 'below' : 'at most'} ${issue.maximum}`;
  if (issue.code === 'unrecognized_keys') return `${issue.keys.map((key) => `"${key}"`).join(', ')} ${issue.keys.length === 1 ? 'is' : 'are'} not known here; look for a misspelling, or leave it out`;
  if (issue.code === 'invalid_value') return `one of ${issue.values.map((value) => `"${String(value)}"`).join(', ')} is wanted`;
  return issue.message;
}

function counted(count: number | bigint): string {
  return Number(count) === 1 ? '1 entry is' : `${count} entries are`;
}
