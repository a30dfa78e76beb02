import { DEFAULT_READ_OPTIONS, type ReadOptions } from '../../dieline/options.ts';
import { parseRoleRule } from '../../dieline/role-rule.ts';
import type { Library } from './open-library.ts';
import { entryNamed } from './records.ts';

/** Fields of a record that go to the reader as they are. */
const AS_THEY_ARE = ['scale', 'widthIs', 'blank', 'page', 'closeGaps'] as const;

/** How a record says that its drawing is to be read: its own rules for roles first, then those of its customer. */
export function readingOf(library: Library, content: Readonly<Record<string, unknown>>): ReadOptions {
  const { customer, roles = [] } = content as { customer?: string; roles?: readonly string[] };
  const customers = customer === undefined ? undefined : (entryNamed(library, 'customer', customer)?.content['roles'] as readonly string[] | undefined);
  const given = Object.fromEntries(AS_THEY_ARE.flatMap((field) => (content[field] === undefined ? [] : [[field, content[field]]])));
  return { ...DEFAULT_READ_OPTIONS, roles: [...roles, ...(customers ?? [])].map((rule) => parseRoleRule(rule, 'roles')), ...given };
}
