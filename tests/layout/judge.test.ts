import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { createJudge, judge, MOST_FAULTS, type Judgement } from '../../src/layout/judge.ts';
import type { Design, LayoutFile } from '../../src/layout/layout-file.ts';
import { judgeForProduction } from '../../src/layout/sound.ts';
import { at, grid, layoutWith, polygonDesign, rectangle } from '../support/layouts.ts';

const box = rectangle('box', 100, 60);
const kinds = (judgement: Judgement) => judgement.faults.map((fault) => fault.kind);
const refusal = (work: () => unknown): string => {
  try {
    work();
  } catch (error) {
    if (error instanceof InputError) return error.issues[0]!.code;
    throw error;
  }
  return 'nothing refused';
};

/** A round label of radius 20 as the drawing has it, and a polygon of tangents around it. */
const TANGENTS = 72;
const round: Design = {
  id: 'round',
  outline: Array.from({ length: TANGENTS }, (_, i) => {
    const angle = ((i + 0.5) * 2 * Math.PI) / TANGENTS;
    const reach = 20 / Math.cos(Math.PI / TANGENTS);
    return [20 + reach * Math.cos(angle), 20 + reach * Math.sin(angle)] as const;
  }),
  openings: [],
  rotations: [0],
  drawing: { outline: 'M40 20 A20 20 0 0 1 20 40 A20 20 0 0 1 0 20 A20 20 0 0 1 20 0 A20 20 0 0 1 40 20 Z', paths: [] },
};

describe('gaps and overlaps', () => {
  test('exactly the gap is sound; 10 µm less is not, and the judge says by how much and where', () => {
    expect(judge(layoutWith([box], [at('box', 10, 10), at('box', 116, 10)])).state).toBe('sound');
    const { faults } = judge(layoutWith([box], [at('box', 10, 10), at('box', 115.99, 30)]));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ kind: 'gap', blanks: [0, 1] });
    expect(faults[0]!.byMm).toBeCloseTo(0.01, 9);
    expect(faults[0]!.place[0]).toBeCloseTo(112.995, 9);
    expect(faults[0]!.place[1]).toBeGreaterThanOrEqual(30);
    expect(faults[0]!.place[1]).toBeLessThanOrEqual(70);
  });

  test('0.002 mm pass, 0.003 mm do not', () => {
    expect(judge(layoutWith([box], [at('box', 10, 10), at('box', 115.998, 10)])).state).toBe('sound');
    expect(judge(layoutWith([box], [at('box', 10, 10), at('box', 115.997, 10)])).state).toBe('faulty');
  });

  test('an overlap is told by its depth', () => {
    const { faults } = judge(layoutWith([box], [at('box', 10, 10), at('box', 109.5, 10)]));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ kind: 'overlap', blanks: [0, 1] });
    expect(faults[0]!.byMm).toBeCloseTo(0.5, 9);
  });

  test.each([
    ['one in the place of the other', [at('box', 10, 10), at('box', 10, 10)]],
    ['crossing like a plus sign, no corner inside the other', [at('bar', 100, 100), at('bar', 160, 60, 90)]],
    ['one wholly inside the other', [at('box', 10, 10), at('small', 40, 30)]],
    ['one in the opening of the other', [at('frame', 10, 10), at('small', 45, 35)]],
    ['a notch filled', [at('notched', 10, 10), at('box', 40, 10)]],
  ])('overlap: %s', (_, placements) => {
    const frame: Design = { ...rectangle('frame', 100, 80), openings: [[[20, 20], [20, 60], [80, 60], [80, 20]]] };
    const notched = polygonDesign('notched', [[0, 0], [100, 0], [100, 60], [60, 60], [60, 30], [40, 30], [40, 60], [0, 60]]);
    const designs = [box, rectangle('bar', 100, 10), rectangle('small', 10, 10), frame, notched];
    expect(kinds(judge(layoutWith(designs, placements)))).toEqual(['overlap']);
  });

  test('touching at gap 0 is sound, also all around and interlocked', () => {
    const notched = polygonDesign('notched', [[0, 0], [100, 0], [100, 60], [60, 60], [60, 30], [40, 30], [40, 60], [0, 60]]);
    const plug = rectangle('plug', 20, 30);
    const rules = { gap: 0, bleed: 0, bleedMeeting: 'apart', commonKnife: false } as const;
    expect(judge(layoutWith([notched, plug], [at('notched', 10, 10), at('plug', 50, 40)], { rules })).state).toBe('sound');
    expect(kinds(judge(layoutWith([notched, plug], [at('notched', 10, 10), at('plug', 50, 39.99)], { rules })))).toEqual(['overlap']);
  });

  test('true curves are measured, not the polygon around them', () => {
    // Along the diagonal, where the polygon has a corner, the polygons come nearer than the circles.
    const diagonal = 46 / Math.SQRT2;
    expect(judge(layoutWith([round], [at('round', 10, 10), at('round', 10 + diagonal, 10 + diagonal)])).state).toBe('sound');
    const nearer = diagonal - 0.01;
    expect(kinds(judge(layoutWith([round], [at('round', 10, 10), at('round', 10 + nearer, 10 + nearer)])))).toEqual(['gap']);
  });

  test('bleeds apart ask for twice the bleed; cut at the middle they ask for the gap alone', () => {
    const placements = [at('box', 10, 10), at('box', 115, 10)];
    const rules = { gap: 4, bleed: 3, bleedMeeting: 'apart', commonKnife: false } as const;
    const { faults } = judge(layoutWith([box], placements, { rules }));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ kind: 'bleed', blanks: [0, 1] });
    expect(faults[0]!.byMm).toBeCloseTo(1, 9);
    expect(judge(layoutWith([box], placements, { rules: { ...rules, bleedMeeting: 'cut' } })).state).toBe('sound');
  });
});

describe('the sheet', () => {
  const areas = { usable: { x: 10, y: 12, width: 980, height: 678 }, printable: { x: 7, y: 9, width: 986, height: 684 } };

  test.each([
    ['at the lower left limit', at('box', 10, 12), []],
    ['at the upper right limit', at('box', 890, 630), []],
    ['10 µm over the left limit', at('box', 9.99, 12), ['outside', 'bleed']],
    ['10 µm over the gripper limit, turned', at('box', 100, 11.99, 90), ['outside', 'bleed']],
    ['10 µm over the tail limit', at('box', 890, 630.01), ['outside', 'bleed']],
    ['10 µm over the right limit', at('box', 890.01, 630), ['outside', 'bleed']],
  ])('%s', (_, placement, expected) => {
    expect(kinds(judge(layoutWith([box], [placement], areas)))).toEqual(expected);
  });

  test('ink further in than knives: only the bleed is missing', () => {
    const printable = { x: 20, y: 9, width: 973, height: 684 };
    const { faults } = judge(layoutWith([box], [at('box', 22, 12)], { ...areas, printable }));
    expect(faults.map(({ kind }) => kind)).toEqual(['bleed']);
    expect(faults[0]!.byMm).toBeCloseTo(1, 9);
  });

  test('a usable area larger than the sheet does not make room', () => {
    const usable = { x: -50, y: -50, width: 2000, height: 2000 };
    expect(kinds(judge(layoutWith([box], [at('box', -5, 10)], { usable, printable: usable })))).toEqual(['outside', 'bleed']);
  });

  const bar = (kind: string) => ({ keepOut: [{ kind, ring: [[0, 300], [1000, 300], [1000, 306], [0, 306]] as const }] });
  test.each([
    ['a bar at bleed 3: 3 mm', 'colour-bar', 3, 3, []],
    ['a bar at bleed 3: 10 µm less', 'colour-bar', 3, 2.99, ['keep-out']],
    ['a bar at bleed 0: 2 mm', 'colour-bar', 0, 2, []],
    ['a bar at bleed 0: 10 µm less', 'colour-bar', 0, 1.99, ['keep-out']],
    ['a spoiled patch at bleed 1: 1 mm', 'spoiled', 1, 1, []],
    ['a spoiled patch at bleed 1: 10 µm less', 'spoiled', 1, 0.99, ['keep-out']],
    ['a spoiled patch at bleed 0: touching', 'spoiled', 0, 0, []],
    ['a spoiled patch at bleed 0: 10 µm inside', 'spoiled', 0, -0.01, ['keep-out']],
  ])('%s', (_, kind, bleed, distance, expected) => {
    const rules = { gap: 6, bleed, bleedMeeting: 'apart', commonKnife: false } as const;
    expect(kinds(judge(layoutWith([box], [at('box', 100, 306 + distance)], { ...bar(kind), rules })))).toEqual(expected);
  });

  test.each([
    ['a keep-out crossing a blank', [[300, 0], [306, 0], [306, 700], [300, 700]]],
    ['a keep-out inside a blank', [[330, 310], [340, 310], [340, 320], [330, 320]]],
    ['a blank inside a keep-out', [[100, 100], [600, 100], [600, 600], [100, 600]]],
  ] as const)('%s', (_, ring) => {
    const { faults } = judge(layoutWith([box], [at('box', 280, 290)], { keepOut: [{ kind: 'spoiled', ring }] }));
    expect(faults.map(({ kind }) => kind)).toEqual(['keep-out']);
    expect(faults[0]!.byMm).toBeGreaterThan(3);
  });

  test('a rotation that the design does not allow', () => {
    const design = { ...box, rotations: [0, 180] };
    expect(kinds(judge(layoutWith([design], [at('box', 300, 300, 90)])))).toEqual(['rotation']);
    expect(judge(layoutWith([design], [at('box', 300, 300, -180), at('box', 300, 306, 360)])).state).toBe('sound');
  });
});

describe('the common knife', () => {
  const rules = { gap: 6, bleed: 3, bleedMeeting: 'apart', commonKnife: true } as const;
  const judged = (placements: LayoutFile['placements'], designs: readonly Design[] = [box]) => kinds(judge(layoutWith(designs, placements, { rules })));

  test('a shared straight edge on one line is no fault, also shifted along it', () => {
    expect(judged([at('box', 10, 10), at('box', 110, 10)])).toEqual([]);
    expect(judged([at('box', 10, 10), at('box', 110, 40)])).toEqual([]);
    expect(judged([at('box', 10, 10), at('box', 110, 10), at('box', 10, 70), at('box', 110, 70)])).toEqual([]);
  });

  test.each([
    ['10 µm beside the line', [at('box', 10, 10), at('box', 110.01, 10)], ['gap']],
    ['10 µm over the line', [at('box', 10, 10), at('box', 109.99, 10)], ['overlap']],
    ['a corner on the middle of a side', [at('box', 10, 10), at('slant', 60, 70)], ['gap']],
    ['corners that meet where no lines run on', [at('box', 10, 10), at('slant', 110, 70)], ['gap']],
  ])('%s', (_, placements, expected) => {
    const slant = polygonDesign('slant', [[0, 0], [50, 20], [20, 50]]);
    expect(judged(placements, [box, slant])).toEqual(expected);
  });

  test('two knives near one another far from the shared line are a fault', () => {
    // It shares both ends of the neighbour's side and stands 3 mm from the middle of it.
    const inset = polygonDesign('inset', [[0, 0], [100, 0], [100, 60], [0, 60], [0, 45], [3, 45], [3, 15], [0, 15]]);
    expect(judged([at('box', 10, 10), at('inset', 110, 10)], [box, inset])).toEqual(['gap']);
  });

  test('without leave it is a gap fault', () => {
    expect(kinds(judge(layoutWith([box], [at('box', 10, 10), at('box', 110, 10)])))).toEqual(['gap']);
  });
});

describe('outline and true curves', () => {
  const scaled = (by: number): Design => ({ ...round, outline: round.outline.map(([x, y]) => [20 + (x - 20) * by, 20 + (y - 20) * by] as const) });

  test('a polygon that holds the curve closely is right', () => {
    expect(judge(layoutWith([round], [at('round', 10, 10)])).state).toBe('sound');
  });

  test.each([
    ['cuts into the curve by 10 µm', scaled(1 - 0.01 / 20)],
    ['lies far outside it', scaled(1.01)],
  ])('a polygon that %s is a fault of all blanks of the design', (_, design) => {
    const { faults } = judge(layoutWith([design], [at('round', 10, 10), at('round', 100, 10)]));
    expect(faults.map(({ kind }) => kind)).toEqual(['outline']);
    expect(faults[0]!.blanks).toEqual([0, 1]);
  });

  test('a spike into the curve between its sampled points is found', () => {
    const outline = [...round.outline.slice(0, 5), [20, 20] as const, ...round.outline.slice(5)];
    expect(kinds(judge(layoutWith([{ ...round, outline }], [at('round', 10, 10)])))).toEqual(['outline']);
  });

  test('without a named outline the cutting paths are held against the polygon', () => {
    const drawing = (d: string) => ({ ...round, drawing: { paths: [{ role: 'Cutting', d }] } });
    const diagonal = 46 / Math.SQRT2;
    const pair = [at('round', 10, 10), at('round', 10 + diagonal, 10 + diagonal)];
    expect(judge(layoutWith([drawing(round.drawing!.outline!)], pair)).state).toBe('sound');
    expect(kinds(judge(layoutWith([drawing('M41 20 A21 21 0 0 1 -1 20 A21 21 0 0 1 41 20 Z')], [at('round', 10, 10)])))).toEqual(['outline']);
    const loose = { ...box, drawing: { paths: ['M0 0 H100', 'M100 60 V0', 'M0 60 H100', 'M0 0 V60', 'M50 0 V30'].map((d) => ({ role: 'Cutting', d })) } };
    expect(judge(layoutWith([loose], [at('box', 10, 10)])).state).toBe('sound');
    const short = { ...box, drawing: { paths: [{ role: 'Cutting', d: 'M0 0 H100 V50' }] } };
    expect(kinds(judge(layoutWith([short], [at('box', 10, 10)])))).toEqual(['outline']);
  });
});

describe('what cannot be judged', () => {
  test.each<[string, LayoutFile, string]>([
    ['no placements', layoutWith([box], []), 'no-placements'],
    ['an unknown design', layoutWith([box], [at('bag', 0, 0)]), 'design-unknown'],
    ['a design named twice', layoutWith([box, rectangle('box', 5, 5)], [at('box', 10, 10)]), 'design-twice'],
    ['a rotation of 45', layoutWith([box], [at('box', 10, 10, 45)]), 'rotation-not-quarter'],
    ['a bow tie', layoutWith([polygonDesign('tie', [[0, 0], [10, 10], [10, 0], [0, 10]])], [at('tie', 10, 10)]), 'ring-not-simple'],
    ['a line there and back', layoutWith([polygonDesign('line', [[0, 0], [10, 0], [5, 0]])], [at('line', 10, 10)]), 'ring-not-simple'],
    ['a crossed opening', layoutWith([{ ...box, openings: [[[10, 10], [20, 20], [20, 10], [10, 20]]] }], [at('box', 10, 10)]), 'ring-not-simple'],
    ['a crossed keep-out', layoutWith([box], [at('box', 10, 10)], { keepOut: [{ kind: 'x', ring: [[10, 10], [20, 20], [20, 10], [10, 20]] }] }), 'ring-not-simple'],
    ['path data that is none', layoutWith([{ ...box, drawing: { outline: 'M0 0 X', paths: [] } }], [at('box', 10, 10)]), 'path-data-not-valid'],
    ['a true outline of two loops', layoutWith([{ ...box, drawing: { outline: 'M0 0 H100 V60 H0 Z M0 0 H9 V9 Z', paths: [] } }], [at('box', 10, 10)]), 'true-outline-not-one-loop'],
  ])('%s', (_, layout, code) => {
    expect(refusal(() => judge(layout))).toBe(code);
  });
});

describe('every change to a tight layout is caught, down to 10 µm', () => {
  // An L, so that turning and swapping show; bars of two sizes between.
  const bracket = polygonDesign('bracket', [[0, 0], [90, 0], [90, 30], [30, 30], [30, 70], [0, 70]]);
  const tile = rectangle('tile', 54, 34);
  const rules = { gap: 6, bleed: 3, bleedMeeting: 'apart', commonKnife: false } as const;
  const cell = (x: number, y: number) => [at('bracket', x, y), at('tile', x + 36, y + 36)];
  const placements = [0, 1, 2, 3].flatMap((i) => [0, 1, 2].flatMap((j) => cell(10 + i * 96, 12 + j * 76)));
  const tight = layoutWith([bracket, tile], placements, {
    sheet: { width: 398, height: 246 },
    usable: { x: 10, y: 12, width: 378, height: 222 },
    printable: { x: 7, y: 9, width: 384, height: 228 },
    rules,
  });
  const changed = (i: number, change: Partial<LayoutFile['placements'][number]>) => ({ ...tight, placements: placements.map((p, k) => (k === i ? { ...p, ...change } : p)) });
  const index = fc.integer({ min: 0, max: placements.length - 1 });
  const replay = { seed: 20261, numRuns: 200 };

  test('as it stands it is sound, and only then something for production comes of it', () => {
    const { judgement, sound } = judgeForProduction(tight);
    expect(judgement).toEqual({ state: 'sound', faults: [], cutShort: false });
    expect(sound).toEqual(tight);
    expect(judgeForProduction(changed(0, { x: 0 })).sound).toBeUndefined();
  });

  test('shift', () => {
    const amount = fc.integer({ min: 10, max: 100_000 }).map((microns) => microns / 1000);
    fc.assert(
      fc.property(index, amount, fc.constantFrom([1, 0], [-1, 0], [0, 1], [0, -1]), (i, by, [x, y]) => {
        const { faults } = judge(changed(i, { x: placements[i]!.x + by * x!, y: placements[i]!.y + by * y! }));
        expect(faults.some((fault) => fault.blanks.includes(i))).toBe(true);
      }),
      replay,
    );
  });

  test('turn', () => {
    fc.assert(fc.property(index, fc.constantFrom(90, 180, 270), (i, rotation) => judge(changed(i, { rotation })).state === 'faulty'), replay);
  });

  test('swap', () => {
    fc.assert(
      fc.property(index, index, (i, j) => {
        fc.pre(placements[i]!.design !== placements[j]!.design);
        const [a, b] = [placements[i]!, placements[j]!];
        const swapped = placements.map((p, k) => (k === i ? { ...p, design: b.design } : k === j ? { ...p, design: a.design } : p));
        expect(judge({ ...tight, placements: swapped }).state).toBe('faulty');
      }),
      replay,
    );
  });

  test('add: there is no room for one more, anywhere', () => {
    const place = fc.record({ x: fc.double({ min: 0, max: 398, noNaN: true }), y: fc.double({ min: 0, max: 246, noNaN: true }), rotation: fc.constantFrom(0, 90, 180, 270) });
    fc.assert(fc.property(fc.constantFrom('bracket', 'tile'), place, (design, p) => judge({ ...tight, placements: [...placements, { design, ...p }] }).state === 'faulty'), replay);
  });

  test('drop: stays sound, and dropping an offender heals', () => {
    fc.assert(
      fc.property(index, (i) => {
        expect(judge({ ...tight, placements: placements.filter((_, k) => k !== i) }).state).toBe('sound');
        const moved = changed(i, { x: placements[i]!.x + 1 });
        expect(judge({ ...moved, placements: moved.placements.filter((_, k) => k !== i) }).state).toBe('sound');
      }),
      replay,
    );
  });

  test('a wider gap or bleed, a smaller sheet, a bar', () => {
    expect(kinds(judge({ ...tight, rules: { ...rules, gap: 6.01 } })).every((kind) => kind === 'gap')).toBe(true);
    expect(judge({ ...tight, rules: { ...rules, gap: 6.01 } }).state).toBe('faulty');
    expect(new Set(kinds(judge({ ...tight, rules: { ...rules, bleed: 3.01 } })))).toEqual(new Set(['bleed']));
    expect(kinds(judge({ ...tight, usable: { ...tight.usable, width: 377.99 } })).every((kind) => kind === 'outside')).toBe(true);
    expect(judge({ ...tight, keepOut: [{ kind: 'colour-bar', ring: [[0, 236.99], [398, 236.99], [398, 242], [0, 242]] }] }).faults.every((fault) => fault.kind === 'keep-out')).toBe(true);
    expect(judge({ ...tight, keepOut: [{ kind: 'colour-bar', ring: [[0, 237], [398, 237], [398, 242], [0, 242]] }] }).state).toBe('sound');
  });

  test('the whole sheet turned by a quarter judges alike', () => {
    const turnedLayout: LayoutFile = {
      ...tight,
      sheet: { width: 246, height: 398 },
      usable: { x: 12, y: 10, width: 222, height: 378 },
      printable: { x: 9, y: 7, width: 228, height: 384 },
      placements: placements.map(({ design, x, y }) => ({ design, rotation: 90, x: 246 - y, y: x })),
    };
    expect(judge(turnedLayout).state).toBe('sound');
    const nudged = { ...turnedLayout, placements: turnedLayout.placements.map((p, i) => (i === 7 ? { ...p, y: p.y + 0.01 } : p)) };
    expect(judge(nudged).faults.some((fault) => fault.blanks.includes(7))).toBe(true);
  });
});

test('whoever waits is told at every design, blank and pair of neighbours that the work goes on', () => {
  let told = 0;
  const placements = grid(rectangle('a', 50, 40), { columns: 4, rows: 3, step: [56, 46], from: [100, 100] });
  expect(judge(layoutWith([rectangle('a', 50, 40)], placements), () => told++).state).toBe('sound');
  // 3 × 3 pairs in rows and 2 × 4 in columns; corner to corner they are near as well.
  expect(told).toBeGreaterThanOrEqual(1 + 12 + 17);
});

describe('speed', () => {
  /** A carton-like outline of about 300 points: four flaps with corners rounded finely. */
  const flaps: Design = polygonDesign('flaps', Array.from({ length: 4 }, (_, side) =>
    Array.from({ length: 75 }, (_, i) => {
      const angle = (i / 74) * Math.PI;
      const [u, v] = [15 - 10 * Math.cos(angle), -8 * Math.sin(angle) ** 0.5];
      return ([[u, v + 8], [30 - v, u + 8], [30 - u, 38 - v], [v, 38 - u]] as const)[side]!;
    })).flat().map(([x, y]) => [Math.round((x! + 8) * 1000) / 1000, Math.round(y! * 1000) / 1000] as const));

  test('500 blanks of 300 points, no two alike in their surroundings, in well under a second', () => {
    const placements = grid(flaps, { columns: 25, rows: 20, step: [45, 52], from: [10, 10] }).map((p, i) => ({ ...p, x: p.x + ((i * 7919) % 997) / 1000, y: p.y + ((i * 104_729) % 991) / 1000 }));
    const layout = layoutWith([flaps], placements, { sheet: { width: 1200, height: 1100 }, usable: { x: 0, y: 0, width: 1200, height: 1100 }, printable: { x: 0, y: 0, width: 1200, height: 1100 }, rules: { gap: 6, bleed: 0, bleedMeeting: 'apart', commonKnife: false } });
    expect(flaps.outline.length).toBeGreaterThan(290);
    const judgeFrame = createJudge(layout);
    const start = performance.now();
    const first = judgeFrame(placements);
    const once = performance.now() - start;
    expect(once).toBeLessThan(2000);
    const again = performance.now();
    expect(judgeFrame(placements)).toEqual(first);
    expect(performance.now() - again).toBeLessThan(200);
  });

  test('a heap of blanks stops at the most faults told', () => {
    const placements = Array.from({ length: 2000 }, (_, i) => at('box', 10 + (i % 50) / 100, 10));
    const judgement = judge(layoutWith([box], placements));
    expect(judgement.faults).toHaveLength(MOST_FAULTS);
    expect(judgement.cutShort).toBe(true);
  });
});
