import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { createRandom } from '../../src/base/random.ts';
import { READING_LIMITS } from '../../src/dieline/limits.ts';
import { readSvg } from '../../src/dieline/svg-drawing.ts';
import { codes, figures, page, read } from './support.ts';

const bytes = (svg: string) => new TextEncoder().encode(svg);

/** Boxes of all stroked lines, drawing mm, y down: x, y, width, height. */
function boxes(svg: string, scale?: number): number[][] {
  const round = (value: number) => Math.round(value * 1000) / 1000 + 0;
  return readSvg(bytes(svg), scale).lines.map(({ curves }) => {
    const points = curves.flatMap(({ from, to }) => [from, to]);
    const xs = points.map(({ x }) => x);
    const ys = points.map(({ y }) => -y);
    const [x, y] = [Math.min(...xs), Math.min(...ys)];
    return [x, y, Math.max(...xs) - x, Math.max(...ys) - y].map(round);
  });
}

const RECT = '<rect x="10" y="20" width="30" height="40" fill="none" stroke="black"/>';

describe('units', () => {
  test.each([
    ['mm and a view box', 'width="100mm" height="100mm" viewBox="0 0 100 100"', [10, 20, 30, 40]],
    ['cm, tenths of a mm as user units', 'width="10cm" height="10cm" viewBox="0 0 1000 1000"', [1, 2, 3, 4]],
    ['inches', 'width="2in" height="2in" viewBox="0 0 2 2"', [254, 508, 762, 1016]],
    ['points', 'width="72pt" height="72pt" viewBox="0 0 72 72"', [3.528, 7.056, 10.583, 14.111]],
    ['only a width', 'width="200mm" viewBox="0 0 100 100"', [20, 40, 60, 80]],
    ['only a height', 'height="50mm" viewBox="0 0 100 100"', [5, 10, 15, 20]],
    ['a view box that starts elsewhere', 'width="100mm" height="100mm" viewBox="-5 -10 100 100"', [15, 30, 30, 40]],
    ['a wider page, content in the middle', 'width="200mm" height="100mm" viewBox="0 0 100 100"', [60, 20, 30, 40]],
    ['a wider page, content at the left', 'width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="xMinYMid meet"', [10, 20, 30, 40]],
    ['a wider page, sliced', 'width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="xMidYMax slice"', [20, -60, 60, 80]],
    ['a stretched page', 'width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="none"', [20, 20, 60, 40]],
    ['pixels', 'width="96px" height="96px" viewBox="0 0 96 96"', [2.646, 5.292, 7.938, 10.583]],
    ['no unit', 'width="960" height="960" viewBox="0 0 96 96"', [26.458, 52.917, 79.375, 105.833]],
    ['no size at all', '', [2.646, 5.292, 7.938, 10.583]],
    ['a page in mm without view box', 'width="100mm" height="100mm"', [2.646, 5.292, 7.938, 10.583]],
  ])('%s', (_, attributes, box) => {
    expect(boxes(page(RECT, attributes))).toEqual([box]);
  });

  test('pixels and missing units are an assumption, and said', () => {
    expect(read(page(RECT, 'width="96px" viewBox="0 0 96 96"')).scale.from).toBe('assumed 96 per inch');
    expect(codes(read(page(RECT, '')))).toContain('unit-assumed');
    expect(read(page(RECT, 'width="1ft" height="2ft"')).issues).toContainEqual(expect.objectContaining({ code: 'unit-unknown', facts: expect.objectContaining({ unitGiven: 'ft' }) }));
    expect(codes(read(page(RECT, 'width="96" height="96"')))).toContain('unit-assumed');
    expect(codes(read(page(RECT)))).not.toContain('unit-assumed');
  });

  test('a page that is A4 at 72 an inch is pointed out', () => {
    const { issues } = read(page(RECT, 'width="595.28px" height="841.89px" viewBox="0 0 595.28 841.89"'));
    expect(issues.find(({ code }) => code === 'unit-assumed')?.facts?.hint).toMatch(/A4 at 72/);
  });

  test('shapes with units of their own need no assumption', () => {
    const dieline = read('<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm"><rect x="10mm" y="1cm" width="50mm" height="2in" fill="none" stroke="black"/></svg>');
    expect(figures(dieline)[0].size).toEqual([50, 50.8]);
    expect(dieline.scale.from).toBe('unit');
    expect(codes(dieline)).not.toContain('unit-assumed');
  });

  test('--scale counts over all of it, --width-is measures the blank', () => {
    expect(boxes(page(RECT, 'width="96px" viewBox="0 0 96 96"'), 0.5)).toEqual([[5, 10, 15, 20]]);
    const dieline = read(page(RECT, 'width="96px" viewBox="0 0 96 96"'), { widthIs: 182 });
    expect(figures(dieline)[0].size[0]).toBeCloseTo(182, 2);
    expect(dieline.scale.from).toBe('given width');
    expect(codes(dieline)).not.toContain('unit-assumed');
  });

  test('--width-is needs to know which of several blanks is meant', () => {
    const two = page(`${RECT}<rect x="60" y="20" width="10" height="40" fill="none" stroke="black"/>`);
    expect(() => read(two, { widthIs: 100 })).toThrow(InputError);
    expect(figures(read(two, { widthIs: 100, blank: 2 })).map(({ size }) => size[0])).toEqual([300, 100]);
  });
});

describe('shapes', () => {
  const drawn = (shape: string) => boxes(page(`<g fill="none" stroke="black">${shape}</g>`));
  test.each([
    ['line', '<line x1="1" y1="2" x2="4" y2="6"/>', [[1, 2, 3, 4]]],
    ['polyline', '<polyline points="1,2 4,2,4-6"/>', [[1, -6, 3, 8]]],
    ['polygon', '<polygon points="1 2 4 2 4 6"/>', [[1, 2, 3, 4]]],
    ['rect with one radius', '<rect x="1" y="2" width="10" height="20" rx="2"/>', [[1, 2, 10, 20]]],
    ['rect with radii larger than half', '<rect x="1" y="2" width="10" height="20" rx="9" ry="30"/>', [[1, 2, 10, 20]]],
    ['circle', '<circle cx="5" cy="6" r="2"/>', [[3, 4, 4, 4]]],
    ['ellipse', '<ellipse cx="5" cy="6" rx="2" ry="3"/>', [[3, 3, 4, 6]]],
    ['subpaths', '<path d="M0 0h2v2M5 5l1 1"/>', [[0, 0, 2, 2], [5, 5, 1, 1]]],
    ['percentages', '<rect x="10%" y="50%" width="20%" height="10%"/>', [[30, 150, 60, 30]]],
    ['sizes from style', '<rect x="1" y="2" style="width:10px;height:20px"/>', [[1, 2, 10, 20]]],
    ['nothing without size', '<rect x="1" y="2" width="0" height="20"/><circle r="0"/>', []],
    ['up to the first mistake', '<path d="M0 0 L5 5 L6 x"/>', [[0, 0, 5, 5]]],
  ])('%s', (_, shape, expected) => {
    expect(drawn(shape)).toEqual(expected);
  });

  test('a flaw is said with the element', () => {
    const { issues } = readSvg(bytes(page('<path id="k3" stroke="black" d="M0 0 L5 5 L6 x"/><rect id="r" stroke="red" width="ten" height="2"/>')), undefined);
    expect(issues.map(({ code, where }) => [code, where])).toEqual([['shape-not-read', 'path#k3'], ['shape-not-read', 'rect#r']]);
  });
});

describe('transforms', () => {
  test.each([
    ['translate(5)', [15, 20, 30, 40]],
    ['translate(5,-6)', [15, 14, 30, 40]],
    ['scale(2)', [20, 40, 60, 80]],
    ['scale(2 .5)', [20, 10, 60, 20]],
    ['rotate(90)', [-60, 10, 40, 30]],
    ['rotate(90 10 20)', [-30, 20, 40, 30]],
    ['matrix(1 0 0 1 3 4)', [13, 24, 30, 40]],
    ['matrix(0,1,-1,0,0,0)', [-60, 10, 40, 30]],
    ['skewX(45)', [30, 20, 70, 40]],
    ['skewY(45)', [10, 30, 30, 70]],
    ['translate(10 0) scale(2),rotate(90)', [-110, 20, 80, 60]],
    ['scale(-1 1)', [-40, 20, 30, 40]],
  ])('%s', (transform, box) => {
    expect(boxes(page(`<g transform="${transform}">${RECT}</g>`))).toEqual([box]);
    expect(boxes(page(`<g><g style="transform:${transform.replace(/(rotate|skew[XY])\((\d+)/g, '$1($2deg').replace(/ (\d+) (\d+)\)$/, ' $1 $2)')}">${RECT}</g></g>`))).toHaveLength(1);
  });

  test('compose over groups, use, symbol and nested svg', () => {
    const svg = page(`
      <defs><g id="k" transform="translate(1 1)">${RECT}</g><symbol id="s" viewBox="0 0 100 100">${RECT}</symbol></defs>
      <g transform="translate(100 0)"><use href="#k" x="5" y="6"/></g>
      <use xlink:href="#s" width="50" height="50" x="10" y="10" transform="scale(2)"/>
      <svg x="200" y="100" width="50" height="100" viewBox="0 0 50 50">${RECT}</svg>`);
    expect(boxes(svg)).toEqual([[116, 27, 30, 40], [30, 40, 30, 40], [210, 145, 30, 40]]);
  });

  test('stand on the outermost element too', () => {
    expect(boxes(page(RECT, 'width="100mm" viewBox="0 0 100 100" transform="translate(1 2)"'))).toEqual([[11, 22, 30, 40]]);
  });

  test('what cannot be read is said', () => {
    expect(codes(read(page(`<g transform="spin(3)">${RECT}</g>`)))).toContain('transform-not-read');
  });

  test('what is flattened to nothing is not drawn', () => {
    expect(boxes(page(`<g transform="scale(1 0)">${RECT}</g>`))).toEqual([]);
  });
});

describe('what is drawn', () => {
  const strokes = (content: string) => readSvg(bytes(page(content)), undefined).lines.map(({ source }) => source.stroke);

  test('strokes come from attributes, sheets, style attributes and parents, the more specific winning', () => {
    const svg = `<style>
        path { stroke: #00f } .cut { stroke: red } g > .cut { stroke: rgb(0, 128, 0) } #one { stroke: #ABC } .loud { stroke: lime !important }
      </style>
      <g stroke="black">
        <path d="M0 0L1 1" stroke="white"/><path class="cut" d="M0 0L1 1"/><path id="one" class="cut" d="M0 0L1 1"/>
        <path class="loud" style="stroke:red" d="M0 0L1 1"/><line x2="5"/><line x2="5" style="stroke:currentColor;color:#123456"/>
        <line x2="5" stroke="inherit"/>
      </g>`;
    expect(strokes(svg)).toEqual(['#0000ff', '#008000', '#aabbcc', '#00ff00', '#000000', '#123456', '#000000']);
  });

  test('hidden things and things only kept for use are not', () => {
    const path = '<path stroke="black" d="M0 0L1 1"/>';
    const svg = `<defs>${path}</defs><clipPath>${path}</clipPath><mask>${path}</mask><pattern>${path}</pattern><marker>${path}</marker><symbol>${path}</symbol>
      <g display="none">${path}</g><g style="display:none">${path}</g><g opacity="0">${path}</g>
      <g visibility="hidden">${path}<path visibility="visible" stroke="red" d="M0 0L1 1"/></g>
      <path d="M0 0L1 1"/><path stroke="none" d="M0 0L1 1"/><path stroke="black" stroke-opacity="0" d="M0 0L1 1"/>
      <path stroke="black" stroke-width="0" d="M0 0H9V9Z"/>`;
    expect(strokes(svg)).toEqual(['#ff0000']);
  });

  test('a hairline of width 0 without a fill is a line', () => {
    expect(strokes('<path stroke="black" stroke-width="0" fill="none" d="M0 0H9"/>')).toEqual(['#000000']);
  });

  test('of a switch the first fitting child, links as groups', () => {
    const svg = '<switch><foreignObject requiredExtensions="x"/><g><path stroke="red" d="M0 0L1 1"/></g><g><path stroke="blue" d="M0 0L1 1"/></g></switch><a href="http://example.com/"><path stroke="lime" d="M0 0L1 1"/></a>';
    expect(strokes(svg)).toEqual(['#ff0000', '#00ff00']);
  });

  test('elements of other namespaces are not', () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:o="urn:other"><o:path stroke="red" d="M0 0L1 1"/><g xmlns="urn:other"><path stroke="red" d="M0 0L1 1"/></g></svg>`;
    expect(readSvg(bytes(svg), undefined).lines).toEqual([]);
    const prefixed = `<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:path stroke="red" d="M0 0L1 1"/></s:svg>`;
    expect(readSvg(bytes(prefixed), undefined).lines).toHaveLength(1);
  });
});

describe('unsafe and oversized files', () => {
  const codeOf = (run: () => unknown): string => {
    try {
      run();
    } catch (error) {
      if (error instanceof InputError) return error.issues[0].code;
      throw error;
    }
    return 'read';
  };

  test('entities are not followed, wherever they point', () => {
    const external = `<!DOCTYPE svg [<!ENTITY secret SYSTEM "file:///etc/passwd">]>${page(`${RECT}<text>&secret;</text>`)}`;
    const { texts, issues } = readSvg(bytes(external), undefined);
    expect(texts[0].content).toBe('&secret;');
    expect(issues.map(({ code }) => code)).toEqual(['entity-not-followed']);
    const bomb = `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;">]>${page(`${RECT}<text>&c;</text>`)}`;
    expect(readSvg(bytes(bomb), undefined).texts[0].content).toBe('&c;');
  });

  test('namespaces declared as entities are read', () => {
    const svg = `<!DOCTYPE svg [<!ENTITY ns_svg "http://www.w3.org/2000/svg">]><svg xmlns="&ns_svg;" width="9mm" viewBox="0 0 9 9">${RECT}</svg>`;
    expect(boxes(svg)).toEqual([[10, 20, 30, 40]]);
  });

  test('scripts, foreign objects and links out of the file are left out and said', () => {
    const svg = page(`<script>alert(1)</script><foreignObject><p>x</p></foreignObject><use href="http://example.com/a.svg#b"/><use href="other.svg#c"/><image href="http://example.com/a.png"/>${RECT}`);
    const { lines, issues } = readSvg(bytes(`<?xml-stylesheet href="http://example.com/a.css"?>${svg}`), undefined);
    expect(lines).toHaveLength(1);
    expect(issues.map(({ code }) => code)).toEqual(['link-not-followed', 'element-left-out', 'element-left-out', 'link-not-followed', 'link-not-followed']);
  });

  test('use that repeats itself ends', () => {
    expect(codes(read(page(`<g id="a">${RECT}<use href="#a"/></g>`)))).toContain('use-in-itself');
    expect(codes(read(page(`<g id="a">${RECT}<use href="#b"/></g><g id="b"><use href="#a"/></g>`)))).toContain('use-in-itself');
    expect(codes(read(page(`<use href="#none"/>${RECT}`)))).toContain('use-without-target');
  });

  test('use of use that multiplies ends at a limit', () => {
    const levels = Array.from({ length: 12 }, (_, i) => `<g id="l${i + 1}">${`<use href="#l${i}"/>`.repeat(10)}</g>`).join('');
    expect(codeOf(() => readSvg(bytes(page(`<defs><g id="l0"/>${levels}</defs><use href="#l12"/>`)), undefined))).toBe('drawing-limit');
  });

  test.each([
    ['deep nesting', page('<g>'.repeat(300) + '</g>'.repeat(300)), 'drawing-limit'],
    ['an open element', '<svg xmlns="http://www.w3.org/2000/svg"><g>', 'drawing-not-xml'],
    ['no XML', 'hello', 'drawing-not-xml'],
    ['nothing', '', 'drawing-not-xml'],
    ['other XML', '<html xmlns="http://www.w3.org/1999/xhtml"/>', 'drawing-not-svg'],
    ['a compressed file', '\u001f\u008b', 'read'],
  ])('%s', (_, svg, code) => {
    const data = svg.startsWith('\u001f') ? Uint8Array.of(0x1f, 0x8b, 8, 0) : bytes(svg);
    expect(codeOf(() => readSvg(data, undefined))).toBe(svg.startsWith('\u001f') ? 'drawing-compressed' : code);
  });

  test('a file larger than the limit is refused before it is looked at', () => {
    expect(codeOf(() => readSvg(new Uint8Array(READING_LIMITS.fileBytes + 1), undefined))).toBe('drawing-limit');
  });

  test('crossings without end stop at a limit', () => {
    const random = createRandom(3);
    const line = () => `<path d="M${random.below(1000)} ${random.below(1000)}L${random.below(1000)} ${random.below(1000)}"/>`;
    expect(codeOf(() => read(page(`<g stroke="black">${Array.from({ length: 2500 }, line).join('')}</g>`)))).toBe('drawing-limit');
  });

  test('coordinates out of range leave the line out', () => {
    const dieline = read(page(`<g stroke="black">${RECT}<path d="M0 0L1e7 0"/><path d="M0 0L1e300 1e300"/><circle r="1e308"/></g>`));
    expect(codes(dieline)).toContain('coordinates-out-of-range');
    expect(figures(dieline)[0].size).toEqual([30, 40]);
  });

  test('other encodings are read', () => {
    const text = `<?xml version="1.0" encoding="ISO-8859-1"?>${page(`<g id="Ma\u00dfe"><path stroke="red" d="M0 0L1 1"/></g>`)}`;
    const latin = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    expect(readSvg(latin, undefined).lines[0].source.levels[0].names).toEqual(['Maße']);
    const wide = Uint8Array.from([0xff, 0xfe, ...[...page(RECT)].flatMap((letter) => [letter.charCodeAt(0), 0])]);
    expect(readSvg(wide, undefined).lines).toHaveLength(1);
    expect(codeOf(() => readSvg(Uint8Array.of(0x3c, 0xff, 0x3e), undefined))).toBe('drawing-not-text');
  });
});
