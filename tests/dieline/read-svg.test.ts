import { describe, expect, test } from 'vitest';
import { loopArea } from '../../src/geometry/loop-area.ts';
import { codes, figures, page, read } from './support.ts';

describe('a named drawing', () => {
  const svg = page(`
    <g id="Cut" fill="none" stroke="red"><path d="M10 10H110V70H10Z"/><circle cx="60" cy="20" r="4"/><path d="M20 40H30"/></g>
    <g id="Rillen" fill="none" stroke="green"><path d="M60 10V70"/></g>`);

  test('gives outline, openings, slits and creases with their lengths', () => {
    const dieline = read(svg);
    expect(figures(dieline)).toEqual([{ size: [100, 60], area: 6000, openings: 1, rules: { Cutting: 355.133, Creasing: 60 } }]);
    expect(dieline.issues).toEqual([]);
  });

  test('outlines run counter-clockwise and openings clockwise, y up', () => {
    const [{ outline, openings }] = read(svg).blanks;
    expect(loopArea(outline)).toBeCloseTo(6000, 9);
    expect(loopArea(openings[0])).toBeCloseTo(-16 * Math.PI, 9);
    expect(openings[0].every(({ kind }) => kind === 'arc')).toBe(true);
  });
});

describe('two kinds of line without names', () => {
  test('give the outline from all of them and leave the inner lines open', () => {
    const dieline = read(page(`<g fill="none"><path stroke="black" d="M10 10H110V70H10Z"/><path stroke="red" d="M60 10V70"/></g>`));
    expect(figures(dieline)).toEqual([{ size: [100, 60], area: 6000, openings: 0, rules: { Cutting: 320, Unknown: 60 } }]);
    expect(codes(dieline)).toEqual(['outline-from-all-lines', 'role-unknown']);
  });
});

describe('loose segments', () => {
  const sides = ['M10 10H110', 'M110 10V70', 'M10 70H110', 'M10 70V10'].map((d) => `<path d="${d}"/>`);

  test('join in any order and direction', () => {
    const dieline = read(page(`<g fill="none" stroke="black">${sides.toReversed().join('')}</g>`));
    expect(figures(dieline)).toEqual([{ size: [100, 60], area: 6000, openings: 0, rules: { Cutting: 320 } }]);
    expect(codes(dieline)).toEqual(['one-kind-is-cut']);
  });

  test('close over a small gap, which is listed with its place', () => {
    const dieline = read(page(`<g fill="none" stroke="black">${sides.slice(1).join('')}<path d="M10 10H109.7"/></g>`));
    expect(figures(dieline)[0]).toMatchObject({ size: [100, 60], area: 6000 });
    expect(dieline.issues.find(({ code }) => code === 'gap-closed')).toMatchObject({ severity: 'warning', place: [109.85, 10], facts: { widthMm: expect.closeTo(0.3, 6) } });
  });
});
