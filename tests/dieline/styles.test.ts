import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { dielineOfStyle, styledBlank } from '../../src/dieline/styles/dieline-of-style.ts';
import { boundValue, type Values } from '../../src/dieline/styles/parameter.ts';
import { STYLES } from '../../src/dieline/styles/styles.ts';
import { flattenLoop } from '../../src/geometry/flatten.ts';
import { ringFaults } from '../../src/geometry/validity.ts';
import { dielineSvg } from '../../src/render/dieline-svg.ts';
import { figures, read } from './support.ts';

const examples = (style: (typeof STYLES)[number]): Values => Object.fromEntries(style.dimensions.map(({ name, example }) => [name, example]));

describe.each(STYLES.map((style) => [style.id, style] as const))('%s', (id, style) => {
  test('is read back whole, with nothing to remark', () => {
    const dieline = dielineOfStyle(id, examples(style));
    const again = read(dielineSvg(id, dieline));
    expect(figures(again)).toEqual(figures(dieline));
    expect(again.grain).toBe(dieline.grain);
    expect(again.issues).toEqual([]);
  });

  test('over the whole range of dimensions the outline is simple', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }), (parts) => {
        const values: Record<string, number> = {};
        style.dimensions.forEach(({ name, least, most }, i) => {
          const [low, high] = [boundValue(least, values), boundValue(most, values)];
          values[name] = low + parts[i] * (high - low);
        });
        const [blank] = dielineOfStyle(id, values).blanks;
        expect(ringFaults(flattenLoop(blank.outline, { toleranceMm: 0.05, side: 'near' }).ring)).toEqual([]);
      }),
      { seed: 11, numRuns: 40 },
    );
  });
});

test('the worked example of the packaging technologists’ handbook (wiki.hpv-ev.org, lf03/03): 67 × 13 × 130 gives 170.5 × 154.0', () => {
  expect(figures(dielineOfStyle('glued-end-flaps', { length: 67, width: 13, depth: 130 }))[0].size).toEqual([170.5, 154]);
});

test('what is out of limits is refused', () => {
  expect(() => dielineOfStyle('straight-tuck', { length: 60, width: 5, depth: 100 })).toThrow(InputError);
  expect(() => dielineOfStyle('round-label', { diameter: NaN })).toThrow(InputError);
});

test.each(['straight-tuck', 'reverse-tuck', 'glued-end-flaps', 'glued-sleeve', 'five-panel-hanger', 'snap-bottom', 'tuck-top-crash-lock-bottom', 'tray-glued-corners', 'tray-no-glue'])('%s: the longer side is given first, and whoever turns them round is told', (id) => {
  expect(() => dielineOfStyle(id, { length: 50, width: 60, depth: 60 })).toThrow(expect.objectContaining({ issues: [expect.objectContaining({ code: 'style-parameter-out-of-limits', where: 'width', facts: expect.objectContaining({ most: 50, mostText: expect.stringMatching(/^ \(the length, which is given first, or \d+ if that is less\)$/) }) })] }));
  expect(() => dielineOfStyle(id, { length: 60, width: 60, depth: 60 })).not.toThrow();
});

/** Worked: from a hinge to the panel opposite a regular hexagon is √3 sides across; the cover is 0.5 mm shorter. */
test('the cover of a hexagonal carton reaches the panel opposite', () => {
  const { flat } = styledBlank('hexagonal', { side: 40, depth: 90 });
  const [hinge, tuck] = ['top cover', 'top tuck'].map((id) => flat.panels.find((panel) => panel.id === id)!.hangsOn!.hinge.from.y);
  expect(tuck! - hinge!).toBeCloseTo(Math.sqrt(3) * 40 - 0.5, 3);
});
