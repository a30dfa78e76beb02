import type { Range } from '../../press/figure-ranges.ts';
import { LONGEST_MM } from '../job/laying.ts';
import { typedExamples } from '../job/typed-length.ts';
import type { Words } from './words.ts';

/** What may be typed into a field for a figure. */
export function rangeSentence(range: Range, { say, format }: Pick<Words, 'say' | 'format'>): string {
  return say(range.isWhole ? 'fault-whole-range' : 'fault-range', { least: format.number(range.least, 0), most: format.number(range.most, 0) });
}

/** What may be typed into a field for a length. */
export function lengthSentence({ say, format }: Pick<Words, 'say' | 'format'>): string {
  return say('fault-length-range', { ...typedExamples(format), most: format.length(LONGEST_MM) });
}
