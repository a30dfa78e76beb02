import type { Role } from '../dieline/dieline.ts';

/** A processing step as ISO 19593-1:2018 names it; only the groups Structural and Positions have types. */
export interface ProcessingStep {
  readonly group: 'Structural' | 'Dimensions' | 'Braille' | 'Legend' | 'White' | 'Varnish';
  readonly type?: Role;
}

/** Roles that stand for areas: their closed paths are filled, those of all others stroked. */
const AREA_ROLES: ReadonlySet<Role> = new Set<Role>([
  'Gluing', 'FoilStamping', 'ColdFoilStamping', 'Embossing', 'Debossing', 'VarnishFree', 'InkFree', 'InkVarnishFree', 'Braille', 'White', 'Varnish',
]);

/** Roles that are no processing step, or one that cannot be named without knowing more. */
const NO_STEP: ReadonlySet<Role> = new Set<Role>(['Positions', 'Artwork', 'Unknown']);

/** The processing step of a role; undefined for what is none. */
export function processingStep(role: Role): ProcessingStep | undefined {
  if (NO_STEP.has(role)) return undefined;
  switch (role) {
    case 'Dimensions':
    case 'Braille':
    case 'Legend':
    case 'White':
    case 'Varnish':
      return { group: role };
    default:
      return { group: 'Structural', type: role };
  }
}

export function isArea(role: Role): boolean {
  return AREA_ROLES.has(role);
}
