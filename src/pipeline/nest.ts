import { inputError, type Issue } from '../base/issue.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import { mirrorBlank } from '../dieline/mirror-blank.ts';
import type { Design, LayoutFile } from '../layout/layout-file.ts';
import { layoutOf, placementsOf } from '../layout/layout-of.ts';
import { partOfDesign, preparePart } from '../layout/part.ts';
import type { Candidate, Limit, Placement, Problem } from '../layout/problem.ts';
import type { DriverSettings } from '../nesting/driver.ts';
import type { Solution } from '../nesting/solve.ts';
import { halfOf, isHalved, mirroredTurns } from './both-sides.ts';
import { allowedTurns, checkFits, prepareSheet, type LayingSettings } from './laying.ts';
import { checkLocked } from './locked.ts';
import { answerTask, type Host, type NestAnswer, type NestedLayout } from './nest-task.ts';
import { strippingWish, type StrippingSaid, type StrippingWish } from '../press/stripping.ts';
import type { StrippingAnswer } from './solve-with-stripping.ts';

export type { NestedLayout } from './nest-task.ts';

/** One design on one sheet. */
export interface NestJob extends LayingSettings {
  /** Name of the design in the layout file. */
  readonly id: string;
  /** The blank as seen on the printed side. */
  readonly blank: Blank;
  readonly drawing: Pick<Dieline, 'fingerprint' | 'grain'>;
  readonly grid?: { readonly rows: number; readonly columns: number } | undefined;
  /** Blanks of this layout stay where they are. */
  readonly locked?: LayoutFile | undefined;
  /** How many truly different layouts are wanted. */
  readonly layouts: number;
  /** How the waste is taken off, as a preference or a rule, over what the record of the die-cutter says; `none` where there is none. */
  readonly stripping?: StrippingSaid | 'none' | undefined;
  /** A layout of this job that is known already; the search begins from it. */
  readonly start?: Candidate;
}

export type SearchSettings = Pick<DriverSettings, 'effort' | 'seed'> & Host;

export interface NestOutcome {
  readonly problem: Problem;
  readonly design: Design;
  /** Best first; at least one. */
  readonly layouts: readonly NestedLayout[];
  readonly limit: Limit;
  readonly solution: Solution;
  /** What was assumed or changed. */
  readonly notes: readonly Issue[];
  readonly sheetGrain: 'x' | 'y' | undefined;
  readonly stripping?: StrippingAnswer | undefined;
}

/**
 * Lays one design on one sheet: problem, search, judgement. Throws an InputError when the settings contradict each other
 * or not a single blank fits.
 */
export async function nest(job: NestJob, search: SearchSettings): Promise<NestOutcome> {
  const prepared = prepareNest(job);
  const { problem, design, backDesign, stripping } = prepared;
  const { effort, seed, ...host } = search;
  const outcome = outcomeOf(prepared, await answerTask({ problem, design, ...(backDesign && { backDesign }), layouts: job.layouts, ...(job.start && { start: job.start }), effort, seed, ...(stripping && { stripping }) }, host));
  const found = outcome.layouts.length;
  return found === job.layouts ? outcome : { ...outcome, notes: [...outcome.notes, { code: 'fewer-layouts', severity: 'note', facts: { count: job.layouts, found } }] };
}

/** What was asked and what was answered, together. */
export function outcomeOf({ problem, design, sheetGrain, notes }: PreparedNest, { layouts, solution, notes: refused, stripping }: NestAnswer): NestOutcome {
  return { problem, design, layouts, limit: solution.limit, solution, notes: [...notes, ...refused], sheetGrain, stripping };
}

export interface PreparedNest {
  readonly problem: Problem;
  readonly design: Design;
  /** The mirror image, where one half of the sheet carries backs. */
  readonly backDesign?: Design;
  readonly sheetGrain: 'x' | 'y' | undefined;
  /** By the job and the record of the die-cutter. */
  readonly stripping?: StrippingWish;
  readonly notes: readonly Issue[];
}

/** The search's problem for a job. Throws an InputError for settings that leave nothing possible. */
export function prepareNest(job: NestJob): PreparedNest {
  const { frame, sheetGrain, notes } = prepareSheet(job);
  const turns = allowedTurns(job, job.drawing.grain);
  const { fingerprint } = job.drawing;
  const { part, design } = preparePart(job.blank, { id: job.id, turns, fingerprint });
  const back = frame.symmetry === 'none' ? undefined : preparePart(mirrorBlank(job.blank), { id: `${job.id}-back`, turns: mirroredTurns(turns, frame.symmetry), fingerprint });
  const whole: Problem = { ...frame, parts: back ? [part, back.part] : [part], demand: { kind: 'most' }, locked: [] };
  if (back && (job.locked || job.grid)) throw inputError('options-contradict', { where: '--back', facts: { first: '--back', second: job.locked ? '--locked' : '--grid', reason: 'one half of the sheet follows from the other' } });
  checkFits(part, isHalved(whole) ? halfOf(whole) : whole);
  const problem: Problem = { ...frame, parts: whole.parts, demand: { kind: 'most' }, locked: [], ...(job.grid && { grid: job.grid }) };
  const locked = job.locked ? lockedPlacements(job.locked, problem, design) : [];
  const stripping = strippingWish(job.stripping, job.machines.cutter);
  return { problem: { ...problem, locked }, design, ...(stripping && { stripping }), ...(back && { backDesign: back.design }), sheetGrain, notes };
}

/** Locked blanks must be of the same outline and lie soundly on this sheet by themselves. */
function lockedPlacements(layout: LayoutFile, problem: Problem, design: Design): Placement[] {
  const [part] = problem.parts;
  const other = layout.designs.find((one) => JSON.stringify(partOfDesign(one).outline) !== JSON.stringify(part!.outline));
  if (other) throw inputError('locked-other-outline', { where: '--locked', facts: { design: other.id } });
  const placements = placementsOf({ ...layout, placements: layout.placements.map((placed) => ({ ...placed, design: design.id })) }, problem.parts);
  if (placements.length === 0) return [];
  checkLocked(layoutOf(problem, [design], placements), '--locked');
  return placements;
}
