import { inputError } from '../base/issue.ts';
import { toMicrons, toMillimetres } from '../base/units.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import { boxOf, COORDINATE_LIMIT } from '../geometry/point.ts';
import { turnBox, type Turn } from '../geometry/turn.ts';
import type { Design } from '../layout/layout-file.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { placedArea } from '../layout/outcome.ts';
import { preparePart } from '../layout/part.ts';
import type { Part, Problem } from '../layout/problem.ts';
import { judgeForProduction, type SoundLayout } from '../layout/sound.ts';
import { solveStrip, type StripSettings, type StripSolution } from '../nesting/strip.ts';
import { resolveRules } from '../press/rules.ts';

/** A given set of blanks on a reel of given width; the cut-off runs along x, the machine direction. Millimetres. */
export interface ReelJob {
  readonly width: number;
  readonly gap: number;
  /** 0 unless given. */
  readonly bleed: number;
  readonly designs: readonly { readonly id: string; readonly blank: Blank; readonly drawing: Pick<Dieline, 'fingerprint'>; readonly ups: number; readonly turns: readonly Turn[] }[];
}

export interface ReelOutcome {
  readonly layout: SoundLayout;
  readonly solution: StripSolution;
  readonly lengthMm: number;
  readonly lengthLowerBoundMm: number;
}

/** The shortest cut-off that holds all blanks. Throws an InputError when a blank is wider than the reel. */
export async function layReel(job: ReelJob, settings: StripSettings): Promise<ReelOutcome> {
  const prepared = job.designs.map(({ id, blank, drawing, turns }) => preparePart(blank, { id, turns, fingerprint: drawing.fingerprint }));
  const parts = prepared.map(({ part }) => fittingPart(part, job));
  const counts = job.designs.map(({ ups }) => ups);
  const longest = stripProblem(job, parts, counts, longestCutOff(job, parts, counts));
  const solution = await solveStrip(longest, settings);
  if (!solution.best) throw inputError('no-cut-off-found', { where: 'reel', facts: { metres: toMillimetres(longest.sheet.width) / 1000 } });
  const edges = 2 * toMicrons(job.bleed);
  const [length, lowerBound] = [solution.length + edges, solution.lowerBound + edges];
  const problem = stripProblem(job, parts, counts, length);
  const layout = reelLayout(problem, prepared.map(({ design }) => design), { ...solution, length, lowerBound }, settings.seed);
  const { sound, judgement } = judgeForProduction(layout);
  if (!sound) throw new Error(`the judge refused the layout: ${JSON.stringify(judgement.faults[0])}`);
  return { layout: sound, solution, lengthMm: toMillimetres(length), lengthLowerBoundMm: toMillimetres(lowerBound) };
}

/** Only the rotations in which the part, with its bleed, fits across the reel. */
function fittingPart(part: Part, { width, bleed }: ReelJob): Part {
  const heights = part.turns.map((turn) => {
    const { minY, maxY } = turnBox(boxOf(part.outline), turn);
    return maxY - minY;
  });
  const turns = part.turns.filter((_, i) => heights[i]! + 2 * toMicrons(bleed) <= toMicrons(width));
  if (turns.length > 0) return { ...part, turns };
  throw inputError('blank-wider-than-reel', { where: part.id, facts: { needs: toMillimetres(Math.min(...heights)) + 2 * bleed, width } });
}

/** All blanks one after the other, each its longer side along the reel: no sensible layout is longer. */
function longestCutOff({ gap, bleed }: ReelJob, parts: readonly Part[], counts: readonly number[]): number {
  const sides = parts.map(({ outline }) => {
    const box = boxOf(outline);
    return Math.max(box.maxX - box.minX, box.maxY - box.minY) + toMicrons(gap);
  });
  const total = sides.reduce((sum, side, part) => sum + side * counts[part]!, 2 * toMicrons(bleed));
  return Math.min(total, COORDINATE_LIMIT);
}

/** The bleed stays on the reel and within the cut-off, so knives keep it from the edges. `length`: of the cut-off, µm. */
function stripProblem({ width, gap, bleed }: ReelJob, parts: readonly Part[], counts: readonly number[], length: number): Problem {
  const rules = resolveRules({ gap, bleed });
  const [edge, height] = [toMicrons(bleed), toMicrons(width)];
  return {
    sheet: { width: length, height },
    usable: { minX: edge, minY: edge, maxX: length - edge, maxY: height - edge },
    printable: { minX: 0, minY: 0, maxX: length, maxY: height },
    lay: 'left',
    keepOuts: [],
    rules: { gap: toMicrons(rules.gap), bleed: toMicrons(rules.bleed), bleedMeeting: rules.bleedMeeting, commonKnife: false },
    parts,
    demand: { kind: 'counts', counts },
    locked: [],
    symmetry: 'none',
  };
}

function reelLayout(problem: Problem, designs: readonly Design[], { best, length, lowerBound, stopped }: StripSolution, seed: number) {
  const placements = best!.placements;
  const share = placedArea(problem, placements) / (problem.sheet.width * problem.sheet.height);
  const rounded = (value: number) => Math.round(value * 1e6) / 1e6;
  return layoutOf(problem, designs, placements, {
    ups: placements.length,
    lengthMm: toMillimetres(length),
    lengthLowerBoundMm: toMillimetres(lowerBound),
    optimal: length <= lowerBound,
    yield: rounded(share),
    waste: rounded(1 - share),
    source: best!.source,
    seed,
    stopped,
  });
}
