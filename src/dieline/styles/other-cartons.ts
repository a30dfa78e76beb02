import { mapPath, translation } from '../../geometry/affine.ts';
import { arcBetween } from '../../geometry/arc.ts';
import type { Curve } from '../../geometry/curve.ts';
import { allowance, cartonDimensions, clearance, coverLess, dimension, glueFlap, SEAM, thumbNotch, TUCK } from './allowances.ts';
import { body } from './body.ts';
import { dustEnd, glueSeam, GLUE_MARGIN, hung, notched, plain, taperedFlap, tuck, tuckEnd } from './ends.ts';
import { circle, loop, mirrored, side, type Edge } from './flap.ts';
import type { Values } from './parameter.ts';
import { ACROSS_BODY_CREASES, type Style } from './style.ts';
import { fourPanels } from './tuck-cartons.ts';

const grain = ACROSS_BODY_CREASES;

export const gluedEndFlaps: Style = {
  id: 'glued-end-flaps',
  description: 'carton closed with glue at both ends, outer flaps over inner ones',
  grain,
  dimensions: cartonDimensions([67, 13, 130]),
  allowances: [
    ...SEAM,
    clearance,
    allowance('endFlap', 'length of the end flaps', { of: ({ width }) => width - 1.5, said: 'the width less 1.5' }, [5, { of: ({ width }) => width, said: 'the width' }], 'the handbook example (wiki.hpv-ev.org, lf03/03): 11.5 for a width of 13'),
    allowance('shoulder', 'by how much the creases of the outer flaps lie beyond those of the inner ones', { of: ({ caliper }) => Math.max(0.5, caliper), said: 'the caliper, at least 0.5' }, [0, 3], 'the handbook example (wiki.hpv-ev.org, lf03/03): 0.5'),
  ],
  build: (v) => {
    const inner = Math.min(v.endFlap, v.length / 2 - 0.5);
    const outer = (id: string, gluedOnto = '') => hung((length) => taperedFlap(id, length, v.endFlap, { gluedOnto }), { inset: v.clearance, beyond: v.shoulder });
    const dust = (id: string) => hung((length) => taperedFlap(id, length, inner), { inset: v.clearance });
    const end = (at: string) => [outer(`${at} back flap`), dust(`${at} inner flap`), outer(`${at} front flap`, `${at} back flap`), dust(`${at} other inner flap`)] as const;
    return fourPanels(v, end('bottom'), end('top'));
  },
};

export const gluedSleeve: Style = {
  id: 'glued-sleeve',
  description: 'sleeve of four panels, open at both ends',
  grain,
  dimensions: cartonDimensions([120, 40, 80]),
  allowances: [...SEAM, thumbNotch],
  build: (v) => {
    const end = [plain, plain, notched(v.thumbNotch), plain] as const;
    return fourPanels(v, end, end);
  },
};

const HEXAGON_HEIGHT = Math.sqrt(3);

export const hexagonal: Style = {
  id: 'hexagonal',
  description: 'carton of six equal panels, closed by a hexagonal cover with a tuck flap at both ends',
  grain,
  dimensions: [dimension('side', 'one of the six panels, crease to crease', [20, 200], 40), dimension('depth', 'height of the body, crease to crease', [20, 900], 90)],
  allowances: [
    SEAM[0],
    SEAM[1],
    { ...glueFlap, usual: { of: ({ side: across }) => Math.min(15, across / 2), said: '15, at most half a panel' }, most: { of: ({ side: across }) => Math.min(40, across - 2), said: 'a panel less 2, and 40' } },
    clearance,
    { ...coverLess, meaning: 'by how much the cover is shorter than from its hinge to the panel opposite (√3 sides)' },
    allowance('tuckFlap', 'length of the tuck flap', { of: ({ side: across }) => Math.min(15, across / 2), said: '15, at most half a panel' }, [5, { of: ({ side: across }) => Math.min(40, across), said: 'a panel, and 40' }]),
    allowance('dustFlap', 'length of the dust flaps', { of: ({ side: across }) => 0.35 * across, said: '0.35 of a panel, so that they stay clear of the cover' }, [5, { of: ({ side: across }) => 0.4 * across, said: '0.4 of a panel' }]),
  ],
  build: (v) => {
    const dust = (at: string, i: number) => hung((length) => taperedFlap(`${at} dust flap ${i}`, length, v.dustFlap, { taper: DUST_SLANT * v.dustFlap }), { inset: v.clearance });
    const end = (at: string, i: number): Edge | undefined => (i === 2 ? hexagonCover(at, v) : i === 5 ? undefined : dust(at, i));
    const panels = [1, 2, 3, 4, 5, 6].map((i) => {
      const [bottom, top] = [end('bottom', i), end('top', i)];
      return { id: `panel ${i}`, width: v.side - (i === 6 ? v.lastPanelLess : 0), ...(bottom ? { bottom } : {}), ...(top ? { top } : {}) };
    });
    return body(v.depth, panels, glueSeam(v.glueFlap, 'panel 6'));
  },
};

/** 1/tan of 50°: the corner of a hexagon leaves 60° for a flap, less ten for play. */
const DUST_SLANT = 0.84;

/**
 * A hexagon that reaches from its hinge to the panel opposite, √3 sides away, less what a cover is shorter; its corners
 * stand back by the clearance at each end of the hinge. The tuck flap is on its far side.
 */
function hexagonCover(at: string, { side: across, tuckFlap, coverLess: less, clearance: inset }: Values): Edge {
  return hung((length) => {
    const height = HEXAGON_HEIGHT * across - less;
    return {
      id: `${at} cover`,
      side: side([[0, 0], [-length / 2, -height / 2], [0, -height], [inset, -height], [length - inset, -height, { flap: tuck(`${at} tuck`, length - 2 * inset, tuckFlap) }], [length, -height], [1.5 * length, -height / 2], [length, 0]]),
    };
  }, { inset });
}

export const pillow: Style = {
  id: 'pillow',
  description: 'pillow pack: two panels with curved creases whose ends are pushed in',
  grain,
  dimensions: [
    dimension('length', 'along the side creases', [40, 600], 120),
    dimension('width', 'of a panel, crease to crease', [30, 400], 80),
    dimension('depth', 'greatest thickness of the closed pack: the curves rise by half of it', [6, { of: (v) => Math.min(v.width / 2, v.length / 2), said: 'half the width and half the length' }], 30),
  ],
  allowances: [...SEAM],
  build: (v) => {
    const end = pillowEnd(v.depth / 2);
    const flat = (width: number) => ({ width, top: end, bottom: end });
    return body(v.length, [{ id: 'back', ...flat(v.width) }, { id: 'front', ...flat(v.width - v.lastPanelLess) }], glueSeam(v.glueFlap, 'front'));
  },
};

/** The flap bulges outwards, its crease inwards, by the same rise. */
function pillowEnd(rise: number): Edge {
  return (length) => {
    const bow = (up: boolean): Curve[] => arcThrough(length, rise, up);
    const [first, ...others] = bow(false);
    return [{ curve: first, inner: { creases: [bow(true)] } }, ...others.map((curve) => ({ curve }))];
  };
}

/** The arc over a chord from the origin, in two halves so that its highest point is an end; radius = (c²/4 + h²)/2h. */
function arcThrough(chord: number, rise: number, up: boolean): Curve[] {
  const radius = (chord ** 2 / 4 + rise ** 2) / (2 * rise);
  const points = [{ x: 0, y: 0 }, { x: chord / 2, y: up ? rise : -rise }, { x: chord, y: 0 }];
  return [0, 1].map((i) => arcBetween({ from: points[i], to: points[i + 1], radiusX: radius, radiusY: radius, tilt: 0, large: false, positive: !up })!);
}

export const fivePanelHanger: Style = {
  id: 'five-panel-hanger',
  description: 'tuck carton with a fifth panel glued behind the back; both rise above the top and carry a hang hole',
  grain,
  dimensions: cartonDimensions([70, 25, 110]),
  allowances: [
    SEAM[0],
    SEAM[1],
    ...TUCK.filter((rule) => rule !== thumbNotch),
    allowance('hanger', 'by how much the hanger rises above the body', { of: ({ length }) => Math.min(35, Math.max(20, length / 2)), said: 'half the length, 20 to 35' }, [12, 80]),
    allowance('hangHole', 'diameter of the hang hole', { of: ({ hanger, length }) => Math.min(8, hanger / 2, length / 3), said: '8, at most half the hanger and a third of the length' }, [4, { of: ({ hanger, length }) => Math.min(hanger / 2, length / 3), said: 'half the hanger, a third of the length' }]),
  ],
  build: (v) => {
    const outer = v.length - v.lastPanelLess;
    const [bottomCover, topCover] = [tuckEnd('bottom', v), tuckEnd('top', v)];
    // The cover hangs on the front and tucks in before the back, which lies outermost in the row.
    const dust = (id: string, atStart: boolean) => (atStart ? dustEnd(id, v) : mirrored(dustEnd(id, v)));
    const area = loop([[2 * GLUE_MARGIN, -2 * GLUE_MARGIN], [2 * GLUE_MARGIN, 2 * GLUE_MARGIN - v.depth], [outer - 2 * GLUE_MARGIN, 2 * GLUE_MARGIN - v.depth], [outer - 2 * GLUE_MARGIN, -2 * GLUE_MARGIN]]);
    return body(v.depth, [
      { id: 'hanger panel', width: outer, top: hangerTop(v), inner: { gluing: [{ area, onto: 'back' }] } },
      { id: 'side', width: v.width, bottom: dust('bottom dust flap', true), top: dust('top dust flap', false) },
      { id: 'front', width: v.length, bottom: bottomCover, top: topCover },
      { id: 'other side', width: v.width, bottom: dust('bottom other dust flap', false), top: dust('top other dust flap', true) },
      { id: 'back', width: v.length, top: mirrored(hangerTop(v)) },
    ]);
  },
};

/** Its hole lies half a length from the crease at the start, so that the holes of both panels meet. */
function hangerTop({ length, hanger, hangHole }: Values): Edge {
  return (across) => {
    const hole = mapPath(translation(length / 2, hangHole - hanger), circle(0, 0, hangHole / 2));
    const radius = Math.min(10, hanger / 3);
    return side([[0, 0], [0, -hanger, { radius, inner: { openings: [hole] } }], [across, -hanger, { radius }], [across, 0]]);
  };
}
