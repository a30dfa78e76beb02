import { placementsOf } from '../../../layout/layout-of.ts';
import { nearMisses } from '../../../pipeline/near-misses.ts';
import { prepareNest } from '../../../pipeline/nest.ts';
import type { NearMissFacts } from '../../../render/near-miss-facts.ts';
import type { Host } from '../host.ts';
import type { NearMissAsk } from '../protocol.ts';
import { termsOf } from './compare.ts';
import { machinesOf } from './machines-of.ts';

/** Which single change brings the next up, each with its judged layout and said as soon as it is found. */
export function findNearMisses({ job: asked, file, style, quote, yearly }: NearMissAsk, { control, pool, emit }: Host<'nearMisses'>): Promise<NearMissFacts> {
  const job = { ...asked, machines: machinesOf(asked.machines) };
  const { problem } = prepareNest(job);
  const { grammage, pricePerTonne, rates, currency } = termsOf(quote);
  const standing = { job, problem, placements: placementsOf(file, problem.parts), ...(style && { style }) };
  const search = { seed: 1, runner: pool, stop: () => (control.stopped() ? ('interrupted' as const) : undefined), onProgress: emit };
  return nearMisses(standing, { yearly, grammage, pricePerTonne, rates, currency }, search);
}
