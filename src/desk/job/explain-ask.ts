import type { ExplainAsk } from '../engine/protocol.ts';
import type { KeptLayout } from './job.ts';

/** Why the search stopped is only known of what came at its end: not while it goes on, nor of what a hand has made. */
export function explainAskOf(layout: KeptLayout): ExplainAsk {
  const { file, limit, stopped, seconds, notes, history, limits } = layout;
  return { file, name: file.designs.map(({ id }) => id).join(', '), limit, stopped: seconds === undefined ? undefined : stopped, seconds, notes, history, limits };
}
