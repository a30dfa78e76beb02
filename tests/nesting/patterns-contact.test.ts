import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freeIntervals } from '../../src/geometry/no-fit-slices.ts';
import { noFitPolygon } from '../../src/geometry/no-fit.ts';
import type { Ring } from '../../src/geometry/point.ts';
import { createContact } from '../../src/nesting/patterns/contact.ts';
import { profileFrom } from '../../src/nesting/patterns/profile.ts';
import { skylineRings, starRings } from '../support/rings.ts';

const contactOf = (lower: Ring, upper: Ring, gap: number) => createContact(profileFrom('above', lower), profileFrom('below', upper), gap);

/** The no-fit polygon answers the same question by other means: everything from its last free stretch on is allowed. */
const fromNoFit = (lower: Ring, upper: Ring, gap: number, shift: number) => freeIntervals(noFitPolygon(lower, upper, gap), 'y', shift).at(-1)!.from;

const gaps = fc.constantFrom(0, 0, 1, 37, 3000, 10_000);

test('a contact is where the last free stretch of the no-fit polygon begins', () => {
  fc.assert(
    fc.property(starRings(14), starRings(14), gaps, fc.integer({ min: -200_000, max: 200_000 }), (lower, upper, gap, shift) => {
      expect(contactOf(lower, upper, gap)(shift)).toBe(fromNoFit(lower, upper, gap, shift));
    }),
    { numRuns: 300, seed: 11 },
  );
});

test('so it is where edges lie in one line and fits are exact', () => {
  fc.assert(
    fc.property(skylineRings(), skylineRings(), fc.constantFrom(0, 1, 10_000), fc.integer({ min: -9, max: 9 }), fc.integer({ min: -1, max: 1 }), (lower, upper, gap, steps, nudge) => {
      const shift = steps * 10_000 + nudge;
      expect(contactOf(lower, upper, gap)(shift)).toBe(fromNoFit(lower, upper, gap, shift));
    }),
    { numRuns: 300, seed: 12 },
  );
});

test('a bar goes into a slot just as wide, and not one micrometre beside it', () => {
  const slot: Ring = [
    { x: 0, y: 0 },
    { x: 30, y: 0 },
    { x: 30, y: 50 },
    { x: 20, y: 50 },
    { x: 20, y: 10 },
    { x: 10, y: 10 },
    { x: 10, y: 50 },
    { x: 0, y: 50 },
  ];
  const bar: Ring = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 60 },
    { x: 0, y: 60 },
  ];
  const lift = contactOf(slot, bar, 0);
  expect([lift(9), lift(10), lift(11)]).toEqual([50, 10, 50]);
  expect([lift(-10), lift(30), lift(31)]).toEqual([-Infinity, -Infinity, -Infinity]);
});
