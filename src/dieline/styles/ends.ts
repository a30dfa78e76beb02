import { arcBetween } from '../../geometry/arc.ts';
import { loop, side, type Corner, type Edge, type Flap } from './flap.ts';
import type { Values } from './parameter.ts';

/** Glue keeps this far from the edges of its area, mm (house value). */
export const GLUE_MARGIN = 1;
/** Tangent of 15°, by which glue flaps taper (common practice). */
const TAPER_15 = 0.268;
/** Tangent of 5°: free edges of flaps taper so that they clear what they fold against. */
const TAPER_5 = 0.0875;

export const plain: Edge = (length) => side([[0, 0], [length, 0]]);

/** An edge on which one flap hangs, `inset` from each end and `beyond` it: the crease of an outer flap lies farther out. */
export function hung(make: (length: number) => Flap, { inset = 0, beyond = 0, slit = 0 } = {}): Edge {
  return (length) =>
    side([
      [0, 0],
      [inset, -beyond],
      [length - inset, -beyond, { flap: make(length - 2 * inset), slit }],
      [length, 0],
    ]);
}

/** The flap along the seam, tapered at both ends. */
export function glueSeam(width: number, onto: string): Edge {
  return hung((length) => taperedGlueFlap('glue flap', length, width, onto));
}

export function taperedGlueFlap(id: string, length: number, width: number, onto: string): Flap {
  const taper = TAPER_15 * width;
  return { id, side: side([[0, 0], [taper, -width], [length - taper, -width], [length, 0]]), inner: { gluing: [{ area: glueTrapezium(length, width, taper), onto }] } };
}

/** The area within a flap that tapers by `taper` at each end, the margin kept on all sides. */
export function glueTrapezium(length: number, depth: number, taper: number) {
  // Measured across the slanting edge the margin is kept when along the flap it is this much.
  const along = GLUE_MARGIN * Math.sqrt(1 + (taper / depth) ** 2);
  const near = (taper / depth) * GLUE_MARGIN + along;
  const far = taper - (taper / depth) * GLUE_MARGIN + along;
  const corners: Corner[] = [[near, -GLUE_MARGIN], [far, GLUE_MARGIN - depth], [length - far, GLUE_MARGIN - depth], [length - near, -GLUE_MARGIN]];
  return loop(corners);
}

/** A tuck flap: round corners that find the way in. */
export function tuck(id: string, length: number, depth: number): Flap {
  const radius = Math.min(0.75 * depth, length / 3);
  const taper = Math.min(TAPER_5 * depth, length / 10);
  return { id, side: side([[0, 0], [taper, -depth, { radius }], [length - taper, -depth, { radius }], [length, 0]]) };
}

/** A cover with its tuck flap: the tuck's corners are round, and slits beside its crease hold it behind the dust flaps. */
export function tuckEnd(id: string, { width, clearance, coverLess, tuckFlap, lockSlit }: Values): Edge {
  const depth = width - coverLess;
  const cover = (length: number): Flap => ({
    id: `${id} cover`,
    side: side([
      [0, 0],
      [0, -depth],
      [clearance, -depth],
      [length - clearance, -depth, { flap: tuck(`${id} tuck`, length - 2 * clearance, tuckFlap), slit: lockSlit }],
      [length, -depth],
      [length, 0],
    ]),
  });
  return hung(cover, { inset: clearance });
}

/**
 * A dust flap beside a tuck end. At its start lies the panel behind which the tuck flap goes: there the flap is full only
 * near its crease, a shoulder that catches in the slit, and then stands back so that the tuck flap finds its way.
 */
export function dustEnd(id: string, { clearance, dustFlap, tuckFlap, lockSlit }: Values): Edge {
  return hung(
    (length) => {
      const back = Math.min(Math.max(lockSlit, 2), length / 4, dustFlap / 3);
      const shoulder = Math.min(tuckFlap / 3, dustFlap / 3);
      const taper = Math.min(TAPER_15 * dustFlap, length / 4);
      const radius = Math.min(3, dustFlap / 8, length / 8);
      const corners: Corner[] = [
        [0, 0],
        [0, -shoulder],
        [back, -shoulder - back],
        [back, -dustFlap, { radius }],
        [length - taper, -dustFlap, { radius }],
        [length, 0],
      ];
      return { id, side: side(corners) };
    },
    { inset: clearance },
  );
}

/** The edge of the panel behind which a tuck flap goes. */
export function notched(radius: number): Edge {
  if (radius === 0) return plain;
  return (length) => {
    const [from, to] = [{ x: length / 2 - radius, y: 0 }, { x: length / 2 + radius, y: 0 }];
    const top = { x: length / 2, y: radius };
    const quarter = (a: typeof from, b: typeof from) => ({ curve: arcBetween({ from: a, to: b, radiusX: radius, radiusY: radius, tilt: 0, large: false, positive: false })! });
    const [before, after] = [side([[0, 0], [from.x, 0]]), side([[to.x, 0], [length, 0]])];
    return [...before, quarter(from, top), quarter(top, to), ...after];
  };
}

/** A plain flap with slightly tapered ends, corners blunted. */
export function taperedFlap(id: string, length: number, depth: number, { taper = TAPER_5 * depth, gluedOnto = '' } = {}): Flap {
  const t = Math.min(taper, length / 4);
  const radius = Math.min(2, depth / 6, length / 8);
  const gluing = gluedOnto === '' ? {} : { inner: { gluing: [{ area: glueTrapezium(length, depth, t), onto: gluedOnto }] } };
  return { id, side: side([[0, 0], [t, -depth, { radius }], [length - t, -depth, { radius }], [length, 0]]), ...gluing };
}
