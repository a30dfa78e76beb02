import { inputError, type InputError } from '../base/issue.ts';
import { toMicrons, toMillimetres } from '../base/units.ts';
import { cutSequence, type CutSequence } from '../estimate/guillotine/cut-sequence.ts';
import { cuttingTime } from '../estimate/guillotine/cutting-time.ts';
import { boxOf } from '../geometry/point.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { placedArea, resultOf } from '../layout/outcome.ts';
import type { Part, Placement, Problem } from '../layout/problem.ts';
import { judgeForProduction } from '../layout/sound.ts';
import { isPlainRectangle, mostByStraightCuts } from '../nesting/mixed/straight-layout.ts';
import { figuresOf, placedBox } from '../nesting/rank.ts';
import type { Guillotine } from '../press/guillotine.ts';
import type { CuttingFacts } from '../render/cutting-facts.ts';
import type { NestOutcome } from './nest.ts';

/** Refuses a blank that straight cuts cannot get out of a sheet. */
export function checkStraightEdges(part: Part): void {
  if (isPlainRectangle(part)) return;
  const box = boxOf(part.outline);
  const why = part.openings.length > 0 ? 'it has openings' : 'its outline is not a rectangle';
  throw inputError('cannot-be-guillotined', { where: part.id, facts: { width: toMillimetres(box.maxX - box.minX), height: toMillimetres(box.maxY - box.minY), why } });
}

/** The cut list of placements on the whole sheet, margins and all; undefined when it cannot be cut. Micrometres. */
export function cutListOf(problem: Problem, placements: readonly Placement[], machine: Guillotine): CutSequence | undefined {
  const sheet = { minX: 0, minY: 0, maxX: problem.sheet.width, maxY: problem.sheet.height };
  return cutSequence(sheet, placements.map((placement) => placedBox(problem, placement)), toMicrons(machine.width));
}

/**
 * The best layout by straight cuts in place of the die-cut one that `outcome` holds, its cut list, and both compared.
 * Throws an InputError when the machine is too narrow for the sheet.
 */
export function cutByGuillotine(outcome: NestOutcome, { machine, caliper, seed }: { readonly machine: Guillotine; readonly caliper: number | undefined; readonly seed: number }): { readonly outcome: NestOutcome; readonly cutting: CuttingFacts } {
  const { problem, design, limit, solution } = outcome;
  const { placements, exact } = mostByStraightCuts(problem);
  const sequence = cutListOf(problem, placements, machine);
  if (!sequence) throw tooNarrow(problem, machine);
  const list = cutListInMillimetres(sequence);
  const dieCut = { ups: outcome.layouts[0]!.file.placements.length, limit: limit.ups };
  const source = 'straight cuts';
  const result = {
    ...resultOf({ ups: placements.length, limit, source, seed, stopped: exact ? 'limit-met' : 'effort' }, problem, placedArea(problem, placements)),
    cut: { by: 'guillotine', optimal: exact, dieCutUps: dieCut.ups, strokes: list.strokes, turns: list.turns, steps: list.steps },
  };
  const { sound, judgement } = judgeForProduction(layoutOf(problem, [design], placements, result));
  if (!sound) throw new Error(`the judge refused the layout: ${JSON.stringify(judgement.faults[0])}`);
  return {
    outcome: { ...outcome, layouts: [{ file: sound, ranked: { placements, source, figures: figuresOf(problem, placements) } }], solution: { ...solution, bestCell: undefined } },
    cutting: {
      exact, dieCut, machine: machine.name, liftHeight: machine.liftHeight, caliper,
      ...list,
      time: cuttingTime(sequence, machine, caliper),
      setUpMinutes: machine.setUpMinutes,
    },
  };
}

export function tooNarrow({ sheet }: Problem, machine: Guillotine): InputError {
  return inputError('guillotine-too-narrow', { where: machine.name ?? 'guillotine', facts: { width: machine.width, sheetWidth: toMillimetres(sheet.width), sheetHeight: toMillimetres(sheet.height) } });
}

export function cutListInMillimetres({ steps, lines, strokes, turns }: CutSequence): CutSequence {
  return {
    steps: steps.map((step) => ({ ...step, places: step.places.map(toMillimetres), width: toMillimetres(step.width), height: toMillimetres(step.height) })),
    lines: lines.map((line) => ({ ...line, at: toMillimetres(line.at), from: toMillimetres(line.from), to: toMillimetres(line.to) })),
    strokes,
    turns,
  };
}
