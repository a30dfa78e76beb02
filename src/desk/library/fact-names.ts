import { camelCase } from '../../base/camel-case.ts';
import { englishDesk, type DeskWord } from '../../render/messages/english-desk.ts';
import { keepTogether } from '../../render/no-break.ts';
import { shownSize, sidesMm } from '../job/typed-length.ts';
import type { Words } from '../words/words.ts';

/** A record's field in the person's words; one without words keeps its name. */
export function factName(field: string, { say }: Words): string {
  const word = `fact-${camelCase(field)}`;
  return Object.hasOwn(englishDesk, word) ? say(word as DeskWord) : field;
}

/** What a field holds: words that schemas know in the person's words, `tail:6` by its place, anything else as it is written. */
export function factText(field: string, value: string | number | boolean, { say, format }: Words): string {
  if (typeof value === 'boolean') return say(value ? 'yes' : 'no');
  if (typeof value === 'number') return field === 'caliper' ? format.caliper(value) : format.number(value, 3);
  if (SIZES.has(camelCase(field)) && sidesMm(value)) return keepTogether(`${shownSize(value, format)} ${format.unit}`);
  const [place, height] = value.split(':');
  if (height !== undefined && Object.hasOwn(englishDesk, `bar-${place}`)) return `${say(`bar-${place}` as DeskWord)}, ${format.length(Number(height))}`;
  return Object.hasOwn(englishDesk, `value-${value}`) ? say(`value-${value}` as DeskWord) : value;
}

/** Fields whose text is the sides of something. */
const SIZES: ReadonlySet<string> = new Set(['dimensions', 'sheet', 'minSheet', 'maxSheet']);
