import { InputError } from '../base/issue.ts';
import { mirrorBlank } from '../dieline/mirror-blank.ts';
import type { Blank } from '../dieline/dieline.ts';
import { whenChanged, type Desk } from './desk.ts';
import { EngineLost, EngineStopped } from './engine/client.ts';
import type { FoundLayout, LimitFacts, SearchAnswer, SearchAsk, SearchEvent } from './engine/protocol.ts';
import type { Job, KeptLayout } from './job/job.ts';
import { inOrder, samePlacements } from './job/layouts.ts';
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
    const found = createFound(desk, inputs, `${Date.now().toString(36)}${number}`);
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
  whenChanged(desk.inputs, patience, (inputs) => {
    if (inputs === undefined || desk.search.value.inputs === inputs) return;
    const known = desk.job.value.layouts.filter((layout) => layout.inputs === inputs);
    if (known.some(isFinished)) {
      end();
      desk.search.value = { phase: 'idle', seconds: 0, inputs };
      desk.note((job) => (known.some(({ id }) => id === job.chosen) ? job : { ...job, chosen: inOrder(known, inputs, desk.kin.value)[0]?.id }));
    } else void start();
  });

  const tell = (control: 'pause' | 'resume' | 'stop', phase: 'running' | 'paused') => {
    if (!running()) return;
    desk.searcher.tell(control);
    desk.search.value = { ...desk.search.value, phase };
  };
  return { start: () => void start(), pause: () => tell('pause', 'paused'), resume: () => tell('resume', 'running'), stop: () => tell('stop', 'running') };
}

/** Whether a layout came at the end of a search, or from somebody's hand: one that was found on the way calls for a new search. */
function isFinished({ seconds, byHand }: KeptLayout): boolean {
  return seconds !== undefined || byHand === true;
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
  if (!blank || reading.value.kind !== 'answer' || 'faults' in laying.value) return undefined;
  const { dieline, name } = reading.value.answer;
  const drawing = { fingerprint: dieline.fingerprint, ...(dieline.grain && { grain: dieline.grain }) };
  return { job: { ...laying.value.laying, id: name, blank, drawing, layouts: DIFFERENT_LAYOUTS }, effort: job.value.effort, seed: 1 };
}

/** Takes in what a search says and puts it on the desk. */
function createFound(desk: Desk, inputs: string, stem: string) {
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
  let shown: string | undefined;
  /** The person has chosen, or made by hand, a layout for these inputs. */
  const isPicked = ({ layouts, chosen }: Job) => layouts.some(({ id, inputs: of }) => id === chosen && id !== shown && of === inputs);
  /** The best is shown as long as the person has chosen nothing else of this search. */
  const show = (job: Job, layouts: readonly KeptLayout[], best: KeptLayout | undefined): Job => {
    if (isPicked(job)) return { ...job, layouts };
    shown = best?.id;
    return { ...job, layouts, chosen: shown };
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
      desk.note((job) => show(job, [...job.layouts, found].slice(-MOST_KEPT), found));
    },
    finish: (answer: SearchAnswer, seconds: number) => {
      const { layouts, stopped, notes } = answer;
      limit = answer.limit;
      const last = layouts.map((found) => kept(found, { stopped, seconds, notes }));
      desk.note((job) => {
        const picked = isPicked(job) ? job.layouts.find(({ id }) => id === job.chosen) : undefined;
        const rest = job.layouts.filter((layout) => !own(layout) || (layout === picked && !last.some(({ file }) => samePlacements(file, layout.file))));
        const best = last.find(({ file }) => picked && samePlacements(file, picked.file)) ?? (picked ? picked : last[0]);
        return { ...job, layouts: [...rest, ...last], chosen: best?.id };
      });
    },
  };
}

/** More would only slow the keeping. */
const MOST_KEPT = 24;
