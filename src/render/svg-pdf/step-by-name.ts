import type { NameLevel } from '../../dieline/drawing.ts';
import { isKnife } from '../../dieline/knife-roles.ts';
import { createRoleByName } from '../../dieline/roles.ts';

/**
 * The processing step that an element of artwork is by its names, nearest first; undefined for what is printed. What is
 * filled is print even where it is called a fold or an outline; legends, codes and white ink are print.
 */
export function createStepByName(): (levels: readonly NameLevel[], isFilled: boolean) => string | undefined {
  const roleByName = createRoleByName();
  return (levels, isFilled) => {
    const role = roleByName(levels);
    if (role === undefined || PRINTED.has(role)) return undefined;
    if (role === 'whole dieline' || isKnife(role)) return isFilled ? undefined : role === 'whole dieline' ? 'Cutting' : role;
    return role;
  };
}

const PRINTED: ReadonlySet<string> = new Set(['Artwork', 'Legend', 'White', 'Positions', 'Unknown']);
