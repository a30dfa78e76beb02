import { DEFAULT_READ_OPTIONS, type ReadOptions } from '../../dieline/options.ts';
import { parseRoleRule } from '../../dieline/role-rule.ts';
import type { Library } from './open-library.ts';
import { entryNamed } from './records.ts';

/** How a record says that its drawing is to be read: its own rules for roles first, then those of its customer. */
export function readingOf(library: Library, content: Readonly<Record<string, unknown>>): ReadOptions {
  const { scale, widthIs, blank, customer, roles = [] } = content as { scale?: number; widthIs?: number; blank?: number; customer?: string; roles?: readonly string[] };
  const customers = customer === undefined ? undefined : (entryNamed(library, 'customer', customer)?.content['roles'] as readonly string[] | undefined);
  return {
    ...DEFAULT_READ_OPTIONS,
    roles: [...roles, ...(customers ?? [])].map((rule) => parseRoleRule(rule, 'roles')),
    ...(scale === undefined ? {} : { scale }),
    ...(widthIs === undefined ? {} : { widthIs }),
    ...(blank === undefined ? {} : { blank }),
  };
}
