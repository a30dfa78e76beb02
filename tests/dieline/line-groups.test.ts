import { describe, expect, test } from 'vitest';
import { parseRoleRule } from '../../src/dieline/role-rule.ts';
import { page, read } from './support.ts';

const rules = (...texts: string[]) => texts.map((text) => parseRoleRule(text, 'role'));
const OUTLINE = '<path d="M10 10H110V70H10Z"/>';
const drawing = (inner: string) => page(`<g fill="none" stroke="#000000">${OUTLINE}${inner}</g>`);

describe('lines that one rule can speak of', () => {
  test('by layer where they lie in one, else by colour; the longest first', () => {
    const { lineGroups } = read(page(`<g fill="none" stroke="#000000"><g id="cut">${OUTLINE}</g><g id="K1" stroke="#0000ff"><path d="M60 10V70"/></g></g><path d="M30 10V50" fill="none" stroke="#ff0000"/>`));
    expect(lineGroups?.map(({ subject, value, dash, roles }) => [subject, value, dash, roles])).toEqual([
      ['layer', 'cut', undefined, ['Cutting']],
      ['layer', 'K1', undefined, ['Unknown']],
      ['stroke', '#ff0000', undefined, ['Unknown']],
    ]);
    expect(lineGroups?.map(({ lengthMm }) => Math.round(lengthMm))).toEqual([320, 60, 40]);
  });

  test('dashed and solid ones of one colour apart, each said by a rule of its own', () => {
    const svg = drawing('<path d="M60 10V70" stroke-dasharray="2 1"/>');
    const group =  (...texts: string[]) => (read(svg, { roles: rules(...texts) })).lineGroups?.map(({ value, dash, roles }) => [value, dash, ...roles]);
    expect(group()).toEqual([['#000000', 'none', 'Cutting'], ['#000000', 'any', 'Creasing']]);
    expect(group('Perforating=stroke:#000000 & dash:any')).toEqual([['#000000', 'none', 'Cutting'], ['#000000', 'any', 'Perforating']]);
  });

  test('one colour with several roles names them all', () => {
    const { lineGroups } = read(page(`<g fill="none" stroke="#ff0000">${OUTLINE}<path d="M60 10V70"/></g><path d="M30 10V70" fill="none" stroke="#00ff00"/>`));
    expect(lineGroups?.find(({ value }) => value === '#ff0000')?.roles).toEqual(['Cutting', 'Unknown']);
  });
});

describe('what was said of earlier drawings', () => {
  const named = page(`<g fill="none" stroke="#000000"><g id="cut">${OUTLINE}</g><g id="creases"><path d="M60 10V70"/></g></g>`);

  test('a colour said elsewhere gives way to names', () => {
    const { blanks } = read(named, { habits: rules('Perforating=stroke:#000000') });
    expect(new Set(blanks[0]!.rules.map(({ role }) => role))).toEqual(new Set(['Cutting', 'Creasing']));
  });

  test('a layer said elsewhere stands above what its name seems to mean, and one that fits nothing is no fault', () => {
    const { blanks, issues } = read(named, { habits: rules('Perforating=layer:creases', 'Cutting=layer:elsewhere') });
    expect(new Set(blanks[0]!.rules.map(({ role }) => role))).toEqual(new Set(['Cutting', 'Perforating']));
    expect(issues.map(({ code }) => code)).not.toContain('role-rule-unused');
  });

  test('what is said of this drawing stands above what was said of others', () => {
    const { blanks } = read(named, { roles: rules('Creasing=layer:creases'), habits: rules('Perforating=layer:creases') });
    expect(blanks[0]!.rules.map(({ role }) => role)).toContain('Creasing');
  });
});
