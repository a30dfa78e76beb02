import type { Limit, Problem } from '../../layout/problem.ts';
import { areaLimit } from './area-limit.ts';
import { grant } from './granted.ts';
import { hexagonLimit } from './hexagon-limit.ts';
import { ovalsLimit } from './ovals-limit.ts';
import { rectanglesLimit } from './rectangles-limit.ts';

/**
 * Upper limits of ups that need no search, tightest first; the one by area always among them. No layout that the judge accepts, with its tolerance,
 * has more ups than any of them.
 */
export function closedFormLimits(problem: Problem): Limit[] {
  const granted = grant(problem);
  return [areaLimit, rectanglesLimit, hexagonLimit, ovalsLimit]
    .flatMap((limit) => limit(problem, granted) ?? [])
    .sort((a, b) => a.ups - b.ups || a.value - b.value);
}
