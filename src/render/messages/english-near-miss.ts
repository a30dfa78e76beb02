import type { Format } from '../format.ts';
import type { NearMiss, NearMissFacts } from '../near-miss-facts.ts';
import { changePhrase, triedPhrase, type ChangeWords, type Changed } from './near-miss-phrases.ts';

/** `tuckFlap` → `tuck flap` */
const spoken = (name: string) => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const WORDS: ChangeWords = {
  open: { rotations: 'quarter turns allowed as well', 'common-knife': 'common knife between neighbours', 'bar-tail': 'colour bar at the tail', 'bar-gripper': 'colour bar at the gripper', 'bar-centre': 'colour bar in the centre', 'bar-none': 'no colour bar' },
  measured: {
    gap: ['gap', 'narrower'], gripper: ['gripper margin', 'less'], tail: ['tail margin', 'less'], sides: ['side margins', 'less each'], 'bar-height': ['colour bar', 'lower'],
    'sheet-width': ['sheet', 'wider', true], 'sheet-height': ['sheet', 'deeper', true],
    'edge-top': ['blank', 'shorter at its upper edge', true], 'edge-bottom': ['blank', 'shorter at its lower edge', true], 'edge-left': ['blank', 'shorter at its left edge', true], 'edge-right': ['blank', 'shorter at its right edge', true],
  },
  flap: spoken,
  less: 'less',
  bleedsCut: (bleed) => `bleeds cut at the middle (${bleed} each)`,
  upTo: (length) => `to ${length}`,
};

const change = (one: Changed, format: Format) => changePhrase(one, WORDS, format);

/** Words of near misses: which single change brings the next up. */
export const englishNearMiss = {
  heading: 'Near misses',
  change,
  head: { change: 'a single change', ups: 'ups', board: ({ boardUnit }: Format) => `${boardUnit.name}/1000 saved`, m2: ({ boardUnit }: Format) => `${boardUnit.name} a year`, kg: 'kg a year', money: (currency: string) => `${currency} a year` },
  none: ({ ups }: NearMissFacts) => `No single change that was tried brings more than ${ups} ups.`,
  best: (facts: NearMissFacts, format: Format) => {
    const [best] = facts.found;
    if (!best) return englishNearMiss.none(facts);
    const worth = best.saved.moneyPerYear === undefined || facts.yearly === undefined ? '' : `, ${format.number(best.saved.moneyPerYear, 0)} ${facts.currency} a year at ${format.number(facts.yearly, 0)} cartons`;
    return `${change(best, format).replace(/^./, (letter) => letter.toUpperCase())} brings ${best.ups} ups instead of ${facts.ups}: ${format.board(best.saved.m2PerThousand, 2)} of board less per thousand${worth}.`;
  },
  stopped: ({ tried, changes }: NearMissFacts) => `Stopped before all was tried: ${tried} of ${changes} changes.`,
  searched: ({ stepMm }: NearMissFacts, format: Format) => `Searched in steps of ${format.length(stepMm)} with quick searches on the true outline; each claim has its own judged layout. A longer search may find that less is enough.`,
  notFound: ({ notFound }: NearMissFacts, format: Format) => `Tried and of no use by itself: ${notFound.map((one) => triedPhrase(one, WORDS, format)).join(', ')}.`,
  counts: ({ counts, yearly, found }: NearMissFacts, format: Format) => (yearly === undefined || !found.some(({ saved }) => saved.moneyPerYear !== undefined) ? undefined : `A year is ${format.number(yearly, 0)} cartons; money counts ${counts === 'board' ? 'the board alone' : 'board, press and die-cutter hours'}, makeready and a new die left out.`),
  caution: 'Narrower gaps and margins, common knives and turned fibres are for the die maker, the machine’s manual and the customer to allow.',
  thumbnail: (miss: NearMiss, format: Format) => [`${miss.ups} ups`, change(miss, format)],
  picture: 'Near misses: the layouts',
};

export type NearMissWords = typeof englishNearMiss;
