import { inputError, InputError, type Issue } from '../base/issue.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import type { Judgement } from '../layout/judge.ts';
import { judgeForProduction, type SoundLayout } from '../layout/sound.ts';
import type { Design, LayoutFile } from '../layout/layout-file.ts';
import { layoutOf, placementsOf } from '../layout/layout-of.ts';
import { placedArea, resultOf } from '../layout/outcome.ts';
import { partOfDesign, preparePart } from '../layout/part.ts';
import type { Limit, Placement, Problem } from '../layout/problem.ts';
import type { DriverSettings } from '../nesting/driver.ts';
import type { RankedLayout } from '../nesting/incumbents.ts';
import { solve, type Solution } from '../nesting/solve.ts';
import { limitHolds } from './verify-limit.ts';
import { allowedTurns, checkFits, prepareSheet, type LayingSettings } from './laying.ts';

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
}

export type SearchSettings = Pick<DriverSettings, 'effort' | 'seed' | 'runner' | 'stop' | 'onImprovement'>;

/** A layout that the judge found sound, with how it compares. */
export interface NestedLayout {
  readonly file: SoundLayout;
  readonly ranked: RankedLayout;
}

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
}

/**
 * Lays one design on one sheet: problem, search, judgement. Throws an InputError when the settings contradict each other
 * or not a single blank fits.
 */
export async function nest(job: NestJob, search: SearchSettings): Promise<NestOutcome> {
  const prepared = prepareNest(job);
  const { problem, design } = prepared;
  const solution = await solve(problem, { ...search, layouts: job.layouts, verifyLimit: (limit) => limitHolds(problem, limit) });
  if (!solution.best || !solution.limit) throw inputError(job.grid ? 'grid-does-not-fit' : 'no-blank-fits', { where: job.id, facts: job.grid ?? {} });
  const { limit } = solution;
  const judged = solution.alternatives.map((ranked) => {
    const outcome = { ups: ranked.placements.length, limit, source: ranked.source, cell: solution.bestCell, seed: search.seed, stopped: solution.stopped };
    const result = resultOf(outcome, problem, placedArea(problem, ranked.placements));
    return { ranked, ...judgeForProduction(layoutOf(problem, [design], ranked.placements, result)) };
  });
  const layouts = judged.flatMap(({ ranked, sound }) => (sound ? [{ file: sound, ranked }] : []));
  const refused = judged.filter(({ sound }) => !sound);
  if (layouts.length === 0) throw new Error(`the judge refused every layout: ${JSON.stringify(refused[0]?.judgement.faults[0])}`);
  const notes = [...prepared.notes, ...refused.map(({ judgement }) => refusal(judgement))];
  return { problem, design, layouts, limit, solution, notes, sheetGrain: prepared.sheetGrain };
}

interface PreparedNest {
  readonly problem: Problem;
  readonly design: Design;
  readonly sheetGrain: 'x' | 'y' | undefined;
  readonly notes: readonly Issue[];
}

/** The search's problem for a job. Throws an InputError for settings that leave nothing possible. */
export function prepareNest(job: NestJob): PreparedNest {
  const { frame, sheetGrain, notes } = prepareSheet(job);
  const turns = allowedTurns(job, job.drawing.grain);
  const { part, design } = preparePart(job.blank, { id: job.id, turns, fingerprint: job.drawing.fingerprint });
  checkFits(part, frame);
  const problem: Problem = { ...frame, parts: [part], demand: { kind: 'most' }, locked: [], ...(job.grid && { grid: job.grid }) };
  const locked = job.locked ? lockedPlacements(job.locked, problem, design) : [];
  return { problem: { ...problem, locked }, design, sheetGrain, notes };
}

/** Locked blanks must be of the same outline and lie soundly on this sheet by themselves. */
function lockedPlacements(layout: LayoutFile, problem: Problem, design: Design): Placement[] {
  const [part] = problem.parts;
  const other = layout.designs.find((one) => JSON.stringify(partOfDesign(one).outline) !== JSON.stringify(part!.outline));
  if (other) throw inputError('locked-other-outline', { where: '--locked', facts: { design: other.id } });
  const placements = placementsOf({ ...layout, placements: layout.placements.map((placed) => ({ ...placed, design: design.id })) }, problem.parts);
  if (placements.length === 0) return [];
  const { judgement } = judgeForProduction(layoutOf(problem, [design], placements));
  const faults = judgement.faults.map((fault): Issue => ({
    code: 'locked-not-sound',
    severity: 'error',
    where: '--locked',
    place: fault.place,
    facts: { kind: fault.kind, blanks: fault.blanks.map((blank) => blank + 1).join(' and '), by: fault.byMm },
  }));
  if (faults.length > 0) throw new InputError(faults.slice(0, 10));
  return placements;
}

function refusal({ faults }: Judgement): Issue {
  const [first] = faults;
  return { code: 'layout-refused-by-judge', severity: 'warning', facts: { kind: first?.kind ?? '?', by: first?.byMm ?? 0 } };
}
