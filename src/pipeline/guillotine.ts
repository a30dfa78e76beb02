import { inputError } from '../base/issue.ts';
import { toMicrons, toMillimetres } from '../base/units.ts';
import { cutSequence, type CutSequence } from '../estimate/guillotine/cut-sequence.ts';
import { cuttingTime } from '../estimate/guillotine/cutting-time.ts';
import { boxOf, ringArea, type Box } from '../geometry/point.ts';
import { turnBox, type Turn } from '../geometry/turn.ts';
import { layoutOf } from '../layout/layout-of.ts';
import { placedArea, resultOf } from '../layout/outcome.ts';
import { requiredGap, type Part, type Placement, type Problem } from '../layout/problem.ts';
import { judgeForProduction } from '../layout/sound.ts';
import { fieldSets } from '../nesting/patterns/fields.ts';
import { straightCuts } from '../nesting/patterns/rectangles/straight-cuts.ts';
import { figuresOf, placedBox } from '../nesting/rank.ts';
import type { Guillotine } from '../press/guillotine.ts';
import type { CuttingFacts } from '../render/cutting-facts.ts';
import type { NestOutcome } from './nest.ts';

/** Refuses a blank that straight cuts cannot get out of a sheet. */
export function checkStraightEdges({ id, outline, openings }: Part): void {
  const box = boxOf(outline);
  const isRectangle = ringArea(outline) === (box.maxX - box.minX) * (box.maxY - box.minY);
  if (!isRectangle || openings.length > 0) throw inputError('cannot-be-guillotined', { where: id, facts: { width: toMillimetres(box.maxX - box.minX), height: toMillimetres(box.maxY - box.minY), why: isRectangle ? 'it has openings' : 'its outline is not a rectangle' } });
}

/**
 * The best layout by straight cuts in place of the die-cut one that `outcome` holds, its cut list, and both compared.
 * Throws an InputError when the machine is too narrow for the sheet.
 */
export function cutByGuillotine(outcome: NestOutcome, { machine, caliper, seed }: { readonly machine: Guillotine; readonly caliper: number | undefined; readonly seed: number }): { readonly outcome: NestOutcome; readonly cutting: CuttingFacts } {
  const { problem, design, limit, solution } = outcome;
  const { placements, exact } = straightLayout(problem);
  const sequence = cutSequence({ minX: 0, minY: 0, maxX: problem.sheet.width, maxY: problem.sheet.height }, placements.map((placement) => placedBox(problem, placement)), toMicrons(machine.width));
  if (!sequence) throw inputError('guillotine-too-narrow', { where: machine.name ?? 'guillotine', facts: { width: machine.width, sheetWidth: toMillimetres(problem.sheet.width), sheetHeight: toMillimetres(problem.sheet.height) } });
  const dieCut = { ups: outcome.layouts[0]!.file.placements.length, limit: limit.ups };
  const source = 'straight cuts';
  const result = {
    ...resultOf({ ups: placements.length, limit, source, seed, stopped: exact ? 'limit-met' : 'effort' }, problem, placedArea(problem, placements)),
    cut: { by: 'guillotine', optimal: exact, dieCutUps: dieCut.ups, strokes: sequence.strokes, turns: sequence.turns, steps: sequence.steps.map(inMillimetres) },
  };
  const { sound, judgement } = judgeForProduction(layoutOf(problem, [design], placements, result));
  if (!sound) throw new Error(`the judge refused the layout: ${JSON.stringify(judgement.faults[0])}`);
  return {
    outcome: { ...outcome, layouts: [{ file: sound, ranked: { placements, source, figures: figuresOf(problem, placements) } }], solution: { ...solution, bestCell: undefined } },
    cutting: {
      exact, dieCut, machine: machine.name, liftHeight: machine.liftHeight, caliper,
      steps: sequence.steps.map(inMillimetres),
      lines: sequence.lines.map((line) => ({ ...line, at: toMillimetres(line.at), from: toMillimetres(line.from), to: toMillimetres(line.to) })),
      strokes: sequence.strokes,
      turns: sequence.turns,
      time: cuttingTime(sequence, machine, caliper),
      setUpMinutes: machine.setUpMinutes,
    },
  };
}

/** Field by field the most blanks by straight cuts, as tight as the gap allows. */
function straightLayout(problem: Problem): { placements: Placement[]; exact: boolean } {
  const [part] = problem.parts;
  const gap = requiredGap(problem.rules);
  const upright = part!.turns.find((turn) => turn % 2 === 0);
  const sideways = part!.turns.find((turn) => turn % 2 === 1);
  const first = upright ?? sideways!;
  const second = upright === undefined ? undefined : sideways;
  const { maxX: a, maxY: b } = sizeIn(part!, first);
  const [fields = []] = fieldSets(problem, Math.min(a, b));
  let exact = true;
  const placements = fields.flatMap((field) => {
    const found = straightCuts(field.maxX - field.minX + gap, field.maxY - field.minY + gap, a + gap, b + gap, second !== undefined);
    exact &&= found.exact;
    return found.boxes.map(({ x, y, turned }): Placement => {
      const turn = turned ? second! : first;
      const box = turnBox(boxOf(part!.outline), turn);
      return { part: 0, turn, x: field.minX + x - box.minX, y: field.minY + y - box.minY };
    });
  });
  return { placements, exact };
}

function sizeIn(part: Part, turn: Turn): Pick<Box, 'maxX' | 'maxY'> {
  const box = turnBox(boxOf(part.outline), turn);
  return { maxX: box.maxX - box.minX, maxY: box.maxY - box.minY };
}

function inMillimetres(step: CutSequence['steps'][number]): CutSequence['steps'][number] {
  return { ...step, places: step.places.map(toMillimetres), width: toMillimetres(step.width), height: toMillimetres(step.height) };
}
