import { mapPath, reversePath, scaling } from '../geometry/affine.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Blank } from './dieline.ts';

/** x changes sign, so what ran counter-clockwise runs clockwise. */
const MIRROR = scaling(-1, 1);

/** The blank seen from its other side. */
export function mirrorBlank(blank: Blank): Blank {
  const { box } = blank;
  return {
    ...blank,
    outline: mirrorLoop(blank.outline),
    openings: blank.openings.map(mirrorLoop),
    rules: blank.rules.map((rule) => ({ ...rule, curves: mapPath(MIRROR, rule.curves) })),
    box: { ...box, minX: -box.maxX, maxX: -box.minX },
  };
}

function mirrorLoop(loop: CurvePath): CurvePath {
  return mapPath(MIRROR, reversePath(loop));
}
