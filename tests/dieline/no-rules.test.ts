import { describe, expect, test } from 'vitest';
import { codes, figures, page, read } from './support.ts';

/** A carton of 180 × 120 mm, 16 800 mm², with creases; drawn in the middle of a page. */
const CUT = 'M40 60H100V40H160V60H220V140H160V160H100V140H40Z';
const CREASE = 'M100 60V140M160 60V140M100 60H160M100 140H160';
const SIZE = { size: [180, 120], area: 16800 };

/** All in one kind of line, or in two kinds without names. */
const oneKind = (more: string) => page(`<g fill="none" stroke="black"><path d="${CUT}"/><path d="${CREASE}"/>${more}</g>`);
const twoKinds = (more: string) => page(`<g fill="none"><path stroke="red" d="${CUT}"/><path stroke="blue" d="${CREASE}"/>${more}</g>`);

/** A dimension line over the whole width whose extension lines touch the carton's corners. */
const DIMENSION = '<line x1="40" y1="140" x2="40" y2="175"/><line x1="220" y1="140" x2="220" y2="175"/>';
const line = (more = '') => `<line x1="40" y1="172" x2="220" y2="172" ${more}/>`;

describe('dimension lines that touch the outline do not become part of it', () => {
  test.each([
    ['a number that is their length', `${DIMENSION}${line()}<text x="130" y="170" font-size="5" text-anchor="middle" fill="black">180</text>`],
    ['the same in inches', `${DIMENSION}${line()}<text x="130" y="170" font-size="5" text-anchor="middle" fill="black">7.087 in</text>`],
    ['filled heads', `${DIMENSION}${line()}<path fill="black" stroke="none" d="M40 172l4 -1v2z"/><path fill="black" stroke="none" d="M220 172l-4 -1v2z"/>`],
    ['outlined heads', `${DIMENSION}${line()}<path d="M40 172l4 -1v2z"/><path d="M220 172l-4 -1v2z"/>`],
    ['open heads of one stroke', `${DIMENSION}${line()}<path d="M44 170.5L40 172L44 173.5"/><path d="M216 170.5L220 172L216 173.5"/>`],
    ['open heads of loose strokes', `${DIMENSION}${line()}${['M40 172L44 170.5', 'M40 172L44 173.5', 'M220 172L216 170.5', 'M220 172L216 173.5'].map((d) => `<path d="${d}"/>`).join('')}`],
    ['oblique ticks', `${DIMENSION}${line()}<path d="M38.5 173.5l3 -3"/><path d="M218.5 173.5l3 -3"/>`],
    ['dots', `${DIMENSION}${line()}<circle cx="40" cy="172" r="1" fill="black" stroke="none"/><circle cx="220" cy="172" r="1" fill="black" stroke="none"/>`],
    ['markers', `<marker id="m"><path d="M0 0L1 1"/></marker>${DIMENSION}${line('marker-start="url(#m)" marker-end="url(#m)"')}`],
    ['lines interrupted for the number', `${DIMENSION}<line x1="40" y1="172" x2="120" y2="172"/><line x1="140" y1="172" x2="220" y2="172"/><path fill="black" stroke="none" d="M40 172l4 -1v2z"/><path fill="black" stroke="none" d="M220 172l-4 -1v2z"/>`],
  ])('%s', (_, more) => {
    expect(figures(read(oneKind(more)))).toMatchObject([SIZE]);
    expect(figures(read(twoKinds(`<g stroke="black">${more}</g>`)))).toMatchObject([{ ...SIZE, rules: { Cutting: 600, Unknown: 280 } }]);
    expect(codes(read(oneKind(more)))).toContain('dimension-lines-left-out');
  });

  test('a kind of its own with overshooting lines outside, without heads or numbers', () => {
    expect(figures(read(twoKinds(`<g stroke="gray">${DIMENSION}${line()}</g>`)))).toMatchObject([{ ...SIZE, rules: { Cutting: 600, Unknown: 280 } }]);
  });

  test('a kind of its own that ends at the dimension line, with its number', () => {
    const plain = '<path d="M40 140V170"/><path d="M220 140V170"/><path d="M40 170H220"/>';
    expect(figures(read(twoKinds(`<g stroke="gray">${plain}</g><text x="130" y="169" font-size="4" text-anchor="middle">180</text>`)))).toMatchObject([{ ...SIZE, rules: { Cutting: 600, Unknown: 280 } }]);
  });

  test('named ones', () => {
    expect(figures(read(twoKinds(`<g id="Bemaßung" stroke="red">${DIMENSION}${line()}</g>`)))).toMatchObject([SIZE]);
  });

  test('chains of them', () => {
    const head = (x: number, way: number) => `<path fill="black" stroke="none" d="M${x} 172l${way} -1v2z"/>`;
    const chain = `${DIMENSION}<path d="M100 160V175"/><path d="M160 160V175"/><path d="M40 172H100"/><path d="M100 172H160"/><path d="M160 172H220"/>${[40, 100, 160].map((x) => head(x, 4) + head(x + 60, -4)).join('')}`;
    expect(figures(read(oneKind(chain)))).toMatchObject([SIZE]);
  });
});

describe('what only looks a little like dimensioning is kept', () => {
  test('flaps in a second colour', () => {
    const svg = page('<g fill="none"><path stroke="black" d="M40 60H220V140H40Z"/><path stroke="blue" d="M100 60V40H160V60M100 140V160H160V140"/></g>');
    expect(figures(read(svg))).toMatchObject([SIZE]);
  });

  test('the sides of a label whose length is written on it', () => {
    const sides = ['M10 10H110', 'M110 10V70', 'M110 70H10', 'M10 70V10'].map((d) => `<path d="${d}"/>`).join('');
    expect(figures(read(page(`<g stroke="black">${sides}</g><text x="60" y="16" text-anchor="middle" font-size="4">100</text><text x="12" y="40" font-size="4">60</text>`)))).toMatchObject([{ size: [100, 60], area: 6000, rules: { Cutting: 320 } }]);
  });

  test('a leader into the blank', () => {
    expect(figures(read(oneKind('<path d="M180 100L240 30"/><text x="240" y="30" font-size="4">glue here</text>')))).toMatchObject([SIZE]);
  });
});

describe('frames, title blocks and marks are left out', () => {
  const frame = '<path d="M5 5H295V295H5Z"/>';
  const title = '<path d="M200 295V260H295M200 275H295M245 260V295"/>';

  test.each([
    ['a frame', frame],
    ['a double frame', `${frame}<path d="M15 10H290V290H15Z"/>`],
    ['a frame with a title block on it', frame + title],
    ['a frame of loose lines', '<path d="M5 5H295"/><path d="M295 5V295"/><path d="M295 295H5"/><path d="M5 295V5"/>'],
    ['register marks', '<circle cx="20" cy="20" r="5"/><path d="M12 20H28"/><path d="M20 12V28"/>'],
    ['crop marks', '<path d="M30 60H37M30 140H37M40 30V37"/>'],
    ['a legend', '<path d="M20 250H40"/><path stroke-dasharray="3 2" d="M20 260H40"/><text x="45" y="250" font-size="5">cut</text>'],
    ['a title block of its own', '<path d="M200 250H290V290H200ZM200 270H290M245 250V290"/><text x="203" y="258" font-size="4">Kunde</text><text x="203" y="278" font-size="4">Datum</text>'],
  ])('%s', (_, more) => {
    expect(figures(read(oneKind(more)))).toMatchObject([SIZE]);
    expect(figures(read(twoKinds(`<g stroke="black">${more}</g>`)))).toMatchObject([SIZE]);
  });

  test('a frame round a carton whose creases end short of the knife', () => {
    const svg = page(`<g fill="none"><path stroke="black" d="M5 8H295V290H5Z"/><path stroke="black" d="${CUT}"/><path stroke="blue" d="M100 61V139M160 61V139M101 60H159M101 140H159"/></g>`);
    expect(figures(read(svg))).toMatchObject([{ ...SIZE, rules: { Cutting: 600, Unknown: 272 } }]);
  });

  test('a frame of paper size round a plain label', () => {
    const svg = page('<g fill="none" stroke="black"><rect x="10" y="10" width="210" height="297"/><ellipse cx="100" cy="100" rx="40" ry="25"/></g>');
    expect(figures(read(svg))).toMatchObject([{ size: [80, 50] }]);
  });

  test('a frame with margins on a page of paper size', () => {
    const svg = page('<g fill="none" stroke="black"><rect x="20" y="10" width="180" height="277"/><rect x="60" y="60" width="80" height="50" rx="4"/></g>', 'width="210mm" height="297mm" viewBox="0 0 210 297"');
    expect(figures(read(svg))).toMatchObject([{ size: [80, 50] }]);
  });

  test('a border with one margin all round the page, of another kind than the plain label in it', () => {
    const border = (stroke: string) => page(`<g fill="none"><rect stroke="black" x="5" y="5" width="240" height="140"/><ellipse stroke="${stroke}" cx="100" cy="70" rx="60" ry="40"/></g>`, 'width="250mm" height="150mm" viewBox="0 0 250 150"');
    expect(figures(read(border('red')))).toMatchObject([{ size: [120, 80] }]);
    expect(figures(read(border('black')))).toMatchObject([{ size: [240, 140], openings: 1 }]);
  });

  test('register marks on the layer of the cut lines', () => {
    const mark = (x: number) => `<circle cx="${x}" cy="10" r="5"/><path d="M${x - 8} 10H${x + 8}"/><path d="M${x} 2V18"/>`;
    expect(figures(read(page(`<g id="cut" fill="none" stroke="black"><rect x="30" y="30" width="50" height="40"/>${mark(20)}${mark(90)}</g>`)))).toMatchObject([{ size: [50, 40] }]);
  });

  test('a label with a hole is no frame, nor one with a printed table', () => {
    expect(figures(read(page('<g fill="none" stroke="black"><rect x="10" y="10" width="60" height="100"/><circle cx="40" cy="20" r="3"/></g>')))).toMatchObject([{ size: [60, 100], openings: 1 }]);
    const table = '<path stroke="gray" d="M80 40H105V80H80ZM80 50H105M80 60H105M80 70H105M92 40V80"/>';
    expect(figures(read(page(`<g fill="none"><rect stroke="black" x="10" y="10" width="200" height="80"/>${table}</g>`)))).toMatchObject([{ size: [200, 80] }]);
  });

  test('a named cut line is never taken for a frame', () => {
    const svg = page(`<g fill="none" stroke="black"><rect id="cut" x="5" y="5" width="290" height="290"/><path d="${CUT}"/><path d="${CREASE}"/></g>`);
    expect(figures(read(svg))).toMatchObject([{ size: [290, 290] }]);
  });
});
