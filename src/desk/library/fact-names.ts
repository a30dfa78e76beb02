import { englishDesk, type DeskWord } from '../../render/messages/english-desk.ts';
import type { Words } from '../words/words.ts';

/** A record's field in the person's words; one without words keeps its name. */
export function factName(field: string, { say }: Words): string {
  const word = `fact-${field}`;
  return Object.hasOwn(englishDesk, word) ? say(word as DeskWord) : field;
}

export function factText(value: string | number | boolean, { say, format }: Words): string {
  if (typeof value === 'boolean') return say(value ? 'yes' : 'no');
  return typeof value === 'number' ? format.number(value, 3) : value;
}
