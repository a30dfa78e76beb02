import type { BrokenCondition } from '../../estimate/stripping-conditions.ts';
import { LEAST_FRAME_MM, LEAST_GRID_MM, type StrippingMode, type StrippingWish } from '../../press/stripping.ts';
import type { Format } from '../format.ts';
import type { StrippingFacts } from '../nest-facts.ts';

/** What is said where a way of stripping was wished for. */
export interface StrippingChoiceWords {
  readonly heading: string;
  readonly modes: Readonly<Record<StrippingMode, string>>;
  /** What the way asks of a layout, as one sentence. */
  readonly asks: (wish: Omit<StrippingWish, 'rule'>, format: Format) => string;
  /** Whether this layout keeps it, and what it breaks. */
  readonly verdict: (broken: readonly BrokenCondition[], wish: Omit<StrippingWish, 'rule'>, format: Format) => string;
  /** Added to the first sentence of a report; empty where there is nothing to add. */
  readonly lead: (facts: StrippingFacts, ups: number, format: Format) => string;
  /** What the rule costs, or would cost, and what is proved under it. */
  readonly price: (facts: StrippingFacts, ups: number, format: Format) => readonly string[];
  /** That the limit told in the same report does not know the rule. */
  readonly limitStays: string;
  /** Why the search under the rule stopped where its own limit was met. */
  readonly limitMet: string;
  /** Above the picture of the other layout. */
  readonly other: (ups: number, kept: boolean) => string;
  /** How to have it laid out so, on a page that only reports. */
  readonly remedy: (wish: Omit<StrippingWish, 'rule'>) => string;
}

/** Sheets are compared for so many blanks. */
export const PRICED_BLANKS = 10_000;

/** Sheets for the priced blanks with more and with fewer ups, and how much more that is. */
export function priceOfUps(more: number, fewer: number) {
  const [least, most] = [Math.ceil(PRICED_BLANKS / more), Math.ceil(PRICED_BLANKS / fewer)];
  return { least, most, share: more / fewer - 1 };
}

const phrases = (broken: readonly BrokenCondition[], { leastStrip }: Omit<StrippingWish, 'rule'>, format: Format) => broken.map(({ condition, count }) => ({
  strips: `${count} ${count === 1 ? 'strip is' : 'strips are'} narrower than ${format.length(leastStrip)}`,
  islands: `${count} ${count === 1 ? 'island of waste is' : 'islands of waste are'} enclosed between blanks`,
  pins: `${count} ${count === 1 ? 'island has' : 'islands have'} no room for a pin of ${format.length(leastStrip)}`,
  frame: `less than ${LEAST_FRAME_MM} mm of frame at ${count} of tail and sides`,
  ways: `no straight ways of ${LEAST_GRID_MM} mm part all blanks`,
})[condition]).join(', ');

const MODES: Readonly<Record<StrippingMode, string>> = { 'by-hand': 'by hand', 'with-tools': 'with tools', 'with-blanking': 'with blanking' };

const sheetsText = (more: number, fewer: number, format: Format) => {
  const { least, most, share } = priceOfUps(more, fewer);
  return `${format.percent(share)} more sheets (${format.number(most, 0)} instead of ${format.number(least, 0)} for ${format.number(PRICED_BLANKS, 0)} blanks)`;
};

export const englishStrippingChoice: StrippingChoiceWords = {
  heading: 'Stripping',
  modes: MODES,
  asks: ({ mode, leastStrip }, format) => {
    const strips = `waste between two blanks at least ${format.length(leastStrip)} wide`;
    const frame = `at least ${LEAST_FRAME_MM} mm of frame at tail and sides, room for a pin in every island between blanks`;
    const asked = { 'by-hand': `${strips}, no islands enclosed between blanks`, 'with-tools': `${strips}, ${frame}`, 'with-blanking': `${strips}, ${frame}, every blank in a cell of its own between straight ways of at least ${LEAST_GRID_MM} mm` }[mode];
    return `Stripping ${MODES[mode]} asks for ${asked} (widths: common practice, no source).`;
  },
  verdict: (broken, wish, format) => (broken.length === 0 ? 'This layout keeps it: checked apart from the search, on the true curves.' : `This layout does not keep it: ${phrases(broken, wish, format)}.`),
  lead: ({ wish, broken, other }, ups, format) => {
    if (wish.rule === 'must' && other) return `${other.ups} ups are possible, but ${phrases(other.broken, wish, format)}: ${ups} keep the rule for stripping ${MODES[wish.mode]}.`;
    return broken.length === 0 ? `It strips cleanly ${MODES[wish.mode]}.` : `It does not strip cleanly ${MODES[wish.mode]}: ${phrases(broken, wish, format)}.`;
  },
  price: ({ wish, broken, other, limit }, ups, format) => [
    ...(other && wish.rule === 'must' ? [`The price of clean stripping: ${ups} ups take ${sheetsText(other.ups, ups, format)} than ${other.ups}.`] : []),
    ...(other && wish.rule === 'prefer' ? [`${other.ups} ups would keep it (--stripping-rule must), for ${sheetsText(ups, other.ups, format)}.`] : []),
    ...(broken.length > 0 && !other ? ['No layout that keeps it was found.'] : []),
    ...(limit === undefined ? [] : [limit === (broken.length === 0 ? ups : other?.ups) ? `No layout that keeps it has more than ${limit}: proved.` : `At most ${limit} can keep it; whether more than the best found do is not settled.`]),
  ],
  limitStays: 'The limit above is that of the sheet without this rule, and holds with it as well.',
  limitMet: 'the limit under the rule for stripping was met: no layout that keeps it can hold more',
  other: (ups, kept) => `${ups} ups, ${kept ? 'strips cleanly' : 'does not strip cleanly'}`,
  remedy: ({ mode, leastStrip }) => `nest --stripping ${mode} --stripping-rule must --least-strip ${leastStrip} looks for the best layout that keeps it.`,
};
