import { effect, untracked } from '@preact/signals';
import type { NearMissFacts } from '../render/near-miss-facts.ts';
import { termsOnDesk } from './comparing.ts';
import type { Desk, Misses } from './desk.ts';
import { EngineLost, EngineStopped } from './engine/client.ts';
import type { NearMissAsk } from './engine/protocol.ts';
import type { KeptLayout } from './job/job.ts';
import { answered } from './reading.ts';
import { searchOf } from './searching.ts';

/** Tries which single change brings one more than a layout; what is found comes onto the desk at once. `yearly`: cartons. */
export async function tryChanges(desk: Desk, layout: KeptLayout, yearly: number | undefined): Promise<void> {
  const ask = askOf(desk, layout, yearly);
  const of = desk.inputs.value;
  if (!ask || of === undefined || isTrying(desk)) return;
  const note = (more: Partial<Misses>) => (desk.misses.value = { ...desk.misses.value!, ...more });
  desk.misses.value = { file: layout.file, of, phase: 'running', facts: undefined, issues: [] };
  desk.helper.tell('begin');
  // What is tried says nothing of other settings.
  const leave = effect(() => {
    if (desk.inputs.value !== of) untracked(() => stopTrying(desk));
  });
  try {
    const result = await answered(() => askTwice(desk, ask, (facts) => note({ facts })));
    note(result.kind === 'answer' ? { facts: result.answer } : { issues: result.issues });
  } finally {
    leave();
    note({ phase: 'ended' });
  }
}

/** What was found stays. */
export function stopTrying(desk: Desk): void {
  if (!isTrying(desk)) return;
  desk.misses.value = { ...desk.misses.value!, phase: 'stopping' };
  desk.helper.tell('stop');
}

export function isTrying({ misses }: Desk): boolean {
  return misses.value !== undefined && misses.value.phase !== 'ended';
}

/** Each event holds all that was found, so that the question can be asked once more when its thread broke down. */
async function askTwice({ helper }: Desk, ask: NearMissAsk, onProgress: (facts: NearMissFacts) => void): Promise<NearMissFacts> {
  const once = () => helper.ask('nearMisses', ask, onProgress);
  try {
    return await once();
  } catch (error) {
    if (!(error instanceof EngineLost) || error instanceof EngineStopped) throw error;
    return once();
  }
}

function askOf(desk: Desk, { file }: KeptLayout, yearly: number | undefined): NearMissAsk | undefined {
  const search = searchOf(desk);
  const quote = termsOnDesk(desk);
  const { drawing, drawnFrom } = desk.job.value;
  if (!search || !quote || !drawing) return undefined;
  const style = drawing.kind === 'style' && drawnFrom === 'printed' ? { id: drawing.style, values: drawing.values } : undefined;
  return { job: search.job, file, style, quote, yearly };
}
