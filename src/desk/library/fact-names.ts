import { englishDesk, type DeskWord } from '../../render/messages/english-desk.ts';
import { keepTogether } from '../../render/no-break.ts';
import { shownSize, sidesMm } from '../job/typed-length.ts';
import type { Words } from '../words/words.ts';

/** A record's field in the person's words; one without words keeps its name. */
export function factName(field: string, { say }: Words): string {
  const word = `fact-${field}`;
  return Object.hasOwn(englishDesk, word) ? say(word as DeskWord) : field;
}

export function factText(field: string, value: string | number | boolean, { say, format }: Words): string {
  if (typeof value === 'boolean') return say(value ? 'yes' : 'no');
  if (SIZES.has(field) && typeof value === 'string' && sidesMm(value)) return keepTogether(`${shownSize(value, format)} ${format.unit}`);
  if (field === 'caliper' && typeof value === 'number' && format.unit === 'in') return format.length(value);
  return typeof value === 'number' ? format.number(value, 3) + (field === 'caliper' ? '\u00a0mm' : '') : value;
}

/** Fields whose text is the sides of something. */
const SIZES: ReadonlySet<string> = new Set(['dimensions', 'sheet']);
