import type { Range } from '../../press/figure-ranges.ts';
import type { Words } from './words.ts';

/** What may be typed into a field for a figure. */
export function rangeSentence(range: Range, { say, format }: Pick<Words, 'say' | 'format'>): string {
  return say(range.isWhole ? 'fault-whole-range' : 'fault-range', { least: format.number(range.least, 0), most: format.number(range.most, 0) });
}
