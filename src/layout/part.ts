import { inputError } from '../base/issue.ts';
import { MICRONS_PER_MM, toMillimetres } from '../base/units.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import { mapPath, translation } from '../geometry/affine.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { flattenLoop, type FlattenedLoop } from '../geometry/flatten.ts';
import { readPathData, writePathData } from '../geometry/path-data.ts';
import { boxOf, COORDINATE_LIMIT, counterClockwise, reverseRing, shiftRing, type Point, type Ring } from '../geometry/point.ts';
import { degreesOf, turnOfDegrees, type Turn } from '../geometry/turn.ts';
import type { Design } from './layout-file.ts';
import type { Part } from './problem.ts';
import { micronRing, mmRing } from './rings.ts';
import { checkSimple, simpleFaults } from './simple-ring.ts';

/**
 * How far a flattened outline may lie outside the true one. A corner of radius 8 mm takes 11 edges, a round label of
 * 60 mm takes 86; two of them lose at most twice this of the sheet, and only between the points where axes touch.
 */
export const FLATTENING_MM = 0.02;
const FINE_FLATTENING_MM = 0.001;

/** Decimals of true curves in a layout file: their rounding stays well under the judge's tolerance. */
const CURVE_DECIMALS = 4;

/** One design in both its forms: for the search, and for the layout file. */
export interface Prepared {
  readonly part: Part;
  readonly design: Design;
}

interface PartSettings {
  readonly id: string;
  readonly turns: readonly Turn[];
  readonly fingerprint: Dieline['fingerprint'];
}

const known = new WeakMap<Blank, Map<string, Prepared>>();

/**
 * Makes a part of one blank of a drawing: the outline flattened to the outside, its box moved to the origin.
 * `turns` are the allowed rotations in the order of preference. Throws an InputError when the blank is larger than any
 * sheet or when its outline does not come out as a simple ring. The same blank with the same settings gives the same
 * objects, so that all that hangs on a part alone is made once for many sheets.
 */
export function preparePart(blank: Blank, settings: PartSettings): Prepared {
  const bySettings = known.get(blank) ?? new Map<string, Prepared>();
  known.set(blank, bySettings);
  const key = JSON.stringify(settings);
  const prepared = bySettings.get(key) ?? makePart(blank, settings);
  bySettings.set(key, prepared);
  return prepared;
}

function makePart(blank: Blank, { id, turns, fingerprint }: PartSettings): Prepared {
  const { ring: flattened, deviationMicrons } = flattenOutline(blank.outline);
  const box = boxOf(flattened);
  if (Math.max(box.maxX - box.minX, box.maxY - box.minY) > COORDINATE_LIMIT) throw inputError('blank-too-large', { where: id, facts: { limit: toMillimetres(COORDINATE_LIMIT) } });
  const shift = { x: -box.minX, y: -box.minY };
  const outline = shiftRing(flattened, shift);
  checkSimple(outline, `blank ${id}`);
  const openings = blank.openings.map((loop) => openingRing(loop, shift));
  const move = translation(shift.x / MICRONS_PER_MM, shift.y / MICRONS_PER_MM);
  const data = (path: CurvePath) => writePathData(mapPath(move, path), CURVE_DECIMALS);
  return {
    part: { id, outline, outlineExcess: Math.ceil(deviationMicrons), openings, turns },
    design: {
      id,
      outline: mmRing(outline),
      openings: openings.map(mmRing),
      rotations: turns.map(degreesOf),
      drawing: {
        fingerprint,
        outline: data(blank.outline),
        openings: blank.openings.map(data),
        paths: blank.rules.map(({ role, curves }) => ({ role, d: data(curves) })),
      },
    },
  };
}

/** The part of a design as a layout file holds it, for a search that starts from a layout. Rings get the fixed turning senses. */
export function partOfDesign({ id, outline, openings, rotations, drawing }: Design): Part {
  const ring = counterClockwise(micronRing(outline));
  checkSimple(ring, `design ${id}`);
  const turns = rotations.map((degrees) => {
    const turn = turnOfDegrees(degrees);
    if (turn === undefined) throw inputError('rotation-not-quarter', { where: id, facts: { rotation: degrees } });
    return turn;
  });
  const [loop] = drawing?.outline === undefined ? [] : readPathData(drawing.outline);
  const outlineExcess = loop ? Math.ceil(flattenOutline(loop).deviationMicrons) : 0;
  return { id, outline: ring, outlineExcess, openings: openings.map((opening) => reverseRing(counterClockwise(micronRing(opening)))), turns };
}

/** Where the outline comes so near to itself that tangents meet across, finer pieces keep apart what is apart. */
function flattenOutline(loop: CurvePath): FlattenedLoop {
  const flattened = flattenLoop(loop, { toleranceMm: FLATTENING_MM, side: 'outside' });
  return simpleFaults(flattened.ring).length === 0 ? flattened : flattenLoop(loop, { toleranceMm: FINE_FLATTENING_MM, side: 'outside' });
}

/** Flattened to the inside, so that the hole is never larger than the true one. */
function openingRing(loop: CurvePath, shift: Point): Ring {
  return reverseRing(counterClockwise(shiftRing(flattenLoop(loop, { toleranceMm: FLATTENING_MM, side: 'inside' }).ring, shift)));
}
