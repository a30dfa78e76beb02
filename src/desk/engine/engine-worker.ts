import { config } from 'zod';
import { InputError } from '../../base/issue.ts';
import { createBeats } from './beats.ts';
import { createBreathing } from './breathing.ts';
import { createLanePool, defaultThreads, LaneLost } from './lane-pool.ts';
import { holdLifeline } from './lifeline.ts';
import { prepareSolver } from './prepare-solver.ts';
import type { Host } from './host.ts';
import type { Answer, Ask, FromEngine, Question, ToEngine } from './protocol.ts';
import { createSearchControl } from './search-control.ts';

/** The thread that answers the page's questions. */
interface Scope {
  readonly name: string;
  onmessage: (event: MessageEvent<ToEngine>) => void;
  postMessage(message: FromEngine): void;
}
const scope = globalThis as unknown as Scope;

type Answers = { readonly [Kind in Question]: () => Promise<(ask: Ask<Kind>, host: Host<Kind>) => Answer<Kind> | Promise<Answer<Kind>>> };

// The content security policy forbids making functions from text, which the library would try.
config({ jitless: true });
/** The work goes on while all of it does: one thread that is stuck is not hidden by the others. */
const goesOn = createBeats(() => {
  if (pool.silence() < STUCK_MS) scope.postMessage({ beat: true });
});
/** Longer than threads of a search ever go without a check on a machine that is not overloaded, milliseconds. */
const STUCK_MS = 10_000;
const control = createSearchControl(createBreathing(), goesOn);
const pool = createLanePool(defaultThreads(), control, goesOn);

/** Loaded when first asked for: a first look at a drawing needs neither PDF nor solver. */
const answers: Answers = {
  read: async () => (await import('./answers/read.ts')).read,
  frame: async () => (await import('./answers/frame.ts')).frame,
  brought: async () => (await import('./answers/brought.ts')).brought,
  search: async () => (await import('./answers/search.ts')).search,
  judge: async () => (await import('./answers/judge.ts')).judgeLayout,
  layout: async () => (await import('./answers/open-layout.ts')).openLayout,
  kinship: async () => (await import('./answers/kinship.ts')).kinshipOf,
  ownDrawing: async () => (await import('./answers/own-drawing.ts')).ownDrawing,
  byHand: async () => (await import('./answers/by-hand.ts')).workOn,
  nearMisses: async () => (await import('./answers/near-misses.ts')).findNearMisses,
  picture: async () => (await import('./answers/picture.ts')).picture,
  explain: async () => (await import('./answers/explain.ts')).explain,
  compare: async () => (await import('./answers/compare.ts')).compare,
  recost: async () => (await import('./answers/compare.ts')).recost,
  comparePage: async () => (await import('./answers/compare.ts')).comparePage,
  quote: async () => (await import('./answers/quote.ts')).quote,
  run: async () => (await import('./answers/run.ts')).run,
  runPage: async () => (await import('./answers/run.ts')).runPage,
  record: async () => (await import('./answers/record.ts')).takeRecords,
  pages: async () => (await import('./answers/run.ts')).pagesOfAll,
  versions: async () => (await import('./answers/versions.ts')).shareOut,
  outlines: async () => (await import('./answers/outlines.ts')).gangDrawings,
  weigh: async () => (await import('../../pipeline/gang/weigh-stations.ts')).weighStations,
  stationSheet: async () => (await import('./answers/station-sheet.ts')).stationSheet,
  handover: async () => (await import('./answers/handover.ts')).handOver,
};

/** Questions that may come to linear programs. */
const SOLVING: ReadonlySet<Question> = new Set(['search', 'byHand', 'compare', 'nearMisses', 'outlines', 'weigh', 'run', 'runPage', 'handover']);

const held = holdLifeline(scope.name, () => scope.postMessage({ alive: true }));
scope.onmessage = async ({ data }) => {
  if ('control' in data) {
    control.tell(data.control);
    pool.tell(data.control);
    return;
  }
  if ('warm' in data) {
    if (SOLVING.has(data.warm)) void prepareSolver();
    void answers[data.warm]();
    return;
  }
  const { id, kind, ask, locale, unit } = data;
  await held;
  try {
    // Whoever needs the solver waits for it; nobody else does.
    if (SOLVING.has(kind)) void prepareSolver();
    const host: Host<never> = { emit: (event: unknown) => scope.postMessage({ id, event }), control, pool, goesOn, locale, unit };
    const answer = (await answers[kind]()) as (ask: unknown, host: Host<never>) => unknown;
    scope.postMessage({ id, answer: await answer(ask, host) });
  } catch (error) {
    if (error instanceof LaneLost) scope.postMessage({ lost: error.message });
    else scope.postMessage(error instanceof InputError ? { id, issues: error.issues } : { id, failure: String(error instanceof Error ? (error.stack ?? error.message) : error) });
  }
};
