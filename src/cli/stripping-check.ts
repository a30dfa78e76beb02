import type { BrokenCondition } from '../estimate/stripping-conditions.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { judgeStripping, type StrippingFault } from '../layout/judge-stripping.ts';
import { strippingVerdict } from '../pipeline/stripping-choice.ts';
import { LEAST_FRAME_MM, LEAST_GRID_MM, LEAST_STRIP_MM, STRIPPING_MODES, type StrippingWish } from '../press/stripping.ts';
import { createFormat } from '../render/format.ts';
import { english } from '../render/messages/english.ts';
import { englishStrippingChoice as words } from '../render/messages/english-stripping-choice.ts';
import { LEAST_STRIP_WANTED, leastStripValue, STRIPPING_WANTED, strippingValue } from './nest-options.ts';
import { createOptionReader } from './option-reader.ts';

type Wish = Omit<StrippingWish, 'rule'>;

/** Whether a layout keeps what a way of stripping asks, and where it does not. */
export interface StrippingCheck extends Wish {
  readonly broken: readonly BrokenCondition[];
  /** As the judge found them; islands have no blank of their own and are only counted in `broken`. */
  readonly places: readonly StrippingFault[];
}

/** Undefined where no way of stripping was named. Throws an InputError for values that are none. */
export function readStrippingCheck(raw: { readonly stripping?: string; readonly leastStrip?: string }): Wish | undefined {
  const reader = createOptionReader(raw as Record<string, unknown>);
  const mode = reader.read('--stripping', strippingValue, STRIPPING_WANTED);
  const leastStrip = reader.read('--least-strip', leastStripValue, LEAST_STRIP_WANTED) ?? LEAST_STRIP_MM;
  if (raw.leastStrip !== undefined && raw.stripping === undefined) reader.fault({ code: 'stripping-mode-missing', where: '--least-strip', facts: { modes: STRIPPING_MODES.join(', ') } });
  reader.finish();
  return mode && { mode, leastStrip };
}

export function checkStripping(layout: LayoutFile, wish: Wish): StrippingCheck {
  return { ...wish, broken: strippingVerdict(layout, wish).broken, places: judgeStripping(layout, wish) };
}

/** Enough to start mending by. */
const MOST_LINES = 12;

export function strippingCheckText({ broken, places, ...wish }: StrippingCheck): string {
  const format = createFormat('en');
  const lines = places.slice(0, MOST_LINES).map(({ condition, blanks, byMm, place }) => {
    const facts = { stations: blanks.map((blank) => blank + 1).join(' and '), by: byMm, strip: wish.leastStrip, frame: LEAST_FRAME_MM, way: LEAST_GRID_MM };
    return `  ${english.sentence({ code: `stripping-${condition}`, severity: 'note', facts })} (at ${place[0].toFixed(2)}, ${place[1].toFixed(2)} mm)`;
  });
  const more = places.length > MOST_LINES ? [`  ${english.sentence({ code: 'stripping-more', severity: 'note', facts: { count: places.length - MOST_LINES } })}`] : [];
  return `${[words.asks(wish, format), words.verdict(broken, wish, format), ...lines, ...more].join('\n')}\n`;
}
