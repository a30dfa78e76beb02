import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createJudge } from '../../../src/layout/judge.ts';
import { beginMove, snap } from '../../../src/desk/hand/snapping/snap.ts';
import { placedBlank } from '../../../src/desk/hand/document.ts';
import { starRings } from '../../support/rings.ts';
import { layoutWith, at } from '../../support/layouts.ts';
import { carton, designOf, laid, rectangles, type Laid } from './frames.ts';

/** Moves blank 1 among the others. */
function moving({ document, frame }: Laid) {
  return beginMove([document.blanks[0]], document.blanks.slice(1), frame);
}

describe('snapping', () => {
  test('goes to exactly the gap beside a neighbour, in line with it', () => {
    const { frame, document } = rectangles([at('card', 500, 300), at('card', 20, 20)]);
    const to = snap(frame, beginMove([document.blanks[0]], [document.blanks[1]], frame), { x: -373_100.4, y: -279_200 }, 1500);
    // 20 + 100 + 6 = 126, on the neighbour's own level.
    expect(to).toMatchObject({ snapped: true, shift: { x: 126_000 - 500_000, y: 20_000 - 300_000 }, touching: { x: true } });
    expect(to.lines.map(({ axis, kind }) => `${axis} ${kind}`)).toContain('y align');
  });

  test('goes to the edges of the usable area, two at once in the corner, from inside and from outside', () => {
    const { frame, document } = rectangles([at('card', 500, 300)]);
    const move = beginMove(document.blanks, [], frame);
    for (const [x, y] of [[10_700, 11_200], [9_100, 9_600], [9_100, 11_000]]) {
      const to = snap(frame, move, { x: x - 500_000, y: y - 300_000 }, 2000);
      expect(to).toMatchObject({ snapped: true, shift: { x: -490_000, y: -290_000 }, touching: { x: true, y: true } });
    }
  });

  test('continues equal steps, and stands between two neighbours', () => {
    const { frame, document } = rectangles([at('card', 500, 300), at('card', 20, 20), at('card', 150, 20), at('card', 700, 20)]);
    const move = beginMove([document.blanks[0]], document.blanks.slice(1), frame);
    const next = snap(frame, move, { x: 280_400 - 500_000, y: 20_300 - 300_000 }, 1000);
    expect(next).toMatchObject({ snapped: true, shift: { x: 280_000 - 500_000, y: -280_000 } });
    expect(next.lines.some(({ kind, axis }) => kind === 'step' && axis === 'x')).toBe(true);
    const between = snap(frame, move, { x: 424_600 - 500_000, y: 20_300 - 300_000 }, 1000);
    expect(between.shift.x).toBe(425_000 - 500_000);
  });

  test('slides along a slanted neighbour: the place follows the pointer and stays as near as the gap allows', () => {
    const wedge = designOf('wedge', [{ x: 0, y: 0 }, { x: 120_000, y: 0 }, { x: 0, y: 90_000 }]);
    const { frame, document, layout } = laid(layoutWith([wedge], [at('wedge', 400, 300, 180), at('wedge', 200, 200)]));
    const judge = createJudge(layout);
    const move = beginMove([document.blanks[0]], [document.blanks[1]], frame);
    const places = Array.from({ length: 20 }, (_, i) => {
      // Along a line that runs 0.8 mm inside the forbidden side of the contact (direction 4 : −3).
      const wanted = { x: -128_000 + i * 1700, y: 32_500 - i * 1275 };
      const to = snap(frame, move, wanted, 2500);
      const placements = [{ ...document.blanks[0], x: 400_000 + to.shift.x, y: 300_000 + to.shift.y }, document.blanks[1]].map((blank) => placedBlank(frame, blank));
      expect(judge(placements).state).toBe(to.snapped ? 'sound' : judge(placements).state);
      return to;
    });
    const slid = places.filter(({ snapped, touching }) => snapped && (touching.x || touching.y));
    expect(slid.length).toBeGreaterThan(12);
    // Nearer by 3 µm in both directions is too near: it stands at contact, not merely somewhere free.
    for (const { shift } of slid) {
      const nearer = [{ ...document.blanks[0], x: 400_000 + shift.x - 3, y: 300_000 + shift.y - 3 }, document.blanks[1]].map((blank) => placedBlank(frame, blank));
      expect(judge(nearer).state).toBe('faulty');
    }
  });

  test('every snapped place is valid by the judge, whole, and no farther than the reach', () => {
    const scene = fc.record({
      ring: starRings(12, 60_000),
      standing: fc.array(fc.record({ x: fc.integer({ min: 100_000, max: 700_000 }), y: fc.integer({ min: 100_000, max: 500_000 }), turn: fc.integer({ min: 0, max: 3 }) }), { maxLength: 4 }),
      turn: fc.integer({ min: 0, max: 3 }),
      // Beside one of the standing blanks, or of a corner of the sheet.
      beside: fc.integer({ min: 0, max: 4 }),
      by: fc.record({ x: fc.double({ min: -130_000, max: 130_000, noNaN: true }), y: fc.double({ min: -130_000, max: 130_000, noNaN: true }) }),
      reach: fc.integer({ min: 0, max: 40_000 }),
      gap: fc.integer({ min: 0, max: 8 }),
    });
    let snappedTimes = 0;
    fc.assert(
      fc.property(scene, ({ ring, standing, turn, beside, by, reach, gap }) => {
        const near = standing[beside] ?? { x: 50_000, y: 50_000 };
        const wanted = { x: near.x + by.x, y: near.y + by.y };
        const design = designOf('star', ring);
        const placements = [at('star', 500, 300, 90 * turn), ...standing.map((place) => at('star', place.x / 1000, place.y / 1000, 90 * place.turn))];
        const layout = layoutWith([design], placements, {
          rules: { gap, bleed: gap / 2, bleedMeeting: 'apart', commonKnife: false },
          usable: { x: 15, y: 20, width: 970, height: 660 },
          keepOut: [{ kind: 'colour-bar', ring: [[0, 690], [1000, 690], [1000, 696], [0, 696]] }, { kind: 'spoiled', ring: [[400, 400], [450, 410], [430, 470]] }],
        });
        const scene = laid(layout);
        const to = snap(scene.frame, moving(scene), { x: wanted.x - 500_000, y: wanted.y - 300_000 }, reach);
        expect(Number.isSafeInteger(to.shift.x) && Number.isSafeInteger(to.shift.y)).toBe(true);
        const far = Math.hypot(to.shift.x - (wanted.x - 500_000), to.shift.y - (wanted.y - 300_000));
        if (!to.snapped) {
          expect(far).toBeLessThan(0.72);
          return;
        }
        snappedTimes++;
        expect(far).toBeLessThanOrEqual(reach);
        const moved = scene.document.blanks.map((blank, i) => (i === 0 ? { ...blank, x: blank.x + to.shift.x, y: blank.y + to.shift.y } : blank));
        const faults = createJudge(layout)(moved.map((blank) => placedBlank(scene.frame, blank))).faults.filter(({ blanks }) => blanks.includes(0));
        expect(faults).toEqual([]);
      }),
      { numRuns: 300 },
    );
    expect(snappedTimes).toBeGreaterThan(40);
  });

  test('a group moves as one: every blank of it keeps the rules', () => {
    const design = carton();
    const layout = layoutWith([design], [at('carton', 20, 20), at('carton', 240, 20), at('carton', 600, 20)], { sheet: { width: 1400, height: 1000 }, usable: { x: 0, y: 0, width: 1400, height: 1000 }, printable: { x: -10, y: -10, width: 1420, height: 1020 } });
    const { frame, document } = laid(layout);
    const to = snap(frame, beginMove(document.blanks.slice(0, 2), document.blanks.slice(2), frame), { x: 140_000, y: 700 }, 5000);
    expect(to.snapped).toBe(true);
    const moved = document.blanks.map((blank, i) => (i < 2 ? { ...blank, x: blank.x + to.shift.x, y: blank.y + to.shift.y } : blank));
    expect(frame.judge(moved.map((blank) => placedBlank(frame, blank))).faults.filter(({ blanks }) => !blanks.every((n) => n < 2))).toEqual([]);
  });

  test('where knives may be shared, edge on edge; elsewhere the gap is kept', () => {
    const commonKnife = { gap: 6, bleed: 0, bleedMeeting: 'apart', commonKnife: true } as const;
    const { frame, document } = rectangles([at('card', 500, 300), at('card', 20, 20)], { rules: commonKnife });
    const move = beginMove([document.blanks[0]], [document.blanks[1]], frame);
    expect(snap(frame, move, { x: -379_300, y: -279_600 }, 1500)).toMatchObject({ snapped: true, shift: { x: 120_000 - 500_000, y: 20_000 - 300_000 } });
    // Half beside it they still share the edge that they have in common.
    expect(snap(frame, move, { x: -379_300, y: -250_000 }, 1500)).toMatchObject({ snapped: true, shift: { x: 120_000 - 500_000, y: -250_000 } });
    expect(snap(frame, move, { x: -373_600, y: -279_600 }, 1500).shift.x).toBe(126_000 - 500_000);
  });

  test('with no reach, or far from everything, the wanted place is kept', () => {
    const { frame, document } = rectangles([at('card', 500, 300), at('card', 20, 20)]);
    const move = beginMove([document.blanks[0]], [document.blanks[1]], frame);
    expect(snap(frame, move, { x: -370_000.4, y: 12.6 }, 0)).toMatchObject({ snapped: false, shift: { x: -370_000, y: 13 } });
    expect(snap(frame, move, { x: 47_000, y: 33_000 }, 1000)).toMatchObject({ snapped: false });
  });
});
