import { answerOrder, type Order, type Reply } from '../../nesting/spread.ts';
import { createTaskHandler } from '../../nesting/tasks.ts';
import { createBeats } from './beats.ts';
import { createBreathing } from './breathing.ts';
import { holdLifeline } from './lifeline.ts';
import { prepareSolver } from './prepare-solver.ts';
import { createSearchControl, type Control } from './search-control.ts';

/** One thread of a search in a page: does the tasks it is sent, one at a time. */
interface Scope {
  readonly name: string;
  onmessage: (event: MessageEvent<LaneMessage>) => void;
  postMessage(reply: LaneReply): void;
}
/** A reply, that the thread holds its lifeline, or that its work goes on. */
export type LaneReply = Reply | { readonly alive: true } | { readonly beat: true };
export type LaneMessage = { readonly order: Order } | { readonly control: Control };

const scope = globalThis as unknown as Scope;
const control = createSearchControl(createBreathing(), createBeats(() => scope.postMessage({ beat: true })));
const handle = createTaskHandler();
const pause = async () => {
  await control.breathe();
  return control.stopped();
};

const held = holdLifeline(scope.name, () => scope.postMessage({ alive: true }));
scope.onmessage = async ({ data }) => {
  if ('control' in data) {
    control.tell(data.control);
    return;
  }
  await held;
  await prepareSolver();
  scope.postMessage(await answerOrder(handle, data.order, pause));
};
