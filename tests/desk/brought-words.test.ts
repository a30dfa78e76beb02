import { describe, expect, test } from 'vitest';
import { EMPTY_JOB, type LimitFields } from '../../src/desk/job/job.ts';
import { broughtWords } from '../../src/desk/words/brought-words.ts';
import { wordsIn } from '../../src/desk/words/words.ts';
import type { Brought } from '../../src/press/brought.ts';

const none = { least: undefined, most: undefined };
const size = (width: number, height: number) => ({ width, height });
const PRESS: Brought = { gripper: 12, tail: 10, sideLeft: 6, sideRight: 6, inkGripper: 10, inkTail: 3, inkSides: 3, bar: { place: 'tail', height: 6 }, bleed: 3, lay: 'left', sheets: { least: size(340, 480), most: size(1060, 760) }, caliper: { least: 0.06, most: 0.8 } };
const LIMITS: LimitFields = EMPTY_JOB.limits;
/** With plain spaces. */
const said = (brought: Brought, limits: Partial<LimitFields> = {}, words = wordsIn('en')) => broughtWords(brought, { ...LIMITS, ...limits }, words)?.replaceAll(/[\u00a0\u202f]/g, ' ').replaceAll('\u2060', '');

describe('what a machine brings, in words', () => {
  test('every limit, then what it takes', () => {
    expect(said(PRESS)).toBe('Brings gripper 12 mm, tail 10 mm, sides 6 mm, bleed 3 mm, colour bar 6 mm at the tail, side lay left; ink-free: gripper 10 mm, tail 3 mm, sides 3 mm. Takes sheets 340 × 480 to 1060 × 760 mm, board 0.06 mm to 0.8 mm.');
  });

  test('in German and in inches', () => {
    const brought = { gripper: 12.7, gap: 6.35, sheets: { least: undefined, most: size(711.2, 1016) }, caliper: none };
    expect(said(brought, {}, wordsIn('de'))).toBe('Daher gilt: Greifer 12,7 mm, Abstand 6,35 mm. Nimmt Bogen bis 711,2 × 1016 mm.');
    expect(said(brought, {}, wordsIn('en', 'in'))).toBe('Brings gripper 0.5 in, gap 0.25 in. Takes sheets up to 28 × 40 in.');
  });

  test('what is typed in the limits holds by itself: it is not said here; one side typed holds for both', () => {
    const typed = { gripper: '15', sideRight: '8', inkTail: '4', bar: 'none', bleed: '2', lay: 'right' } as const;
    expect(said(PRESS, typed)).toMatch(/^Brings tail 10 mm; ink-free: gripper 10 mm, sides 3 mm\. Takes/);
  });

  test('sides that differ are said one by one; with nothing to say nothing is said', () => {
    expect(said({ sideLeft: 5, sideRight: 8, sheets: none, caliper: { least: 0.1, most: undefined } })).toBe('Brings left side 5 mm, right side 8 mm. Takes board from 0.1 mm on.');
    expect(said({ sheets: none, caliper: none })).toBeUndefined();
  });
});
