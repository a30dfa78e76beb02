import type { NestFacts } from '../../src/render/nest-facts.ts';

/** A made-up answer: 15 ups on 1020 × 720 mm. Waste in mm², adding up to the sheet's 734 400. */
export const facts: NestFacts = {
  design: { name: 'fernhollow-mint', widthMm: 212, heightMm: 198, areaMm2: 32_310 },
  product: 'carton',
  sheet: { width: 1020, height: 720 },
  ups: 15,
  limit: { ups: 17, by: 'pockets' },
  yield: (15 * 32_310) / 734_400,
  gap: 6,
  bleed: 3,
  bleedMeeting: 'apart',
  rotations: [0, 180],
  source: 'every second row turned',
  stopped: 'effort',
  seed: 1,
  seconds: 12.4,
  bestCellDensity: 0.7132,
  waste: { blanks: 484_650, gripper: 13_260, tail: 10_200, 'side-margins': 8_364, 'colour-bar': 0, 'keep-outs': 0, gaps: 61_926, between: 88_000, edges: 68_000 },
  assumed: [],
  history: [
    { work: 1_000, seconds: 0.1, ups: 12, source: 'plain rows' },
    { work: 8_000, seconds: 0.6, ups: 14, source: 'nested rows' },
    { work: 90_000, seconds: 4.1, ups: 15, source: 'every second row turned' },
  ],
};
