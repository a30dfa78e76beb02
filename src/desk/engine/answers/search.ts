import { layoutOf } from '../../../layout/layout-of.ts';
import { judge } from '../../../layout/judge.ts';
import { nest, prepareNest } from '../../../pipeline/nest.ts';
import { strippingNotes } from '../../../pipeline/stripping-choice.ts';
import type { Host } from '../host.ts';
import type { SearchAnswer, SearchAsk } from '../protocol.ts';
import { machinesOf } from './machines-of.ts';

/** Layouts are sent as they are found, each judged; at the end the best ones that truly differ. */
export async function search({ job: asked, effort, seed }: SearchAsk, { emit, control, pool, goesOn }: Host<'search'>): Promise<SearchAnswer> {
  const start = performance.now();
  const elapsed = () => (performance.now() - start) / 1000;
  const job = { ...asked, machines: machinesOf(asked.machines) };
  const { problem, design, stripping } = prepareNest(job);
  // Where stripping is a rule, nothing is shown that does not keep it: the search is free first, then made anew under the rule.
  const rule = stripping?.rule === 'must';
  let underRule = false;
  const outcome = await nest(job, {
    effort,
    seed,
    runner: pool,
    stop: () => (control.stopped() ? 'interrupted' : undefined),
    onStartAnew: () => (underRule = true),
    onImprovement: (event) => {
      const moment = { work: event.work, seconds: elapsed() };
      if (event.kind === 'limit') {
        // A limit under the rule is none of the sheet's.
        if (!underRule) emit({ kind: 'limit', limit: { ups: event.limit.ups, by: event.limit.by }, step: { ...moment, ups: event.limit.ups } });
        return;
      }
      if (rule && !underRule) return;
      const { placements, source } = event.layout;
      const file = layoutOf(problem, [design], placements, { ups: event.ups, source, seed });
      emit({ kind: 'layout', found: { file, state: judge(file, goesOn).state }, step: { ...moment, ups: event.ups, source } });
    },
  });
  return {
    layouts: outcome.layouts.map(({ file }) => ({ file, state: 'sound' })),
    limit: { ups: outcome.limit.ups, by: outcome.limit.by },
    stopped: outcome.solution.stopped,
    notes: [...outcome.notes, ...strippingNotes(stripping, outcome.stripping?.broken)],
  };
}
