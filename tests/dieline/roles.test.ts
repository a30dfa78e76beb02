import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { grainOf } from '../../src/dieline/grain.ts';
import { wordsOf } from '../../src/dieline/names.ts';
import { parseRoleRule } from '../../src/dieline/role-rule.ts';
import { readSvg } from '../../src/dieline/svg-drawing.ts';
import { roleOfName } from '../../src/dieline/vocabulary.ts';
import { codes, figures, page, read } from './support.ts';

const rules = (...texts: string[]) => ({ roles: texts.map((text) => parseRoleRule(text, '--role')) });

describe('words of a name', () => {
  test.each([
    ['Stanz-Linie_2', ['stanz', 'linie']],
    ['StanzLinie', ['stanz', 'linie']],
    ['Rilllinie_x0020_2', ['rilllinie']],
    ['DÉCOUPE', ['decoupe']],
    ['cut+crease', ['cut', 'and', 'crease']],
    ['Maße', ['masse']],
  ])('%s', (name, words) => {
    expect(wordsOf(name)).toEqual(words);
  });
});

describe('names and their roles', () => {
  test.each([
    // The standard's own names.
    ['Cutting', 'Cutting'], ['CuttingCreasing', 'CuttingCreasing'], ['reverse_creasing', 'ReverseCreasing'], ['Varnish Free', 'VarnishFree'], ['InkVarnishFree', 'InkVarnishFree'], ['PartialCutting', 'PartialCutting'], ['Folding', 'Folding'],
    // English.
    ['cut', 'Cutting'], ['CutContour', 'Cutting'], ['knife-lines', 'Cutting'], ['Crease 2', 'Creasing'], ['fold lines', 'Creasing'], ['score', 'Creasing'], ['perf', 'Perforating'], ['half-cut', 'PartialCutting'], ['kiss cut', 'PartialCutting'], ['cut-crease', 'CuttingCreasing'], ['glue area', 'Gluing'], ['Bleed', 'Bleed'], ['dimensions', 'Dimensions'], ['varnish-free', 'VarnishFree'],
    // German.
    ['Stanzlinie', 'Cutting'], ['Schneiden', 'Cutting'], ['Messer', 'Cutting'], ['Rilllinien', 'Creasing'], ['Rillung', 'Creasing'], ['Nut', 'Creasing'], ['Perforation', 'Perforating'], ['Ritzen', 'PartialCutting'], ['Klebefläche', 'Gluing'], ['Beschnitt', 'Bleed'], ['Bemaßung', 'Dimensions'], ['Lackaussparung', 'VarnishFree'], ['Schriftfeld', 'Legend'],
    // French.
    ['Découpe', 'Cutting'], ['filets coupants', 'Cutting'], ['Rainage', 'Creasing'], ['refoulage', 'Creasing'], ['plis', 'Creasing'], ['mi-chair', 'PartialCutting'], ['encollage', 'Gluing'], ['fond perdu', 'Bleed'], ['Cotes', 'Dimensions'], ['réserve vernis', 'VarnishFree'],
    // Spanish.
    ['Corte', 'Cutting'], ['cuchilla', 'Cutting'], ['Hendido', 'Creasing'], ['pliegues', 'Creasing'], ['Perforado', 'Perforating'], ['medio corte', 'PartialCutting'], ['zona de cola', 'Gluing'], ['Sangrado', 'Bleed'], ['cotas', 'Dimensions'],
    // Italian.
    ['Taglio', 'Cutting'], ['Cordonatura', 'Creasing'], ['pieghe', 'Creasing'], ['perforazione', 'Perforating'], ['mezzo taglio', 'PartialCutting'], ['incollaggio', 'Gluing'], ['abbondanza', 'Bleed'], ['quote', 'Dimensions'],
    // Names of the whole line work leave the role open.
    ['Dieline', 'whole dieline'], ['Stanze', 'whole dieline'], ['fustella', 'whole dieline'], ['troquel', 'whole dieline'], ['outline', 'whole dieline'], ['cut + crease', 'whole dieline'], ['Stanz- und Rilllinien', 'whole dieline'],
    // Parts of the carton and other words say nothing.
    ['glue flap', undefined], ['Klebelasche', undefined], ['Layer 1', undefined], ['path1234', undefined], ['cls-1', undefined], ['panel', undefined], ['cutlery', undefined], ['haircut', undefined],
  ])('%s: %s', (name, role) => {
    expect(roleOfName(name)).toBe(role);
  });
});

const OUTLINE = '<path d="M10 10H110V70H10Z"/>';
const INNER = '<path d="M60 10V70"/>';
const cutAndInner = (attributes: string) => page(`<g fill="none" stroke="black"><g id="cut">${OUTLINE}</g><g stroke="red" ${attributes}>${INNER}</g></g>`);

describe('where a name may stand', () => {
  test.each([
    ['id', 'id="crease"'],
    ['class', 'class="k1 crease"'],
    ['label of a layer', 'xmlns:ink="urn:x" ink:label="Rillen"'],
    ['label without a declared prefix', 'ink:label="Rillen"'],
    ['data attribute', 'data-name="Crease"'],
    ['id in another namespace', 'serif:id="crease"'],
  ])('%s', (_, attributes) => {
    expect(figures(read(cutAndInner(attributes)))[0].rules).toEqual({ Cutting: 320, Creasing: 60 });
  });

  test('title', () => {
    const svg = page(`<g fill="none" stroke="black"><g><title>Cut</title>${OUTLINE}</g><g><title>Rainage</title>${INNER}</g></g>`);
    expect(figures(read(svg))[0].rules).toEqual({ Cutting: 320, Creasing: 60 });
  });

  test('the nearest one counts', () => {
    const svg = page(`<g id="cut" fill="none" stroke="black">${OUTLINE}<g><path class="perf" d="M60 10V70"/></g></g>`);
    expect(figures(read(svg))[0].rules).toEqual({ Cutting: 320, Perforating: 60 });
  });

  test('a name of the whole gives way to a layer of one role, and holds within artwork', () => {
    expect(figures(read(page(`<g id="cut" stroke="black" fill="none"><path id="outline" d="M10 10H110V70H10Z"/></g>`)))[0].rules).toEqual({ Cutting: 320 });
    expect(figures(read(page(`<g id="artwork" stroke="black" fill="none"><path id="outline" d="M10 10H110V70H10Z"/></g>`)))[0].rules).toEqual({ Cutting: 320 });
  });

  test('of a layer for the whole line work only that is looked at', () => {
    const svg = page(`<g id="Dieline" fill="none"><path stroke="red" d="M10 10H110V70H10Z"/><path stroke="green" d="M60 10V70"/></g><path fill="none" stroke="black" d="M0 0H200V200H0Z"/>`);
    expect(figures(read(svg))).toMatchObject([{ size: [100, 60], rules: { Cutting: 320, Unknown: 60 } }]);
  });
});

describe('order of resolution', () => {
  test("the user's rule comes before names", () => {
    expect(figures(read(cutAndInner('id="crease"'), rules('Perforating=stroke:#f00')))[0].rules).toEqual({ Cutting: 320, Perforating: 60 });
    expect(figures(read(cutAndInner('id="crease"'), rules('Perforating=layer:CREASE')))[0].rules).toEqual({ Cutting: 320, Perforating: 60 });
    expect(figures(read(cutAndInner('class="k7"'), rules('PartialCutting=class:k*')))[0].rules).toEqual({ Cutting: 320, PartialCutting: 60 });
    expect(figures(read(cutAndInner('id="x"'), rules('Creasing=id:x', 'Perforating=stroke:red')))[0].rules).toEqual({ Cutting: 320, Creasing: 60 });
  });

  test('a rule that fits nothing is said', () => {
    expect(codes(read(cutAndInner('id="crease"'), rules('Creasing=layer:knief')))).toContain('role-rule-unused');
  });

  test('rules that are none are refused', () => {
    for (const text of ['Cutting', 'Cutting=knife', 'Cutting=layer:', 'Slicing=layer:x', 'Cutting=dash:3']) expect(() => parseRoleRule(text, '--role')).toThrow(InputError);
  });

  test('names come before dashes, dashes before not knowing', () => {
    expect(figures(read(cutAndInner('stroke-dasharray="4 2"')))[0].rules).toEqual({ Cutting: 320, Creasing: 60 });
    expect(figures(read(cutAndInner('class="perf" stroke-dasharray="4 2"')))[0].rules).toEqual({ Cutting: 320, Perforating: 60 });
    expect(figures(read(cutAndInner('stroke-dasharray="0.1 2" stroke-width="1"')))[0].rules).toEqual({ Cutting: 320, Perforating: 60 });
    expect(figures(read(cutAndInner('')))[0].rules).toEqual({ Cutting: 320, Unknown: 60 });
    expect(codes(read(cutAndInner('')))).toContain('role-unknown');
  });

  test('colour alone is never a role', () => {
    const svg = page(`<g fill="none"><path stroke="red" d="M10 10H110V70H10Z"/><path stroke="green" d="M60 10V70"/></g>`);
    const dieline = read(svg);
    expect(figures(dieline)[0].rules).toEqual({ Cutting: 320, Unknown: 60 });
    const unknown = dieline.issues.find(({ code }) => code === 'role-unknown');
    expect(unknown).toMatchObject({ severity: 'warning', place: [60, 40], facts: { count: 1, lengthMm: 60, stroke: '#008000' } });
    expect(figures(read(svg, rules('Creasing=stroke:green', 'Cutting=stroke:red')))[0].rules).toEqual({ Cutting: 320, Creasing: 60 });
    expect(read(svg, rules('Creasing=stroke:green', 'Cutting=stroke:red')).issues).toEqual([]);
  });

  test('one kind of line is cut, and said', () => {
    const dieline = read(page(`<g fill="none" stroke="black">${OUTLINE}<circle cx="30" cy="30" r="5"/></g>`));
    expect(figures(dieline)).toMatchObject([{ openings: 1, rules: { Cutting: 351.416 } }]);
    expect(dieline.issues).toMatchObject([{ code: 'one-kind-is-cut', severity: 'note' }]);
  });

  test('text, images and filled shapes without a line are no rules', () => {
    const art = '<text x="20" y="30">Fernhollow</text><image width="20" height="20" href="data:,"/><rect x="20" y="20" width="30" height="30" fill="teal"/>';
    const dieline = read(page(`<g fill="none" stroke="black" id="cut">${OUTLINE}</g><g id="cut-art">${art}</g>`));
    expect(figures(dieline)).toEqual([{ size: [100, 60], area: 6000, openings: 0, rules: { Cutting: 320 } }]);
    expect(codes(dieline)).toEqual(['fill-is-no-rule']);
    expect(dieline.rest.map(({ role }) => role)).toEqual(['Artwork']);
  });

  test('a filled shape is a rule where the user says so', () => {
    const svg = page('<rect id="k" x="20" y="20" width="30" height="40" fill="teal"/>');
    expect(codes(read(svg))).toContain('no-lines');
    expect(figures(read(svg, rules('Cutting=id:k')))[0].size).toEqual([30, 40]);
  });

  test('areas for glue and varnish belong to the blank they lie in and take no part in outlines', () => {
    const svg = page(`<g fill="none" stroke="black" id="cut">${OUTLINE}</g><rect class="Gluing" x="90" y="10" width="20" height="60" fill="none" stroke="teal"/><rect class="bleed" x="7" y="7" width="106" height="66" fill="none" stroke="teal"/>`);
    expect(figures(read(svg))).toEqual([{ size: [100, 60], area: 6000, openings: 0, rules: { Cutting: 320, Gluing: 160 } }]);
  });
});

describe('a contour within the outline', () => {
  const label = (distance: number) => page(`<g fill="none"><rect stroke="red" x="10" y="10" width="80" height="50" rx="5"/><rect stroke="blue" x="${10 + distance}" y="${10 + distance}" width="${80 - 2 * distance}" height="${50 - 2 * distance}"/></g>`);
  test('a bleed away is asked about', () => {
    expect(read(label(3)).issues.find(({ code }) => code === 'contour-within-outline')).toMatchObject({ severity: 'warning', facts: { byMm: 3 } });
    expect(codes(read(label(12)))).not.toContain('contour-within-outline');
    expect(figures(read(label(3), rules('Bleed=stroke:red')))).toMatchObject([{ size: [74, 44] }]);
  });
});

describe('grain', () => {
  const grain = (content: string) => grainOf(readSvg(new TextEncoder().encode(page(content)), undefined));
  test.each([
    ['<text x="9" y="9">grain: horizontal</text>', 'x'],
    ['<text x="9" y="9">Faserrichtung ↔</text>', 'x'],
    ['<text transform="rotate(90)">Laufrichtung →</text>', 'y'],
    ['<text x="9" y="9">sens fibre vertical</text>', 'y'],
    ['<g id="grain-direction"><path stroke="black" d="M10 10V50"/></g>', 'y'],
    ['<g id="grain-x"><path stroke="black" d="M10 10V50"/></g>', 'x'],
    ['<text x="9" y="9">Grain</text>', undefined],
    ['<text x="9" y="9">Whole grain tea</text>', undefined],
    ['<text x="9" y="9">grain x</text><text x="9" y="9">grain y</text>', undefined],
  ])('%s', (content, direction) => {
    expect(grain(content)).toBe(direction);
  });
});
