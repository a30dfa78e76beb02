import { DEFAULT_READ_OPTIONS, type ReadOptions } from '../../dieline/options.ts';
import { parseRoleRule } from '../../dieline/role-rule.ts';

/** How a record says that its drawing is to be read. */
export function readingOf(content: Readonly<Record<string, unknown>>, roles: readonly string[] = []): ReadOptions {
  const { scale, widthIs, blank } = content as { scale?: number; widthIs?: number; blank?: number };
  const own = (content['roles'] as readonly string[] | undefined) ?? [];
  return {
    ...DEFAULT_READ_OPTIONS,
    roles: [...own, ...roles].map((rule) => parseRoleRule(rule, 'roles')),
    ...(scale === undefined ? {} : { scale }),
    ...(widthIs === undefined ? {} : { widthIs }),
    ...(blank === undefined ? {} : { blank }),
  };
}
