import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberOf, wholeOf, wholesOf } from '../../src/desk/job/number-of.ts';
import { isDoubtful, keptFigure, shownFigure } from '../../src/desk/job/typed-figure.ts';
import { keptLength, keptSize, mmOf, sameLength, shownLength, shownSize, sidesMm, sizeChoice, typedExamples } from '../../src/desk/job/typed-length.ts';
import { createFormat, type Format } from '../../src/render/format.ts';
import { keptTogether } from '../../src/render/no-break.ts';

const FORMATS = (['en', 'de'] as const).flatMap((locale) => (['mm', 'in'] as const).map((unit): [string, Format] => [`${locale}, ${unit}`, keptTogether(createFormat(locale, unit))]));
/** Half of the last place shown, mm, and a little for the arithmetic. */
const HALF_PLACE_MM = { mm: 0.005, in: 0.0005 * 25.4 };
/** Nanometres are finer than anything that is typed or kept. */
const length = fc.integer({ min: 0, max: 16e9 }).map((nm) => nm / 1e6);

describe.each(FORMATS)('lengths in %s', (_, format) => {
  const { unit } = format;
  const near = (a: number | undefined, b: number) => expect(Math.abs(a! - b)).toBeLessThanOrEqual(HALF_PLACE_MM[unit] + 1e-9);

  test('what is shown of a length is read as that length, within half of its last place: no gap is shown larger by more', () => {
    fc.assert(fc.property(length, (mm) => {
      near(mmOf(keptLength(shownLength(String(mm), format), format)), mm);
      near(mmOf(keptLength(format.length(mm), format)), mm);
    }));
  });

  test('likewise of the two sides of a sheet, with x and with ×', () => {
    fc.assert(fc.property(length, length, fc.boolean(), (width, height, plain) => {
      const shown = shownSize(`${width.toFixed(3)}x${height.toFixed(3)}`, format);
      const sides = sidesMm(keptSize(plain ? shown.replace(/\s*×\s*/, 'x') : shown, format))!;
      near(sides[0], Number(width.toFixed(3)));
      near(sides[1], Number(height.toFixed(3)));
    }));
  });

  test('a length typed in the other unit keeps its exact value', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 99_999 }), fc.constantFrom('mm', 'in', ' mm', ' in', 'cm'), (hundredths, suffix) => {
      const typed = `${shownFigure(String(hundredths / 100), format.decimalSign)}${suffix}`;
      const kept = keptLength(typed, format);
      expect(mmOf(kept)).toBe(mmOf(`${hundredths / 100}${suffix.trim()}`));
      // Shown and left as it is, nothing changes.
      expect(sameLength(kept, keptLength(typed, format))).toBe(true);
    }));
  });

  test('what is shown is never a negative nothing, and something is never shown as nothing', () => {
    fc.assert(fc.property(fc.double({ min: -0.5, max: 0.5, noNaN: true }), (mm) => {
      const shown = format.bareLength(mm);
      expect(shown).not.toMatch(/^−0([.,]0*)?$/);
      if (Math.abs(mm) >= 0.002) expect(shown).toMatch(/[1-9]/);
    }));
  });

  test('the examples under fields can be typed as they stand', () => {
    const { length: own, otherLength, size, otherSize } = typedExamples(format);
    const [mm, inches] = unit === 'mm' ? [own, otherLength] : [otherLength, own];
    expect([mmOf(keptLength(mm, format)), mmOf(keptLength(inches, format))]).toEqual([12, 12.7]);
    const [metric, imperial] = unit === 'mm' ? [size, otherSize] : [otherSize, size];
    expect([sidesMm(keptSize(metric, format)), sidesMm(keptSize(imperial, format))]).toEqual([[1020, 720], [28 * 25.4, 1016]]);
  });

  test('a sheet chosen from a list keeps its exact figures', () => {
    for (const stock of ['1020x720', '28x40in', '711.2x1016', '23.5x35in']) expect(sidesMm(keptSize(sizeChoice(stock, format)[0], format))).toEqual(sidesMm(stock));
  });
});

test('sheets are shown with ×', () => {
  const [german, inches] = [createFormat('de', 'in'), createFormat('en', 'in')];
  expect([shownSize('1020x720', german), shownSize('28.5x40in', german), shownSize('62x31x118', inches), shownSize('1020x', inches)]).toEqual(['40,157 × 28,346', '28,5 × 40', '2.441 × 1.22 × 4.646', '1020 × ']);
  // However the sign between the sides is typed.
  for (const typed of ['1020*720', '1020 by 720', '1020 mal 720', '1020×720', '1020 X 720']) expect(sidesMm(keptSize(typed, createFormat('en')))).toEqual([1020, 720]);
  expect([sizeChoice('1020x720', german), sizeChoice('28x40in', german)]).toEqual([['1020 × 720 mm', '40,157 × 28,346 in'], ['28 × 40']]);
});

describe('figures that could be read in two ways are refused, never misread', () => {
  test.each([
    ['12.5', '12.5', '12.5'], ['12,5', '12.5', '12.5'], ['0,125', '0.125', '0.125'], ['0.125', '0.125', '0.125'], ['1.2345', '1.2345', '1.2345'], ['1 234,5', '1234.5', '1234.5'], ['1’234.5', '1234.5', '1234.5'], ['12,', '12.', '12.'],
    ['1.234', '1.234', '?1.234'], ['1,234', '?1,234', '1.234'], ['1.234,5', '?1.234,5', '?1.234,5'], ['1,234.5', '?1,234.5', '?1,234.5'], ['1.234.567', '?1.234.567', '?1.234.567'], ['1,2,3', '?1,2,3', '?1,2,3'],
    ['12 5', '12 5', '12 5'], ['twelve', 'twelve', 'twelve'], ['', '', ''],
  ])('%s', (typed, english, german) => {
    expect([keptFigure(typed, '.'), keptFigure(typed, ',')]).toEqual([english, german]);
    expect([isDoubtful(english), isDoubtful(german)]).toEqual([english.startsWith('?'), german.startsWith('?')]);
    for (const kept of [english, german]) {
      if (isDoubtful(kept)) expect([numberOf(kept), mmOf(kept), shownFigure(kept, ',')]).toEqual(['fault', undefined, typed]);
    }
  });

  test('also in lengths and sides', () => {
    const [english, german] = [createFormat('en'), createFormat('de')];
    expect([keptLength('1.234mm', english), keptLength('1.234mm', german), keptLength('1,234 in', english)]).toEqual(['1.234mm', '?1.234mm', '?1,234 in']);
    expect([keptSize('1.020 × 720', german), keptSize('1,020x720', english), keptSize('711,2x1016', german)]).toEqual(['?1.020 × 720', '?1,020x720', '711.2x1016']);
    expect(shownSize('?1,020x720', english)).toBe('1,020x720');
  });

  test('a number is read as it is shown, in both languages', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 1e9 }), fc.constantFrom('.', ','), (thousandths, sign) => {
      const kept = String(thousandths / 1000);
      expect(keptFigure(shownFigure(kept, sign), sign)).toBe(kept);
      expect(numberOf(kept)).toBe(thousandths / 1000);
    }));
  });

  test('whole numbers, with whatever between thousands', () => {
    expect(['5000', '5 000', '5.000', '5,000', '1’234’567', '1.234.567'].map(wholeOf)).toEqual([5000, 5000, 5000, 5000, 1_234_567, 1_234_567]);
    expect(['1.5', '1.234,567', '12,50', 'many', '-3', ''].map(wholeOf)).toEqual(['fault', 'fault', 'fault', 'fault', 'fault', undefined]);
  });

  test('several whole numbers: a comma between them cannot be mistaken for one within', () => {
    expect([wholesOf('5000, 20000, 50000'), wholesOf('5000,20000'), wholesOf('5.000; 20.000'), wholesOf('5 000, 20 000')]).toEqual([[5000, 20_000, 50_000], [5000, 20_000], [5000, 20_000], [5000, 20_000]]);
    expect(['5,000', '500,100', '5,000,20,000', '5000, 200,300', '5,000, 20.000', '5000,', '', '0', '1.5'].map(wholesOf)).toEqual(Array(9).fill('fault'));
    // Spaces after every comma between them, and thousands parted throughout: there is but one reading.
    expect([wholesOf('5,000, 20,000, 100,000'), wholesOf('500, 1,000'), wholesOf('5,000; 20,000')]).toEqual([[5000, 20_000, 100_000], [500, 1000], [5000, 20_000]]);
  });
});
