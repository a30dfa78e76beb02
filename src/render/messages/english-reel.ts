import type { Format } from '../format.ts';
import { upsOf, type ReelFacts } from '../reel-facts.ts';
import { counted } from './english-counted.ts';

export type ReelWords = typeof englishReel;

/** Words of the report of a given set of blanks on a reel. */
export const englishReel = {
  title: (facts: ReelFacts, format: Format) => `${facts.name}: ${counted(upsOf(facts), 'blank')} on a reel ${format.length(facts.reelWidth)} wide`,
  answer: (facts: ReelFacts, format: Format) => {
    const { cutOff, leastCutOff, reelWidth } = facts;
    const known = cutOff > leastCutOff ? `no cut-off under ${format.length(leastCutOff)} is possible` : 'the shortest possible';
    return `${counted(upsOf(facts), 'blank')} on a reel of ${format.length(reelWidth)}: cut-off ${format.length(cutOff)}; ${known}; ${format.percent(facts.yield)} of it is blanks.`;
  },
  headings: { length: 'How long', blanks: 'What lies on it', assumed: 'What was assumed', caution: 'Before a die is ordered' },
  labels: {
    cutOff: 'cut-off', least: 'shortest possible, at least', difference: 'best to that', yield: 'yield', reelPerThousand: 'reel for 1000 cut-offs', areaPerThousand: 'area of 1000 cut-offs', stopped: 'why the search stopped', time: 'time',
    reelWidth: 'reel width', ups: 'blanks', gap: 'gap',
  },
  columns: ['design', 'ups', 'blank', 'rotations'],
  alongMachine: 'along the machine direction',
  leastMeans: 'from the area of the blanks with their share of the gap, and from those that cannot lie beside one another',
  closed: 'none: this is the shortest',
  open: (mm: number, share: number, format: Format) => `${format.length(mm)} (${format.percent(share)}) not settled`,
  perThousand: (cutOff: number, format: Format) => `${format.length(cutOff)} × 1000`,
  perThousandMeans: (ups: number, format: Format) => `${counted(1000 * ups, 'blank', format)}, without makeready and running waste`,
  assumed: ({ gap, bleed, seed }: ReelFacts, format: Format) => [
    `The gap of ${format.length(gap)} is kept between the blanks of one cut-off; blanks may reach the edges of the reel and the cut. Where the cut or a slitting knife needs room, give a narrower reel and add it to the cut-off.`,
    ...(bleed > 0 ? [`The bleed of ${format.length(bleed)} stays on the reel and within the cut-off; knives keep as far from its edges.`] : []),
    `The same job, effort and seed (${seed}) give the same layout.`,
  ],
  caution: 'This is a plan. Knives, clearances and margins are confirmed with the machine’s own manual and the die maker before a die is ordered. Presses, slitters and die-cutters are worked by trained people under local rules.',
};
