import { pathLength } from './curve-part.ts';
import type { Blank, Role } from './dieline.ts';

/** Length of rule by role, mm; each physical line is in `rules` once, the outline among the cut ones. */
export function ruleLengths({ rules }: Pick<Blank, 'rules'>): Partial<Record<Role, number>> {
  const lengths: Partial<Record<Role, number>> = {};
  for (const { role, curves } of rules) lengths[role] = (lengths[role] ?? 0) + pathLength(curves);
  return lengths;
}
