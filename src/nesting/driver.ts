import { childSeed, createRandom } from '../base/random.ts';
import type { Candidate, Limit, Problem, StopReason } from '../layout/problem.ts';
import type { Budget, Effort } from './effort.ts';
import { Incumbents, type Improvement } from './incumbents.ts';
import { startLimitRun } from './limit-run.ts';
import { isIrregular } from './rank.ts';
import type { Search } from './search.ts';
import type { FailedLayout } from './searches/guided-settle.ts';
import type { TaskRunner } from './tasks.ts';

export interface DriverSettings {
  readonly effort: Effort;
  readonly seed: number;
  readonly runner: TaskRunner;
  /** Asked often. A reason ends the run with the best so far; nothing else that this returns changes the answer. */
  readonly stop: () => 'seconds' | 'interrupted' | undefined;
  readonly onImprovement?: (event: Improvement) => void;
  /** Recomputes a limit from its certificate; a limit it refuses is not used. */
  readonly verifyLimit?: (limit: Limit) => boolean;
}

/** The methods a run is made of. */
export interface Methods {
  readonly budgetOf: (effort: Effort) => Budget;
  readonly patterns: readonly Search[];
  readonly closedFormLimits: (problem: Problem) => readonly Limit[];
  readonly isValid: (problem: Problem, candidate: Candidate) => boolean;
  /** The layout pushed towards the gripper and the lay. */
  readonly pushTogether: (problem: Problem, candidate: Candidate) => Promise<Candidate>;
}

export interface Outcome {
  readonly incumbents: Incumbents;
  readonly stopped: StopReason;
}

/** Counted work between two moments in which the host's timers and signals are heard. */
const WORK_PER_BREATH = 200_000;

interface Run {
  readonly problem: Problem;
  readonly settings: DriverSettings;
  readonly methods: Methods;
  readonly budget: Budget;
  readonly incumbents: Incumbents;
}

/**
 * Runs the stages in their order until the limit is met, the counted work is spent or `stop` gives a reason. The answer
 * depends on problem, effort and seed alone; `stop` only cuts the fixed sequence short.
 */
export async function drive(problem: Problem, settings: DriverSettings, methods: Methods): Promise<Outcome> {
  const incumbents = new Incumbents(problem, (candidate) => methods.isValid(problem, candidate), settings.onImprovement ?? (() => {}));
  const run: Run = { problem, settings, methods, budget: methods.budgetOf(settings.effort), incumbents };
  // A forced grid is for the patterns alone.
  for (const stage of problem.grid ? [closedForms, patterns] : [closedForms, patterns, freeSearch]) {
    if (stopReason(run)) break;
    await stage(run);
  }
  const stopped = stopReason(run) ?? 'effort';
  await tidy(run);
  return { incumbents, stopped };
}

/** An irregular layout is pushed together, so that what it leaves free lies at the edges. */
async function tidy({ problem, settings, methods, budget, incumbents }: Run): Promise<void> {
  const { best } = incumbents;
  if (budget.pushes && best && isIrregular(best.figures) && !settings.stop()) incumbents.offer(await methods.pushTogether(problem, best));
}

/** A run that has nothing to show yet goes on: the first pattern is there in a moment. */
function stopReason({ incumbents, settings }: Run): StopReason | undefined {
  if (incumbents.limitMet) return 'limit-met';
  return incumbents.ups === 0 ? undefined : settings.stop();
}

async function closedForms({ problem, methods, incumbents }: Run): Promise<void> {
  for (const limit of methods.closedFormLimits(problem)) incumbents.offerLimit(limit);
}

/** Every pattern search gets an equal share of what those before it left over. */
async function patterns(run: Run): Promise<void> {
  const { methods, budget } = run;
  let left = budget.patterns;
  for (const [index, search] of methods.patterns.entries()) {
    left -= await runSearch(run, search, index, left / (methods.patterns.length - index));
    if (stopReason(run)) return;
  }
}

/** Runs one search until it ends, its share is spent or the run must stop. Returns the work done. */
async function runSearch(run: Run, search: Search, index: number, share: number): Promise<number> {
  const { problem, settings, incumbents } = run;
  const random = createRandom(childSeed(settings.seed, index));
  const limit = incumbents.limit?.ups ?? Infinity;
  let done = 0;
  let breathAt = WORK_PER_BREATH;
  const steps = search.run({ problem, random, limit, known: incumbents });
  for (let step = steps.next(); !step.done; step = steps.next()) {
    done += step.value.work;
    incumbents.work += step.value.work;
    if (step.value.cell) incumbents.offerCell(step.value.cell);
    if (step.value.candidate) incumbents.offer(step.value.candidate);
    if (done >= share || stopReason(run)) break;
    if (done >= breathAt) {
      breathAt = done + WORK_PER_BREATH;
      await settings.runner.breathe();
    }
  }
  return done;
}

/** Lanes of the free search. Fixed, so that the answer does not depend on the number of threads. */
export const LANES = 4;
/** Layouts and cells handed to a lane. */
const BASES = 6;
const CELLS = 20;
/** Keeps the lanes' seeds apart from those of the pattern searches. */
const LANE_SEEDS = 1000;

/** Takes in a limit that came with a certificate only when the certificate holds. */
function offerProved({ incumbents, settings }: Run, limit: Limit): void {
  const known = incumbents.limit;
  if (known && limit.ups >= known.ups) return;
  if (settings.verifyLimit?.(limit) !== false) incumbents.offerLimit(limit);
}

/** Keeps the limits' seeds apart from the others. */
const LIMIT_SEED = 2000;

/** Rounds of lanes: each lane works for a fixed number of look-ups from the best known so far; then they meet. */
async function freeSearch(run: Run): Promise<void> {
  const { problem, settings, budget, incumbents } = run;
  const limits = budget.limit && startLimitRun(problem, budget.limit, incumbents.ups, childSeed(settings.seed, LIMIT_SEED));
  let failed: (FailedLayout | undefined)[] = Array.from({ length: LANES }, () => undefined);
  let left = budget.free;
  for (let round = 0; left > 0 && !stopReason(run); round++) {
    const before = incumbents.ups;
    const tasks = failed.map((kept, lane) => ({
      kind: 'lane' as const,
      problem,
      seed: childSeed(childSeed(settings.seed, LANE_SEEDS + lane), round),
      work: budget.laneWork,
      limit: incumbents.limit?.ups ?? Infinity,
      bases: basesOf(incumbents),
      cells: incumbents.cells.slice(0, CELLS),
      failed: kept,
      push: budget.pushes && round > 0 && (round + lane) % LANES === 0,
    }));
    // Both have done a fixed amount of work when they meet, so that the answer does not depend on which was quicker.
    const [results, lower] = await Promise.all([settings.runner.run(tasks, () => settings.stop() !== undefined), limits?.advance() ?? []]);
    for (const limit of lower) offerProved(run, limit);
    for (const { work, found } of results) {
      incumbents.work += work;
      left -= work;
      for (const candidate of found) incumbents.offer(candidate);
    }
    failed = results.map((result) => (incumbents.ups > before ? undefined : result.failed));
    // Nothing was looked up: no blank fits at all.
    if (results.every(({ work }) => work === 0) || settings.stop()) return;
  }
}

/** The best layout and others with as many ups. */
function basesOf({ layouts, ups }: Incumbents): Candidate['placements'][] {
  return layouts.filter((layout) => layout.figures.ups === ups).slice(0, BASES).map((layout) => layout.placements);
}
