import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import type { LayoutFile } from '../../src/layout/layout-file.ts';
import { sheetScene } from '../../src/render/sheet-scene.ts';
import { viewOfLayout } from '../../src/render/view-of-layout.ts';
import { sceneToSvg } from '../../src/render/svg.ts';

/** A label with one round end: the polygon stands out of the true curve by under 0.02 mm. */
const layout: LayoutFile = {
  sheet: { width: 300, height: 200 },
  usable: { x: 6, y: 13, width: 288, height: 177 },
  printable: { x: 3, y: 10, width: 294, height: 187 },
  lay: 'right',
  keepOut: [{ kind: 'colour-bar', ring: [[3, 192], [297, 192], [297, 197], [3, 197]] }],
  rules: { gap: 6, bleed: 3, bleedMeeting: 'apart', commonKnife: false },
  designs: [
    {
      id: 'tag',
      outline: [[0, 0], [80, 0], [80, 40], [0, 40]],
      openings: [[[8, 18], [8, 22], [12, 22], [12, 18]]],
      rotations: [0, 180],
      drawing: {
        outline: 'M0 0H80V40H0Z',
        openings: ['M12 20A2 2 0 1 0 8 20A2 2 0 1 0 12 20Z'],
        paths: [
          { role: 'Cutting', d: 'M0 0H80V40' },
          { role: 'Cutting', d: 'M80 40H0V0' },
          { role: 'Creasing', d: 'M20 0V40' },
          { role: 'Cutting', d: 'M40 10V30' },
          { role: 'fold here', d: 'M60 0V40' },
        ],
      },
    },
  ],
  placements: [
    { design: 'tag', rotation: 0, x: 20, y: 20 },
    { design: 'tag', rotation: 90, x: 180, y: 20 },
  ],
};

describe('the view of a layout file', () => {
  const view = viewOfLayout(layout, { grain: 'y', figures: [] });

  test('keeps the true curves of openings', () => {
    expect(view.designs[0]!.openings[0]!.map(({ kind }) => kind)).toEqual(['arc', 'arc']);
  });

  test('lines that make up the outline are not drawn a second time; slits are', () => {
    expect(view.designs[0]!.rules.map(({ role }) => role)).toEqual(['Creasing', 'Cutting', 'Unknown']);
  });

  test('the bleed stands round the outline', () => {
    const xs = view.designs[0]!.bleedOutline!.map(({ x }) => x);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([-3, 83]);
  });

  test('polygons stand in where a file has no drawing', () => {
    const { drawing: _, ...bare } = layout.designs[0]!;
    const [design] = viewOfLayout({ ...layout, designs: [bare] }, { figures: [] }).designs;
    expect(design!.outline).toHaveLength(4);
    expect(design!.openings[0]).toHaveLength(4);
    expect(design!.rules).toEqual([]);
  });

  test('a placement that cannot be drawn is named', () => {
    const wrong = (placement: LayoutFile['placements'][number]) => () => viewOfLayout({ ...layout, placements: [placement] }, { figures: [] });
    expect(wrong({ design: 'other', rotation: 0, x: 0, y: 0 })).toThrow(InputError);
    expect(wrong({ design: 'tag', rotation: 45, x: 0, y: 0 })).toThrow(InputError);
  });

  // The picture's own text at a tenth of a millimetre: a change of look shows up here and nowhere else.
  test('picture', () => {
    const svg = sceneToSvg(sheetScene(view)).replace(/-?\d+\.\d+/g, (number) => String(Math.round(Number(number) * 10) / 10 + 0));
    const between = (from: string, to: string) => svg.slice(svg.indexOf(from), svg.indexOf(to));
    expect(between('<defs>', '</defs>')).toMatchSnapshot();
    expect(between('<g id="Blanks"', '<g id="Register_marks"')).toMatchSnapshot();
  });
});
