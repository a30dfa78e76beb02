import { computed, effect, untracked } from '@preact/signals';
import { InputError } from '../base/issue.ts';
import { mirrorBlank } from '../dieline/mirror-blank.ts';
import type { Blank } from '../dieline/dieline.ts';
import { whenChanged, type Desk } from './desk.ts';
import { EngineLost, EngineStopped } from './engine/client.ts';
import type { FoundLayout, LimitFacts, SearchAnswer, SearchAsk, SearchEvent } from './engine/protocol.ts';
import type { Job, KeptLayout } from './job/job.ts';
import { inOrder, NO_KIN, samePlacements } from './job/layouts.ts';
import { lostIssue } from './reading.ts';
import type { Improvement, LimitStep } from '../render/nest-facts.ts';

/** Begins a search when the inputs have stood still for so long, milliseconds. */
const STANDS_STILL_MS = 200;
/** Truly different layouts that a search hands over. */
const DIFFERENT_LAYOUTS = 3;

export interface Searching {
  start(): void;
  pause(): void;
  resume(): void;
  stop(): void;
}

/** Searches whenever the inputs have changed and nothing was found for them yet, and on demand. */
export function keepSearching(desk: Desk): Searching {
  let run = 0;
  /** The layout that the desk itself put into view. */
  const shown: { id: string | undefined } = { id: undefined };
  const running = () => desk.search.value.phase === 'running' || desk.search.value.phase === 'paused';
  const end = () => {
    run++;
    if (running()) desk.searcher.restart();
  };
  const start = async (attempt = 0) => {
    end();
    const ask = searchOf(desk);
    const inputs = desk.inputs.value;
    if (!ask || inputs === undefined) return;
    const number = run;
    shown.id ??= shownBefore(desk.job.value, inputs);
    const found = createFound(desk, inputs, `${Date.now().toString(36)}${number}`, shown);
    desk.searchIssues.value = [];
    desk.search.value = { phase: 'running', seconds: 0, inputs };
    desk.searcher.tell('begin');
    const clock = runClock(desk);
    try {
      const answer = await desk.searcher.ask('search', ask, (event) => {
        if (number === run) found.take(event);
      });
      if (number !== run) return;
      const { seconds } = desk.search.value;
      found.finish(answer, seconds);
      desk.search.value = { phase: 'ended', seconds, inputs };
    } catch (error) {
      if (number !== run) return;
      // A thread that broke down (for want of memory, say) is replaced once; the search is made anew from the same seed.
      if (!(error instanceof InputError || error instanceof EngineStopped) && attempt === 0) {
        desk.searcher.restart();
        return start(1);
      }
      desk.search.value = { phase: 'failed', seconds: desk.search.value.seconds, inputs };
      if (!(error instanceof InputError || error instanceof EngineLost)) throw error;
      desk.searchIssues.value = error instanceof InputError ? error.issues : [lostIssue(error)];
    } finally {
      clearInterval(clock);
    }
  };

  let drawing = desk.job.value.drawing;
  /** Fields are typed letter by letter; a new drawing is there at once. */
  const patience = () => {
    const isNew = desk.job.value.drawing?.kind === 'file' && desk.job.value.drawing !== drawing;
    drawing = desk.job.value.drawing;
    return isNew ? 0 : STANDS_STILL_MS;
  };
  // A search belongs to the job it was begun for.
  const id = computed(() => desk.job.value.id);
  effect(() => {
    void id.value;
    untracked(() => {
      end();
      shown.id = undefined;
      desk.search.value = { phase: 'idle', seconds: 0, inputs: '' };
      desk.searchIssues.value = [];
    });
  });
  whenChanged(desk.inputs, patience, (inputs) => {
    if (inputs === undefined || desk.search.value.inputs === inputs) return;
    const known = desk.job.value.layouts.filter((layout) => layout.inputs === inputs);
    if (known.some(isFinished)) {
      end();
      desk.search.value = { phase: 'idle', seconds: 0, inputs };
      desk.note((job) => (known.some(({ id }) => id === job.chosen) ? job : { ...job, chosen: inOrder(known, inputs, desk.kin.value)[0]?.id }));
    } else void start();
  });

  // More effort, or less, holds at once: a search is made anew, and what it found so far stays.
  const effort = computed(() => desk.job.value.effort);
  effect(() => {
    void effort.value;
    untracked(() => {
      if (running()) void start();
    });
  });

  const tell = (control: 'pause' | 'resume' | 'stop', phase: 'running' | 'paused') => {
    if (!running()) return;
    desk.searcher.tell(control);
    desk.search.value = { ...desk.search.value, phase };
  };
  return { start: () => void start(), pause: () => tell('pause', 'paused'), resume: () => tell('resume', 'running'), stop: () => tell('stop', 'running') };
}

/** What a search before this page was opened has put into view: the best so far, or what was found on the way. */
function shownBefore({ layouts, chosen }: Job, inputs: string): string | undefined {
  const known = knownOf(layouts, inputs);
  return known.find((layout) => layout.id === chosen && (layout === known[0] || !isFinished(layout)))?.id;
}

/** What was found for these inputs, the best first. */
function knownOf(layouts: readonly KeptLayout[], inputs: string): KeptLayout[] {
  return inOrder(layouts.filter((layout) => layout.inputs === inputs), inputs, NO_KIN);
}

/** Whether a layout came at the end of a search, from somebody's hand or with a change that was taken: one that was found on the way calls for a new search. */
function isFinished({ seconds, byHand, changed }: KeptLayout): boolean {
  return seconds !== undefined || byHand === true || changed !== undefined;
}

/** Counts the seconds of a search, pauses left out. */
function runClock(desk: Desk): ReturnType<typeof setInterval> {
  let last = performance.now();
  return setInterval(() => {
    const now = performance.now();
    const { value } = desk.search;
    if (value.phase === 'running') desk.search.value = { ...value, seconds: value.seconds + (now - last) / 1000 };
    last = now;
  }, TICK_MS);
}

const TICK_MS = 200;

/** The blank that is meant, as seen on the printed side. */
export function chosenBlank({ reading, job }: Desk): Blank | undefined {
  if (reading.value.kind !== 'answer') return undefined;
  const { drawing, drawnFrom } = job.value;
  const { blanks } = reading.value.answer.dieline;
  const number = drawing?.kind === 'file' ? drawing.options.blank : undefined;
  const blank = blanks.find((one) => one.number === number) ?? (blanks.length === 1 || number === undefined ? blanks[0] : undefined);
  return blank && drawnFrom === 'inside' ? mirrorBlank(blank) : blank;
}

export function searchOf(desk: Desk): SearchAsk | undefined {
  const { reading, laying, job } = desk;
  const blank = chosenBlank(desk);
  if (!blank || desk.inputs.value === undefined || reading.value.kind !== 'answer' || 'faults' in laying.value) return undefined;
  const { dieline, name } = reading.value.answer;
  const drawing = { fingerprint: dieline.fingerprint, ...(dieline.grain && { grain: dieline.grain }) };
  return { job: { ...laying.value.laying, id: name, blank, drawing, layouts: DIFFERENT_LAYOUTS }, effort: job.value.effort, seed: 1 };
}

/** Takes in what a search says and puts it on the desk. */
function createFound(desk: Desk, inputs: string, stem: string, shown: { id: string | undefined }) {
  let limit: LimitFacts | undefined;
  const history: Improvement[] = [];
  const limits: LimitStep[] = [];
  let count = 0;
  const kept = ({ file, state }: FoundLayout, more: Partial<KeptLayout> = {}): KeptLayout => ({
    id: `${stem}-${count++}`,
    file,
    state,
    source: String(file.result?.['source'] ?? ''),
    inputs,
    limit,
    stopped: 'effort',
    seconds: undefined,
    notes: [],
    history: [...history],
    limits: [...limits],
    ...more,
  });
  const own = ({ id }: KeptLayout) => id.startsWith(`${stem}-`);
  /** The person has chosen, or made by hand, a layout for these inputs; or is handing it over, where nothing is exchanged under the hand. */
  const isPicked = ({ layouts, chosen }: Job) => layouts.some(({ id, inputs: of }) => id === chosen && of === inputs && (id !== shown.id || desk.panel.value === 'handover'));
  /** The best is shown as long as the person has chosen nothing else of this search. */
  const show = (job: Job, layouts: readonly KeptLayout[], best: KeptLayout | undefined): Job => {
    if (isPicked(job)) return { ...job, layouts };
    shown.id = best?.id;
    return { ...job, layouts, chosen: shown.id };
  };
  return {
    take: (event: SearchEvent) => {
      if (event.kind === 'limit') {
        limit = event.limit;
        limits.push(event.step);
        desk.note((job) => ({ ...job, layouts: job.layouts.map((layout) => (own(layout) ? { ...layout, limit, limits: [...limits] } : layout)) }));
        return;
      }
      history.push(event.step);
      const found = kept(event.found);
      desk.note((job) => {
        const layouts = [...job.layouts, found].slice(-MOST_KEPT);
        return show(job, layouts, knownOf(layouts, inputs)[0]);
      });
    },
    finish: (answer: SearchAnswer, seconds: number) => {
      const { layouts, stopped, notes } = answer;
      limit = answer.limit;
      const last = layouts.map((found) => kept(found, { stopped, seconds, notes }));
      desk.note((job) => {
        const picked = isPicked(job) ? job.layouts.find(({ id }) => id === job.chosen) : undefined;
        // What was found on the way, by this search or by one that was broken off, has served its purpose.
        const isPassing = (layout: KeptLayout) => own(layout) || (layout.inputs === inputs && !isFinished(layout));
        const rest = job.layouts.filter((layout) => !last.some(({ file }) => samePlacements(file, layout.file) && layout.inputs === inputs && layout.byHand !== true) && (layout === picked || !isPassing(layout)));
        const layouts = [...rest, ...last];
        const best = picked?.byHand ? picked : (last.find(({ file }) => picked && samePlacements(file, picked.file)) ?? picked ?? knownOf(layouts, inputs)[0]);
        if (!picked || picked.id === shown.id) shown.id = best?.id;
        return { ...job, layouts, chosen: best?.id };
      });
    },
  };
}

/** More would only slow the keeping. */
const MOST_KEPT = 24;
