import type { RunToPrice } from '../../pipeline/gang/price-run.ts';
import { leavesOut, printedRows, versionsJobOf, type Versions } from '../job/versions.ts';
import { settledForms } from './plan-figures.tsx';

/** Versions on their stations as they are priced, or the word for what keeps them from it. */
export function runOf(versions: Versions, stations: number): { readonly run: RunToPrice } | { readonly open: 'run-has-faults' | 'run-not-shared-out' | 'run-leaves-out' } {
  const job = versionsJobOf(versions, stations);
  if ('faults' in job) return { open: 'run-has-faults' };
  const printed = printedRows(versions, stations);
  if (printed.length === 0) return { open: 'run-not-shared-out' };
  if (leavesOut(versions, printed)) return { open: 'run-leaves-out' };
  return { run: { ids: job.ask.versions.map(({ id }) => id), ...settledForms(job.ask, printed) } };
}
