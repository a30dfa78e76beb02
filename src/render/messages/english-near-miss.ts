import type { Format } from '../format.ts';
import type { NearMiss, NearMissFacts } from '../near-miss-facts.ts';

type Changed = Pick<NearMiss, 'thing' | 'from' | 'to'> & { readonly layout?: NearMiss['layout'] };

const OPEN: Readonly<Record<string, string>> = {
  rotations: 'quarter turns allowed as well',
  'common-knife': 'common knife between neighbours',
  'bar-tail': 'colour bar at the tail',
  'bar-gripper': 'colour bar at the gripper',
  'bar-centre': 'colour bar in the centre',
  'bar-none': 'no colour bar',
};

const MEASURED: Readonly<Record<string, readonly [name: string, change: string]>> = {
  gap: ['gap', 'narrower'],
  gripper: ['gripper margin', 'less'],
  tail: ['tail margin', 'less'],
  sides: ['side margins', 'less each'],
  'bar-height': ['colour bar', 'lower'],
  'sheet-width': ['sheet', 'wider'],
  'sheet-height': ['sheet', 'deeper'],
  'edge-top': ['blank', 'shorter at its upper edge'],
  'edge-bottom': ['blank', 'shorter at its lower edge'],
  'edge-left': ['blank', 'shorter at its left edge'],
  'edge-right': ['blank', 'shorter at its right edge'],
};

/** `tuckFlap` → `tuck flap` */
const spoken = (name: string) => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** `gap 0.6 mm narrower (6 → 5.4 mm)` */
function change({ thing, from, to, layout }: Changed, format: Format): string {
  const open = OPEN[thing];
  if (open !== undefined) return open;
  const [name, how] = MEASURED[thing] ?? [spoken(thing.replace(/^flap:/, '')), 'less'];
  const bleed = thing === 'gap' && layout?.rules.bleedMeeting === 'cut' ? `, bleeds cut at the middle (${format.length(Math.min(layout.rules.bleed, to! / 2))} each)` : '';
  return `${name} ${format.length(Math.abs(to! - from!))} ${how} (${format.bareLength(from!)} → ${format.length(to!)}${bleed})`;
}

/** How far a thing was tried. */
function tried({ thing, from, to }: Changed, format: Format): string {
  const open = OPEN[thing];
  if (open !== undefined) return open;
  const [name, how] = MEASURED[thing] ?? [spoken(thing.replace(/^flap:/, '')), 'less'];
  return `${name}${how === 'wider' || how === 'deeper' ? ` ${how}` : how.startsWith('shorter') ? ` ${how}` : ''} (to ${format.length(to ?? from ?? 0)})`;
}

const yearlyMoney = ({ saved }: NearMiss, currency: string, format: Format) => (saved.moneyPerYear === undefined ? undefined : `${format.number(saved.moneyPerYear, 0)} ${currency}`);

/** Words of near misses: which single change brings the next up. */
export const englishNearMiss = {
  heading: 'Near misses',
  change,
  head: { change: 'a single change', ups: 'ups', board: 'm²/1000 saved', m2: 'm² a year', kg: 'kg a year', money: (currency: string) => `${currency} a year` },
  money: yearlyMoney,
  none: ({ ups }: NearMissFacts) => `No single change that was tried brings more than ${ups} ups.`,
  best: (facts: NearMissFacts, format: Format) => {
    const [best] = facts.found;
    if (!best) return englishNearMiss.none(facts);
    const worth = best.saved.moneyPerYear === undefined || facts.yearly === undefined ? '' : `, ${format.number(best.saved.moneyPerYear, 0)} ${facts.currency} a year at ${format.number(facts.yearly, 0)} cartons`;
    return `${change(best, format).replace(/^./, (letter) => letter.toUpperCase())} brings ${best.ups} ups instead of ${facts.ups}: ${format.number(best.saved.m2PerThousand, 2, true)} m² of board less per thousand${worth}.`;
  },
  searched: ({ stepMm }: NearMissFacts, format: Format) => `Searched in steps of ${format.length(stepMm)} with quick searches on the true outline; each claim has its own judged layout. A longer search may find that less is enough.`,
  notFound: ({ notFound }: NearMissFacts, format: Format) => `Tried and of no use by itself: ${notFound.map((one) => tried(one, format)).join(', ')}.`,
  counts: ({ counts, yearly, found }: NearMissFacts, format: Format) => (yearly === undefined || !found.some(({ saved }) => saved.moneyPerYear !== undefined) ? undefined : `A year is ${format.number(yearly, 0)} cartons; money counts ${counts === 'board' ? 'the board alone' : 'board, press and die-cutter hours'}, makeready and a new die left out.`),
  caution: 'Narrower gaps and margins, common knives and turned fibres are for the die maker, the machine’s manual and the customer to allow.',
  thumbnail: (miss: NearMiss, format: Format) => [`${miss.ups} ups`, change(miss, format)],
  picture: 'Near misses: the layouts',
};

export type NearMissWords = typeof englishNearMiss;
