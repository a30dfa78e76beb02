import { pathLength } from './curve-part.ts';
import type { LineGroup, Role, RulePath } from './dieline.ts';
import type { DrawnLine, LineSource } from './drawing.ts';

type Handle = Pick<LineGroup, 'subject' | 'value'>;

/** The drawing's lines by layer, or by colour where they lie in none; dashed and solid ones apart where both occur. */
export function lineGroups(lines: readonly DrawnLine[], paths: readonly RulePath[]): LineGroup[] {
  const sources = new Map(lines.map(({ source }) => [source.described, source]));
  const dashes = dashesByHandle([...sources.values()]);
  const groups = new Map<string, Omit<LineGroup, 'roles' | 'lengthMm'> & { lengths: Map<Role, number> }>();
  for (const { role, curves, source: described } of paths) {
    const source = sources.get(described);
    if (!source) continue;
    const handle = handleOf(source);
    const dash = dashes.get(keyOf(handle))!.size > 1 ? (isDashed(source) ? 'any' : 'none') : undefined;
    const key = `${keyOf(handle)} ${dash}`;
    const { lengths } = groups.get(key) ?? groups.set(key, { ...handle, dash, lengths: new Map() }).get(key)!;
    lengths.set(role, (lengths.get(role) ?? 0) + pathLength(curves));
  }
  return [...groups.values()]
    .map(({ lengths, ...group }) => {
      const byLength = [...lengths].toSorted(([, a], [, b]) => b - a);
      return { ...group, roles: byLength.map(([role]) => role), lengthMm: byLength.reduce((sum, [, mm]) => sum + mm, 0) };
    })
    .toSorted((a, b) => b.lengthMm - a.lengthMm);
}

function dashesByHandle(sources: readonly LineSource[]): ReadonlyMap<string, ReadonlySet<boolean>> {
  const found = new Map<string, Set<boolean>>();
  for (const source of sources) {
    const key = keyOf(handleOf(source));
    found.set(key, (found.get(key) ?? new Set()).add(isDashed(source)));
  }
  return found;
}

/** The nearest group that has a name, as `layer:` rules look for it. */
function handleOf({ levels, stroke }: LineSource): Handle {
  const layer = levels.find(({ group, names }) => group && names.length > 0)?.names[0];
  return layer === undefined ? { subject: 'stroke', value: stroke } : { subject: 'layer', value: layer };
}

function keyOf({ subject, value }: Handle): string {
  return `${subject}:${value}`;
}

function isDashed({ dash }: LineSource): boolean {
  return dash.length > 0;
}
