import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { broughtBy } from '../../src/press/brought.ts';
import { combineSettings } from '../../src/press/machines.ts';
import { cutterSchema, pressSchema, readRecord } from '../../src/press/records.ts';

const sample = (kind: string, name: string): unknown => JSON.parse(readFileSync(join(import.meta.dirname, '..', '..', 'samples', kind, `${name}.json`), 'utf8'));
const press = readRecord(pressSchema, sample('presses', 'b1-six-colours'), 'press');
const cutter = readRecord(cutterSchema, sample('cutters', 'b1-blanking'), 'die-cutter');

describe('what a machine brings', () => {
  test('alone, all that its record says', () => {
    const { press: by, cutter: none } = broughtBy({ press });
    expect(by).toMatchObject({ gripper: 12, tail: 10, sideLeft: 6, sideRight: 6, inkGripper: 10, inkTail: 3, inkSides: 3, bar: { place: 'tail', height: 6 }, bleed: 3, lay: 'left', sheets: { least: { width: 340, height: 480 }, most: { width: 1060, height: 760 } }, caliper: { least: 0.06, most: 0.8 } });
    expect(by!.gap).toBeUndefined();
    expect(none).toBeUndefined();
  });

  // Press 12 10 6 6, die-cutter 14 8 5 5 with a gap of 6.
  test('with another, what leaves less than the other', () => {
    const both = broughtBy({ press, cutter });
    expect(both.press).toMatchObject({ gripper: undefined, tail: 10, sideLeft: 6, sideRight: 6, bleed: 3 });
    expect(both.cutter).toMatchObject({ gripper: 14, tail: undefined, sideLeft: undefined, sideRight: undefined, gap: 6 });
  });

  test('of a limit that both set alike, both say it; of the sides each by itself', () => {
    const both = broughtBy({ press: { gripper: 14, sideMargins: [6, 4] }, cutter });
    expect([both.press!.gripper, both.cutter!.gripper]).toEqual([14, 14]);
    expect([both.press!.sideLeft, both.press!.sideRight]).toEqual([6, undefined]);
    expect([both.cutter!.sideLeft, both.cutter!.sideRight]).toEqual([undefined, 5]);
  });

  test('no colour bar is none brought; of a die-cutter only what die-cutters set', () => {
    expect(broughtBy({ press: { bar: 'none' } }).press!.bar).toBeUndefined();
    expect(broughtBy({ cutter: { ...cutter, bleed: 9, lay: 'right' } }).cutter).not.toHaveProperty('bleed');
  });

  test('whatever is brought is what the two machines together set', () => {
    const machines = { press, cutter };
    const held = combineSettings({}, machines);
    const { press: a, cutter: b } = broughtBy(machines);
    for (const what of ['gripper', 'tail', 'gap'] as const) expect([a![what], b![what]]).toContain(held[what]);
  });
});
