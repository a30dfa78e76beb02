import { placementsOf } from '../../../layout/layout-of.ts';
import { nearMisses } from '../../../pipeline/near-misses.ts';
import { prepareNest } from '../../../pipeline/nest.ts';
import { createFormat } from '../../../render/format.ts';
import { englishLanguage } from '../../../render/messages/english-language.ts';
import { nearMissSection } from '../../../render/near-miss-section.ts';
import type { Host } from '../host.ts';
import type { NearMissAnswer, NearMissAsk } from '../protocol.ts';
import { termsOf } from './compare.ts';
import { machinesOf } from './machines-of.ts';

/** Which single change brings the next up, each with its judged layout. */
export async function findNearMisses({ job: asked, file, style, quote, yearly }: NearMissAsk, { control, pool }: Host<'nearMisses'>): Promise<NearMissAnswer> {
  const job = { ...asked, machines: machinesOf(asked.machines) };
  const { problem } = prepareNest(job);
  const { grammage, pricePerTonne, rates, currency } = termsOf(quote);
  const standing = { job, problem, placements: placementsOf(file, problem.parts), ...(style && { style }) };
  const facts = await nearMisses(standing, { yearly, grammage, pricePerTonne, rates, currency }, { seed: 1, runner: pool, stop: () => (control.stopped() ? 'interrupted' : undefined) });
  const format = createFormat('en');
  return {
    section: nearMissSection(facts, englishLanguage, format),
    found: facts.found.map((miss) => ({ sentence: englishLanguage.nearMiss.change(miss, format), ups: miss.ups, layout: miss.layout })),
  };
}
