import { computed } from '@preact/signals';
import { InputError, type Issue } from '../base/issue.ts';
import type { Desk } from './desk.ts';
import { whenChanged } from './desk.ts';
import { EngineLost, EngineStopped } from './engine/client.ts';
import type { DrawingSource } from './engine/protocol.ts';

/** Keeps the read drawing and the empty sheet in step with what is on the desk. */
export function keepReading(desk: Desk): void {
  let asked = 0;
  const source = computed(() => ({ drawing: desk.job.value.drawing, remembered: desk.remembered.value, locale: desk.locale.value, again: desk.again.value }));
  let before: typeof source.value['drawing'];
  whenChanged(source, 0, async ({ drawing }) => {
    const number = ++asked;
    if (!drawing) {
      before = undefined;
      desk.reading.value = { kind: 'none' };
      return;
    }
    // While a fault is mended the drawing stays in view.
    if (before?.kind !== drawing.kind || desk.reading.value.kind !== 'answer') desk.reading.value = { kind: 'waiting' };
    before = drawing;
    const result = await readOf(desk, drawing);
    if (number === asked) desk.reading.value = { ...result, of: drawing };
  });

  let framed = 0;
  const laid = computed(() => ({ laying: desk.laying.value, locale: desk.locale.value }));
  whenChanged(laid, 60, async ({ laying }) => {
    const number = ++framed;
    if ('faults' in laying) return;
    const result = await answered(() => desk.engine.ask('frame', laying.laying));
    if (number === framed) desk.frame.value = result;
  });
}

let last: { readonly desk: Desk; readonly asked: readonly unknown[]; readonly answer: ReturnType<typeof askForReading> } | undefined;

/** How a drawing reads. What was asked last is not asked again: whoever takes a file in has looked at it already. */
export function readOf(desk: Desk, drawing: DrawingSource): ReturnType<typeof askForReading> {
  const asked = [drawing, desk.remembered.value, desk.locale.value, desk.again.value];
  if (last?.desk !== desk || last.asked.some((one, i) => one !== asked[i])) last = { desk, asked, answer: askForReading(desk, drawing) };
  return last.answer;
}

function askForReading({ engine, remembered }: Desk, source: DrawingSource) {
  return answered(() => engine.ask('read', { source, remembered: remembered.value }));
}

/** The answer, or what is wrong with the question: that the engine breaks down over it, too. */
export async function answered<Answer>(ask: () => Promise<Answer>): Promise<{ kind: 'answer'; answer: Answer } | { kind: 'issues'; issues: InputError['issues'] }> {
  try {
    return { kind: 'answer', answer: await ask() };
  } catch (error) {
    if (error instanceof InputError) return { kind: 'issues', issues: error.issues };
    if (!(error instanceof EngineLost)) throw error;
    return { kind: 'issues', issues: [lostIssue(error)] };
  }
}

/** Why there is no answer, and what to do. */
export function lostIssue(error: EngineLost): Issue {
  return error instanceof EngineStopped ? { code: STOPPED, severity: 'note' } : { code: 'engine-lost', severity: 'error' };
}

/** A question that can be asked again as it stands. */
export const STOPPED = 'engine-stopped';
