import { describe, expect, test } from 'vitest';
import { styledBlank } from '../../src/dieline/styles/dieline-of-style.ts';
import { STYLES } from '../../src/dieline/styles/styles.ts';
import { loopArea } from '../../src/geometry/loop-area.ts';
import { fold, pointsOf } from '../support/folding.ts';
import { distanceToOutline, isWithin } from '../support/outline-distance.ts';

/** Clearances, calipers and the narrower last panel move things by so much, mm. */
const PLAY_MM = 1.2;

const blankOf = (id: string, changes: Record<string, number> = {}) => {
  const style = STYLES.find((candidate) => candidate.id === id)!;
  return styledBlank(id, { ...Object.fromEntries(style.dimensions.map(({ name, example }) => [name, example])), ...changes });
};

/** Every fold is square but those of hexagons and of what is glued flat. */
const angleIn = (style: string) => (id: string) => {
  if (style === 'pillow') return 180;
  return style === 'hexagonal' && /^(panel|glue flap)/.test(id) ? 60 : 90;
};

/** Points lie on the panel: in its plane, and within its outline or as good as. */
function liesOn(style: string, on: string, onto: string, points: readonly { x: number; y: number }[]) {
  const { flat } = blankOf(style);
  const outline = pointsOf(flat.panels.find(({ id }) => id === onto)!.outline).slice(1);
  return fold(flat, angleIn(style)).seenFrom(onto, on, points).map(([x, y, z]) => {
    const beside = isWithin({ x, y }, outline) ? 0 : distanceToOutline({ x, y }, outline);
    return Math.max(Math.abs(z), beside);
  });
}

/** A label and a fan go round; the glue of a crash-lock bottom is on parts that fold back on themselves. */
const seams = STYLES.flatMap(({ id }) => blankOf(id).flat.gluing.filter(({ on, onto }) => on !== onto && !on.endsWith('side bottom')).map(({ on, onto, area }) => [id, on, onto, area] as const));

describe('folded up, glue comes to lie on the panel it is for', () => {
  test('there is glue to look at in every glued style', () => {
    expect([...new Set(seams.map(([id]) => id))]).toEqual(['straight-tuck', 'reverse-tuck', 'glued-end-flaps', 'tuck-top-crash-lock-bottom', 'snap-bottom', 'glued-sleeve', 'hexagonal', 'pillow', 'tray-glued-corners', 'five-panel-hanger']);
  });

  test.each(seams)('%s: %s on %s', (id, on, onto, area) => {
    expect(Math.max(...liesOn(id, on, onto, pointsOf(area)))).toBeLessThanOrEqual(PLAY_MM);
  });
});

describe('folded up, a tuck flap stands behind the panel opposite, its crease at that panel’s edge (that of a hanger goes on above it)', () => {
  test.each([
    ['straight-tuck', 'top', 'front'], ['straight-tuck', 'bottom', 'front'], ['reverse-tuck', 'top', 'front'], ['reverse-tuck', 'bottom', 'back'],
    ['tuck-top-crash-lock-bottom', 'top', 'front'], ['snap-bottom', 'top', 'front'], ['hexagonal', 'top', 'panel 5'], ['hexagonal', 'bottom', 'panel 5'], ['five-panel-hanger', 'top', 'back'],
  ])('%s: %s tuck in %s', (id, end, opposite) => {
    const { flat } = blankOf(id);
    const tuck = flat.panels.find((panel) => panel.id === `${end} tuck`)!;
    expect(Math.max(...liesOn(id, tuck.id, opposite, pointsOf(tuck.outline)))).toBeLessThanOrEqual(PLAY_MM);
    const { hinge } = tuck.hangsOn!;
    const outline = pointsOf(flat.panels.find((panel) => panel.id === opposite)!.outline).slice(1);
    for (const [x, y] of fold(flat, angleIn(id)).seenFrom(opposite, tuck.id, [hinge.from, hinge.to])) expect(id === 'five-panel-hanger' ? 0 : distanceToOutline({ x, y }, outline)).toBeLessThanOrEqual(PLAY_MM);
  });

  test('one that is drawn too long would not', () => {
    const { flat } = blankOf('straight-tuck');
    expect(Math.max(...liesOn('straight-tuck', 'top tuck', 'side', pointsOf(flat.panels[1]!.outline)))).toBeGreaterThan(PLAY_MM);
  });
});

test('tray without glue: the tabs of the rolled walls stand in the slots of the base', () => {
  const { flat } = blankOf('tray-no-glue');
  const slots = flat.openings.map((opening) => pointsOf(opening).slice(1));
  for (const side of ['left', 'right']) {
    const inside = flat.panels.find(({ id }) => id === `${side} wall inside`)!;
    const below = fold(flat, () => 90).seenFrom('base', inside.id, pointsOf(inside.outline)).filter(([, , z]) => z < -0.3);
    expect(below.length).toBeGreaterThanOrEqual(4);
    for (const [x, y] of below) expect(Math.min(...slots.map((slot) => (isWithin({ x, y }, slot) ? 0 : distanceToOutline({ x, y }, slot))))).toBeLessThanOrEqual(0.5);
  }
});

describe('areas by closed forms, mm²', () => {
  const areaOf = (id: string, values: Record<string, number> = {}) => Math.abs(loopArea(blankOf(id, values).flat.outline));

  test('labels', () => {
    expect(areaOf('round-label', { diameter: 60 })).toBeCloseTo(900 * Math.PI, 3);
    expect(areaOf('oval-label', { width: 80, height: 50 })).toBeCloseTo(1000 * Math.PI, 2);
    const { values } = blankOf('rounded-label', { width: 80, height: 50 });
    expect(areaOf('rounded-label', { width: 80, height: 50 })).toBeCloseTo(4000 - (4 - Math.PI) * values['corner']! ** 2, 2);
  });

  test('sleeve: four panels and a flap tapered by 15 degrees at both ends', () => {
    const { values } = blankOf('glued-sleeve');
    const { length = 0, width = 0, depth = 0, lastPanelLess = 0, glueFlap = 0 } = values;
    expect(areaOf('glued-sleeve')).toBeCloseTo(depth * (2 * length + 2 * width - lastPanelLess) + glueFlap * (depth - glueFlap * Math.tan(Math.PI / 12)), 0);
  });

  test('cup fan: the mantle of a truncated cone (π/2 · slant · (top + bottom)) and the overlap along one side', () => {
    const { values } = blankOf('cup-fan');
    const { top = 0, bottom = 0, height = 0, overlap = 0 } = values;
    const slant = Math.sqrt(height ** 2 + ((top - bottom) / 2) ** 2);
    expect(Math.abs(areaOf('cup-fan') / ((Math.PI / 2) * slant * (top + bottom) + overlap * slant) - 1)).toBeLessThan(0.01);
  });
});
