import type { Allowance, Bound, Dimension, Values } from './parameter.ts';

/**
 * The dimensions and allowances that several styles share. The usual values are starting values: every house has its own,
 * and the board, the machine and the gluer decide. No published set of carton allowances was found; the worked example
 * of the packaging technologists' handbook (wiki.hpv-ev.org, lf03/03: 67 × 13 × 130 gives 170.5 × 154.0) is kept to.
 */
const HOUSE = 'house value';
const EXAMPLE = 'the handbook example (wiki.hpv-ev.org, lf03/03)';

export function dimension(name: string, meaning: string, [least, most]: readonly [Dimension['least'], Dimension['most']], example: number): Dimension {
  return { name, meaning, least, most, example };
}

export function allowance(name: string, meaning: string, usual: Allowance['usual'], [least, most]: readonly [Allowance['least'], Allowance['most']], source = HOUSE): Allowance {
  return { name, meaning, usual, least, most, source };
}

/** Length × width × depth of a carton whose panels stand side by side; between creases, crease centre to crease centre. */
export function cartonDimensions([length, width, depth]: readonly [number, number, number], leastWidth = 10): Dimension[] {
  return [
    dimension('length', 'the wider panel, crease to crease', [Math.max(20, leastWidth), 600], length),
    dimension('width', 'the narrower panel, crease to crease', [leastWidth, notWiderThanLong(400)], width),
    dimension('depth', 'height of the body, crease to crease', [15, 900], depth),
  ];
}

/** Whoever gives them the other way round is told: a cover on the wrong panel is a wrong carton. `most` in mm. */
export function notWiderThanLong(most: number): Bound {
  return { of: ({ length }) => Math.min(length, most), said: `the length, which is given first, or ${most} if that is less` };
}

export const caliper = allowance('caliper', 'thickness of the board', 0.4, [0.05, 1.5], 'house value; take it from the board record');

const byCaliper = { of: (v: Values) => Math.max(0.5, v.caliper), said: 'the caliper, at least 0.5' };

export const lastPanelLess = allowance(
  'lastPanelLess', 'by how much the last panel is narrower, so that its edge does not stand over the glue seam', byCaliper, [0, 2],
  `${EXAMPLE}: 12.5 beside 13; larger with thicker board: house value`,
);

export const glueFlap = allowance(
  'glueFlap', 'width of the glue flap', { of: ({ width }) => Math.min(15, width - 2), said: '15, at most the width less 2' },
  [5, { of: ({ width }) => Math.min(40, width - 1), said: 'the width less 1, and 40' }], `11 to 20 is usual (common practice); ${EXAMPLE} has 11 for a width of 13`,
);

export const clearance = allowance('clearance', 'by how much a flap stands back from each end of its crease, so that neighbours do not rub', byCaliper, [0.2, 2]);

export const coverLess = allowance(
  'coverLess', 'by how much the cover is shorter than the width', byCaliper, [0, 2], '0.5 to 1 (common practice)',
);

export const tuckFlap = allowance(
  'tuckFlap', 'length of the tuck flap', { of: ({ width, coverLess: less }) => Math.min(width - less, Math.max(12, Math.min(25, 10 + width / 5))), said: '10 and a fifth of the width, 12 to 25, at most the cover' },
  [5, { of: ({ width, coverLess: less }) => Math.min(width - less, 40), said: 'the cover, and 40' }], '12 to 25, not longer than the cover (common practice)',
);

export const lockSlit = allowance(
  'lockSlit', 'slit at each end of the crease between cover and tuck flap; 0 for none', { of: ({ length }) => Math.min(8, length / 8), said: '8, at most an eighth of the length' },
  [0, { of: ({ length }) => length / 4, said: 'a quarter of the length' }],
);

export const dustFlap = allowance(
  'dustFlap', 'length of the dust flaps', { of: (v) => Math.min((v.width - v.coverLess + v.tuckFlap) / 2, v.length / 2 - 0.5), said: 'half of cover and tuck flap, at most half the length less 0.5' },
  [5, { of: ({ length }) => length / 2, said: 'half the length' }],
  'not longer than half the length (common practice); half of cover and tuck lets head-to-head neighbours meet without extra gap (worked out)',
);

export const thumbNotch = allowance(
  'thumbNotch', 'radius of the thumb notch where the tuck flap goes in; 0 for none', 0,
  [0, { of: ({ length, depth }) => Math.min(20, length / 4, depth / 4), said: 'a quarter of length and depth, and 20' }],
);

/** Of every carton with a seam along its depth. */
export const SEAM: readonly Allowance[] = [caliper, lastPanelLess, glueFlap];

export const TUCK: readonly Allowance[] = [clearance, coverLess, tuckFlap, lockSlit, dustFlap, thumbNotch];
