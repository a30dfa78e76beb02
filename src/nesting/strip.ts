import { childSeed } from '../base/random.ts';
import { boxOf, type Box } from '../geometry/point.ts';
import { turnBox } from '../geometry/turn.ts';
import { requiredGap, type Candidate, type Placement, type Problem, type StopReason } from '../layout/problem.ts';
import { LANES, type DriverSettings } from './driver.ts';
import { budgetOf } from './effort.ts';
import { grownAreaBelow } from './limits/area-limit.ts';
import { placedBox } from './rank.ts';
import type { StripState } from './searches/strip.ts';
import { layoutIsValid } from './valid.ts';

export interface StripSettings extends Pick<DriverSettings, 'effort' | 'seed' | 'runner' | 'stop'> {
  readonly onImprovement?: (event: StripImprovement) => void;
}

export interface StripImprovement {
  /** Length used, µm. */
  readonly length: number;
  readonly source: string;
  readonly work: number;
  readonly placements: readonly Placement[];
}

export interface StripSolution {
  /** Undefined when the blanks were not all placed within the longest cut-off. */
  readonly best: Candidate | undefined;
  /** From the usable area's start to the end of the furthest blank, µm; 0 when there is no layout. */
  readonly length: number;
  /** No layout is shorter than this, µm. */
  readonly lowerBound: number;
  readonly stopped: StopReason;
  /** Counted work. */
  readonly work: number;
  readonly history: readonly StripImprovement[];
}

/**
 * The counts demanded on the shortest strip: lanes of free search that meet after fixed amounts of counted work. The same
 * problem, effort and seed give the same answer, whatever the runner.
 */
export async function solveStrip(problem: Problem, settings: StripSettings): Promise<StripSolution> {
  if (problem.demand.kind !== 'counts') throw new RangeError('A strip needs counts.');
  const parts = problem.demand.counts.flatMap((count, part) => Array.from({ length: count }, () => part));
  const lowerBound = stripLowerBound(problem, parts);
  const { free, laneWork } = budgetOf(settings.effort);
  const history: StripImprovement[] = [];
  let best = linedUp(problem, parts);
  if (best) history.push(best);
  let states: (StripState | undefined)[] = Array.from({ length: LANES }, () => undefined);
  let work = 0;
  const stopReason = () => (best && best.length <= lowerBound ? 'limit-met' : settings.stop());
  for (let round = 0; work < free && !stopReason(); round++) {
    const known = best?.placements;
    const tasks = states.map((state, lane) => ({ kind: 'strip' as const, problem, seed: childSeed(childSeed(settings.seed, lane), round), work: laneWork, parts, bound: lowerBound, best: known, state }));
    const results = await settings.runner.run(tasks, () => settings.stop() !== undefined);
    for (const result of results) work += result.work;
    for (const { found } of results) {
      const length = found ? usedLength(problem, found.placements) : Infinity;
      if (!found || length >= (best?.length ?? Infinity) || !layoutIsValid(problem, found.placements)) continue;
      best = { length, source: found.source, work, placements: found.placements };
    }
    if (best && best !== history.at(-1)) {
      history.push(best);
      settings.onImprovement?.(best);
    }
    states = results.map(({ state }) => adjusted(state, best, known));
    if (results.every((result) => result.work === 0)) break;
  }
  return {
    best: best && { placements: best.placements, source: best.source },
    length: best?.length ?? 0,
    lowerBound,
    stopped: stopReason() ?? 'effort',
    work,
    history,
  };
}

/** One blank after the other along the strip: something to show from the start, and to shorten. */
function linedUp(problem: Problem, parts: readonly number[]): StripImprovement | undefined {
  const { usable } = problem;
  const gap = requiredGap(problem.rules);
  let x = usable.minX;
  const placements = parts.map((part): Placement => {
    const { outline, turns } = problem.parts[part];
    const fitting = turns.find((turn) => heightOf(turnBox(boxOf(outline), turn)) <= usable.maxY - usable.minY) ?? turns[0];
    const box = turnBox(boxOf(outline), fitting);
    const placement = { part, turn: fitting, x: x - box.minX, y: usable.minY - box.minY };
    x += box.maxX - box.minX + gap;
    return placement;
  });
  if (!layoutIsValid(problem, placements)) return undefined;
  return { length: usedLength(problem, placements), source: 'one after the other', work: 0, placements };
}

function heightOf({ minY, maxY }: Box): number {
  return maxY - minY;
}

/** A lane keeps its failed layout only while the best is still the one it was working to shorten. */
function adjusted(state: StripState | undefined, best: StripImprovement | undefined, known: readonly Placement[] | undefined): StripState | undefined {
  return state && best && best.placements !== known ? { ...state, failed: undefined, failures: 0 } : state;
}

function usedLength(problem: Problem, placements: readonly Placement[]): number {
  return placements.reduce((most, placement) => Math.max(most, placedBox(problem, placement).maxX - problem.usable.minX), 0);
}

/**
 * The blanks grown by half the gap are disjoint in the strip grown likewise; and the strip is at least as long as the least
 * length of any blank.
 */
export function stripLowerBound(problem: Problem, parts: readonly number[]): number {
  const gap = requiredGap(problem.rules);
  const width = problem.usable.maxY - problem.usable.minY;
  const areas = problem.parts.map((part) => grownAreaBelow(part.outline, gap / 2));
  const area = parts.reduce((sum, part) => sum + areas[part], 0);
  // The grown strip has round corners; its full rectangle is a little larger.
  const byArea = area / (width + gap) - gap;
  const longest = parts.reduce((most, part) => Math.max(most, leastLength(problem, part, width)), 0);
  return Math.max(Math.ceil(byArea), longest, 0);
}

/** Of the rotations in which the part is not too tall, the shortest along the strip. */
function leastLength({ parts }: Problem, part: number, width: number): number {
  const boxes = parts[part].turns.map((turn) => turnBox(boxOf(parts[part].outline), turn)).filter((box) => box.maxY - box.minY <= width);
  return boxes.length === 0 ? 0 : Math.min(...boxes.map((box) => box.maxX - box.minX));
}
