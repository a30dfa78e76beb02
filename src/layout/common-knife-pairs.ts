/** Sides of a drawing by where their straight edges face, counter-clockwise from the right. */
export const FACING_SIDES = ['right', 'upper', 'left', 'lower'] as const;
export type FacingSide = (typeof FACING_SIDES)[number];

/** Why neighbours may share a rule there: no print runs to the edge, the same colour runs through, or somebody says so. */
export const COMMON_KNIFE_REASONS = ['unprinted', 'same-colour', 'by-word'] as const;
export type CommonKnifeReason = (typeof COMMON_KNIFE_REASONS)[number];

/** Straight edges of these two sides, of one design or of two, may lie on one rule. */
export interface CommonKnifePair {
  readonly sides: readonly [FacingSide, FacingSide];
  readonly reason: CommonKnifeReason;
}

export function allowsSides(pairs: readonly CommonKnifePair[], a: FacingSide | undefined, b: FacingSide | undefined): boolean {
  return pairs.some(({ sides: [one, other] }) => (one === a && other === b) || (one === b && other === a));
}
