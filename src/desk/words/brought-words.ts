import type { Brought, Range } from '../../press/brought.ts';
import type { LimitFields } from '../job/job.ts';
import type { Words } from './words.ts';

/** What holds because a machine was chosen, in short; what a field of the limits says itself is left out. Undefined where nothing is left. */
export function broughtWords(brought: Brought, limits: LimitFields, words: Words): string | undefined {
  const { say } = words;
  const [sets, ink, takes] = [knivesOf(brought, limits, words), inkOf(brought, limits, words), takenBy(brought, words)].map((parts) => parts.join(', '));
  const held = [sets, ink && say('brings-ink', { limits: ink! })].filter(Boolean).join('; ');
  return [held && say('brings', { limits: held }), takes && say('takes', { what: takes })].filter(Boolean).join(' ') || undefined;
}

type Word = 'gripper' | 'tail' | 'sides' | 'sideLeft' | 'sideRight' | 'gap' | 'bleed';

const length = ({ say, format }: Words, word: Word, mm: number | undefined) => (mm === undefined ? [] : [say(`brings-${word}`, { length: format.length(mm) })]);

const isTyped = (limits: LimitFields, ...fields: (keyof LimitFields)[]) => fields.some((field) => limits[field].trim() !== '');

function knivesOf(brought: Brought, limits: LimitFields, words: Words): string[] {
  const { say, format } = words;
  const one = (field: 'gripper' | 'tail' | 'gap' | 'bleed') => (isTyped(limits, field) ? [] : length(words, field, brought[field]));
  const { bar, lay } = brought;
  return [
    ...one('gripper'),
    ...one('tail'),
    // One side that is typed holds for both.
    ...(isTyped(limits, 'sideLeft', 'sideRight') ? [] : sidesOf(brought, words)),
    ...one('gap'),
    ...one('bleed'),
    ...(bar && !isTyped(limits, 'bar') ? [say('brings-bar', { length: format.length(bar.height), place: say(`bar-${bar.place}`) })] : []),
    ...(lay && !isTyped(limits, 'lay') ? [say('brings-lay', { side: say(lay) })] : []),
  ];
}

function sidesOf({ sideLeft, sideRight }: Brought, words: Words): string[] {
  return sideLeft === sideRight ? length(words, 'sides', sideLeft) : [...length(words, 'sideLeft', sideLeft), ...length(words, 'sideRight', sideRight)];
}

const INK = [['inkGripper', 'gripper'], ['inkTail', 'tail'], ['inkSides', 'sides']] as const;

function inkOf(brought: Brought, limits: LimitFields, words: Words): string[] {
  return INK.flatMap(([field, word]) => (isTyped(limits, field) ? [] : length(words, word, brought[field])));
}

function takenBy({ sheets, caliper }: Brought, { say, format }: Words): string[] {
  /** The unit once. */
  const range = <Value>({ least, most }: Range<Value>, text: (value: Value) => string, bare = text) => {
    if (least === undefined) return most === undefined ? undefined : say('range-up-to', { most: text(most) });
    return most === undefined ? say('range-from', { least: text(least) }) : say('range', { least: bare(least), most: text(most) });
  };
  const sizes = range(sheets, ({ width, height }) => format.size(width, height), ({ width, height }) => `${format.bareLength(width)} × ${format.bareLength(height)}`);
  const board = range(caliper, format.caliper);
  return [...(sizes ? [say('takes-sheets', { range: sizes })] : []), ...(board ? [say('takes-board', { range: board })] : [])];
}
