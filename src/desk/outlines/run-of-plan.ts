import { runOfOutlines } from '../../pipeline/gang/run-of-forms.ts';
import type { RunToPrice } from '../../pipeline/gang/price-run.ts';
import type { Desk } from '../desk.ts';
import { outlinesJob } from './outlines-work.ts';

/** The forms found for outlines as they are priced, or the word for what keeps them from it. */
export function runOfPlan(desk: Desk): { readonly run: RunToPrice } | { readonly open: 'outlines-have-faults' | 'outlines-not-sought' | 'outlines-stale' } {
  const { plan } = desk.job.value.outlines;
  if (!plan) return { open: 'outlines-not-sought' };
  const job = outlinesJob(desk);
  if (!job || 'faults' in job) return { open: 'outlines-have-faults' };
  if (job.asked !== plan.asked) return { open: 'outlines-stale' };
  const { designs } = job.ask;
  const facts = { ids: plan.names, quantities: plan.quantities, forms: plan.forms.map(({ file, ...form }) => ({ ...form, layout: file })) };
  return { run: runOfOutlines(facts, { overs: designs.map(({ overs }) => overs ?? { least: 0 }), inks: designs.map(({ inks = [] }) => inks) }) };
}
