import { describe, expect, test } from 'vitest';
import type { CommonKnifePair } from '../../src/layout/common-knife-pairs.ts';
import { judge } from '../../src/layout/judge.ts';
import { readLayoutFile, writeLayoutFile } from '../../src/layout/layout-file.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

const card = rectangle('card', 100, 60);
const pair = (a: CommonKnifePair['sides'][0], b: CommonKnifePair['sides'][1]): CommonKnifePair => ({ sides: [a, b], reason: 'unprinted' });
const rules = (commonKnifePairs?: readonly CommonKnifePair[]) => ({ rules: { gap: 4, bleed: 3, bleedMeeting: 'apart' as const, commonKnife: true, ...(commonKnifePairs && { commonKnifePairs }) } });
const beside = [at('card', 50, 50), at('card', 150, 50)];
const above = [at('card', 50, 50), at('card', 50, 110)];
/** The second one head down: its own left edge lies on the first one's right edge… turned, it is its right edge that does. */
const headDown = [at('card', 50, 50), at('card', 250, 110, 180)];
/** A quarter turn counter-clockwise: its upper edge faces left. */
const quarter = [at('card', 50, 50), at('card', 210, 50, 90)];

describe('which edges may share a knife', () => {
  test.each([
    ['left and right, side by side', beside, pair('left', 'right'), 'sound'],
    ['left and right, one above the other', above, pair('left', 'right'), 'faulty'],
    ['upper and lower, one above the other', above, pair('lower', 'upper'), 'sound'],
    ['right and right, the second head down', headDown, pair('right', 'right'), 'sound'],
    ['left and right, the second head down', headDown, pair('left', 'right'), 'faulty'],
    ['right and upper, the second a quarter turned', quarter, pair('right', 'upper'), 'sound'],
    ['left and right, the second a quarter turned', quarter, pair('left', 'right'), 'faulty'],
  ] as const)('%s', (_, placements, allowed, state) => {
    expect(judge(layoutWith([card], placements, rules([allowed]))).state).toBe(state);
    expect(judge(layoutWith([card], placements, rules())).state).toBe('sound');
  });

  test('the layout file keeps them, and files without them stay as they were', () => {
    const layout = layoutWith([card], beside, rules([pair('left', 'right')]));
    const text = writeLayoutFile(layout);
    expect(readLayoutFile(JSON.parse(text), 'a file').rules.commonKnifePairs).toEqual([pair('left', 'right')]);
    expect(writeLayoutFile(layoutWith([card], beside))).not.toContain('commonKnifePairs');
    expect(() => readLayoutFile(JSON.parse(text.replace('"unprinted"', '"because"')), 'a file')).toThrow();
  });
});
