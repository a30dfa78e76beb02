import { describe, expect, test } from 'vitest';
import type { Issue } from '../../src/base/issue.ts';
import { codes, figures, page, read } from './support.ts';

const cut = (content: string) => page(`<g id="cut" fill="none" stroke="black">${content}</g>`);
const located = (issues: readonly Issue[], code: string) => issues.filter((issue) => issue.code === code).map(({ place }) => place);
const RECTANGLE = { size: [100, 60], area: 6000, openings: 0, rules: { Cutting: 320 } };

describe('gaps', () => {
  test('within the tolerance are closed and listed', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10V10.4"/>'));
    expect(figures(dieline)).toEqual([RECTANGLE]);
    expect(located(dieline.issues, 'gap-closed')).toEqual([[10, 10.2]]);
  });

  test('at a corner both lines are lengthened to it', () => {
    const dieline = read(cut('<path d="M10 10H109.7"/><path d="M110 10.3V70H10V10"/>'));
    expect(figures(dieline)).toEqual([RECTANGLE]);
    expect(located(dieline.issues, 'gap-closed')).toEqual([[110, 10]]);
  });

  test('between an end and the side of a line are closed too', () => {
    const dieline = read(cut('<path d="M10 0V80"/><path d="M10.3 10H110V70H10.3"/>'));
    expect(figures(dieline)).toMatchObject([{ size: [100, 60], area: 6000 }]);
    expect(located(dieline.issues, 'gap-closed')).toHaveLength(2);
  });

  test('beyond the tolerance leave no blank, and the place is said', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10V14"/>'));
    expect(dieline.blanks).toEqual([]);
    expect(located(dieline.issues, 'gap-open')).toEqual([[10, 12]]);
    expect(dieline.issues.map(({ severity }) => severity)).toEqual(['error', 'error']);
    expect(figures(read(cut('<path d="M10 10H110V70H10V14"/>'), { closeGaps: 5 }))).toEqual([RECTANGLE]);
  });

  test('an opening in an outline that is open is no blank', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10V14"/><circle cx="60" cy="40" r="5"/>'));
    expect(dieline.blanks).toEqual([]);
    expect(codes(dieline)).toContain('outline-open');
  });

  test('a flap left open is not cut off at its crease', () => {
    const dieline = read(page(`<g stroke="red" id="cut"><path d="M40 60V20H75"/><path d="M80 20H100V60H140V140H10V60H40"/></g><path id="crease" stroke="blue" d="M40 60H100"/>`));
    expect(dieline.blanks).toEqual([]);
    expect(located(dieline.issues, 'gap-open')).toEqual([[77.5, 20]]);
  });

  test('ends nearer than drawings are exact are one, silently', () => {
    const dieline = read(cut('<path d="M10 10H110.01"/><path d="M110 10.01V70H10V9.99"/>'));
    expect(figures(dieline)[0].area).toBeCloseTo(6000, -1);
    expect(dieline.issues).toEqual([]);
  });

  test('slits and creases keep their loose ends', () => {
    const dieline = read(page(`<g id="cut"><path stroke="red" d="M10 10H110V70H10Z"/><path stroke="red" d="M30 30H60M60.3 30H80"/></g><path id="crease" stroke="blue" d="M50 10.3V69.7"/>`));
    expect(figures(dieline)).toEqual([{ ...RECTANGLE, rules: { Cutting: 369.7, Creasing: 59.4 } }]);
    expect(dieline.issues).toEqual([]);
  });
});

describe('doubled lines', () => {
  test('count once, whole or in part, turned round or in other pieces', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10Z"/><path d="M110 10H50"/><path d="M110 20V50M110 50V65"/>'));
    expect(figures(dieline)).toEqual([RECTANGLE]);
    expect(located(dieline.issues, 'line-doubled')).toHaveLength(3);
  });

  test('arcs over arcs of the same circle count once', () => {
    const dieline = read(cut('<circle cx="50" cy="50" r="20"/><path d="M70 50A20 20 0 0 1 35.857864 64.142136"/><path d="M50 30C61.0457 30 70 38.9543 70 50"/>'));
    expect(figures(dieline)[0].rules.Cutting).toBeCloseTo(40 * Math.PI, 1);
    expect(dieline.blanks[0].outline.every(({ kind }) => kind !== 'line')).toBe(true);
  });

  test('of two roles the stronger is kept, and it is said', () => {
    const dieline = read(page(`<path class="cut" stroke="red" d="M10 10H110V70H10Z"/><path class="crease" stroke="blue" d="M110 10V70"/>`));
    expect(figures(dieline)).toEqual([RECTANGLE]);
    expect(dieline.issues).toMatchObject([{ code: 'roles-on-one-line', place: [110, 40], facts: { kept: 'Cutting', lost: 'Creasing', lengthMm: 60 } }]);
  });
});

describe('faults with their places', () => {
  test('lines beyond corners', () => {
    const dieline = read(cut('<path d="M8 10H112"/><path d="M110 10V70"/><path d="M110 70H10"/><path d="M10 70V10"/>'));
    expect(figures(dieline)).toEqual([RECTANGLE]);
    expect(located(dieline.issues, 'overshoot')).toEqual(expect.arrayContaining([[8, 10], [112, 10]]));
    expect(codes(dieline)).toEqual(['overshoot', 't-joint']);
  });

  test('a line that goes on a little inside', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10Z"/><path d="M60 5V10.8"/>'));
    expect(located(dieline.issues, 'overshoot')).toEqual(expect.arrayContaining([[60, 5], [60, 10.8]]));
  });

  test('a line that sticks out', () => {
    const dieline = read(page(`<path class="cut" stroke="red" d="M10 10H110V70H10Z"/><path class="crease" stroke="blue" d="M60 10V95"/>`));
    expect(figures(dieline)).toEqual([{ ...RECTANGLE, rules: { Cutting: 320, Creasing: 60 } }]);
    expect(dieline.issues).toMatchObject([{ code: 'line-sticks-out', place: [60, 95], facts: { byMm: 25, role: 'Creasing' } }]);
  });

  test('a line that crosses itself, is one blank', () => {
    const dieline = read(cut('<path d="M11 10H110V70H10V8L14 12"/><path d="M10 10H11"/>'));
    expect(dieline.blanks).toHaveLength(1);
    expect(located(dieline.issues, 'self-crossing')).toEqual([[12, 10]]);
  });

  test('a T-joint', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10Z"/><path d="M60 10V30"/>'));
    expect(figures(dieline)).toEqual([{ ...RECTANGLE, rules: { Cutting: 340 } }]);
    expect(dieline.issues).toMatchObject([{ code: 't-joint', severity: 'note', place: [60, 10] }]);
  });

  test('lines and pieces without length', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10Z"/><path d="M60 40L60 40"/><line x1="5" y1="5" x2="5" y2="5"/><path d="M30 30H40H40V35"/>'));
    expect(located(dieline.issues, 'zero-length')).toEqual([[60, 40], [5, 5]]);
    expect(located(dieline.issues, 'zero-length-piece')).toEqual([[40, 30]]);
  });

  test('cuts from edge to edge', () => {
    const dieline = read(cut('<path d="M10 10H110V70H10Z"/><path d="M60 10V70"/>'));
    expect(figures(dieline)).toEqual([{ ...RECTANGLE, rules: { Cutting: 380 } }]);
    expect(located(dieline.issues, 'cut-divides-blank')).toEqual([[60, 40]]);
  });

  test('of very many of a kind the first are listed and the rest counted', () => {
    const { issues } = read(cut(`<path d="M10 10H110V70H10Z"/>${'<path d="M60 40L60 40"/>'.repeat(33)}`));
    expect(located(issues, 'zero-length')).toHaveLength(20);
    expect(issues.find(({ code }) => code === 'more-of-the-same')?.facts).toEqual({ code: 'zero-length', count: 13 });
  });
});

describe('openings', () => {
  test('are closed loops of cut lines inside, not meshes of creases', () => {
    const svg = page(`<g class="cut" stroke="red"><path d="M10 10H110V70H10Z"/><circle cx="60" cy="40" r="5"/><path d="M20 20H30V30H20Z"/></g>
      <g class="crease" stroke="blue"><path d="M10 50H110M40 10V70M80 10V70"/><rect x="85" y="55" width="10" height="10"/></g>`);
    const [{ openings, rules }] = figures(read(svg));
    expect(openings).toBe(2);
    expect(rules).toEqual({ Cutting: 391.416, Creasing: 260 });
  });

  test('may hang on the outline by a slit', () => {
    const [{ openings }] = figures(read(cut('<path d="M10 10H110V70H10Z"/><circle cx="60" cy="40" r="5"/><path d="M60 10V35"/>')));
    expect(openings).toBe(1);
  });

  test('within openings are none', () => {
    expect(figures(read(cut('<circle cx="50" cy="50" r="40"/><circle cx="50" cy="50" r="30"/><circle cx="50" cy="50" r="10"/>')))[0].openings).toBe(1);
  });
});

describe('several blanks', () => {
  const svg = cut('<rect x="80" y="12" width="50" height="40"/><rect x="10" y="80" width="20" height="40"/><rect x="10" y="10" width="50" height="40"/><circle cx="200" cy="200" r="1"/>');

  test('are numbered row by row as they are looked at', () => {
    const dieline = read(svg);
    expect(dieline.blanks.map(({ number, box }) => [number, box.minX, -box.maxY])).toEqual([[1, 10, 10], [2, 80, 12], [3, 10, 80]]);
    expect(codes(dieline)).toEqual(['loop-too-small', 'several-blanks']);
  });

  test('that touch in a point are two', () => {
    expect(figures(read(cut('<path d="M10 10H30V30H10Z"/><path d="M30 30H50V50H30Z"/>')))).toMatchObject([{ area: 400 }, { area: 400 }]);
  });

  test('each have their own rules', () => {
    const dieline = read(page(`<g class="cut" stroke="red"><path d="M10 10H30V30H10Z"/><path d="M50 10H80V30H50Z"/></g><path class="crease" stroke="blue" d="M20 10V30M60 10V30M70 10V30"/>`));
    expect(figures(dieline).map(({ rules }) => rules)).toEqual([{ Cutting: 80, Creasing: 20 }, { Cutting: 100, Creasing: 40 }]);
  });
});

describe('true curves', () => {
  test('stay in the outline, from end to end or cut where lines meet them', () => {
    const dieline = read(cut('<path d="M10 30A20 20 0 0 1 50 30"/><path d="M5 30H55"/>'));
    const [{ outline, areaMm2 }] = dieline.blanks;
    expect(areaMm2).toBeCloseTo(200 * Math.PI, 6);
    expect(outline.filter(({ kind }) => kind === 'arc')).toMatchObject([{ radiusX: 20, radiusY: 20 }]);
  });

  test('a cubic loop keeps its four curves', () => {
    const [{ outline }] = read(cut('<path d="M50 10C61 10 70 19 70 30S61 50 50 50 30 41 30 30 39 10 50 10Z"/>')).blanks;
    expect(outline.map(({ kind }) => kind)).toEqual(['cubic', 'cubic', 'cubic', 'cubic']);
  });
});
