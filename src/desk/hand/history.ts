/**
 * Undo and redo without end: chains of immutable states that share all they have in common. What is tried out (a drag
 * under way) lives outside and comes in only when it is done, so that cancelling is forgetting.
 */
export interface History<State> {
  readonly present: State;
  readonly past: Step<State> | undefined;
  readonly future: Step<State> | undefined;
}

export interface Step<State> {
  readonly state: State;
  /** What led from the older to the newer of the two states: the name of a command. */
  readonly done: string;
  readonly next: Step<State> | undefined;
}

export function beginHistory<State>(present: State): History<State> {
  return { present, past: undefined, future: undefined };
}

/** One more step; what had been undone is gone. A state that is the present one is no step. */
export function advance<State>(history: History<State>, state: State, done: string): History<State> {
  return state === history.present ? history : { present: state, past: { state: history.present, done, next: history.past }, future: undefined };
}

/** The same with at most so many steps back and so many forward. */
export function shortened<State>({ present, past, future }: History<State>, most: number): History<State> {
  return { present, past: nearest(past, most), future: nearest(future, most) };
}

function nearest<State>(step: Step<State> | undefined, most: number): Step<State> | undefined {
  const steps: Step<State>[] = [];
  for (let at = step; at && steps.length < most; at = at.next) steps.push(at);
  return steps.reduceRight<Step<State> | undefined>((next, { state, done }) => ({ state, done, next }), undefined);
}

export function undo<State>(history: History<State>): History<State> {
  const { present, past, future } = history;
  return past ? { present: past.state, past: past.next, future: { state: present, done: past.done, next: future } } : history;
}

export function redo<State>(history: History<State>): History<State> {
  const { present, past, future } = history;
  return future ? { present: future.state, past: { state: present, done: future.done, next: past }, future: future.next } : history;
}
