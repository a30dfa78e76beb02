import type { Role } from './dieline.ts';

/**
 * Roles of rules that a die carries, strongest first: where two lines run on one another, the stronger is what the die
 * gets. Lines not yet known come last. All other roles are areas or notes and take no part in outlines.
 */
export const KNIFE_ROLES: readonly Role[] = [
  'Cutting', 'Punching', 'Drilling', 'CuttingCreasing', 'ReverseCuttingCreasing', 'PartialCuttingCreasing', 'ReversePartialCuttingCreasing',
  'Perforating', 'PartialCutting', 'ReversePartialCutting', 'Creasing', 'ReverseCreasing', 'Folding', 'Unknown',
];

const RANK = new Map(KNIFE_ROLES.map((role, i) => [role, i]));

export function isKnife(role: Role): boolean {
  return RANK.has(role);
}

/** Smaller is stronger. */
export function knifeRank(role: Role): number {
  return RANK.get(role) ?? KNIFE_ROLES.length;
}

/** Roles whose lines separate the blank from the waste. */
export function cutsThrough(role: Role): boolean {
  return role === 'Cutting' || role === 'Punching' || role === 'Drilling';
}
