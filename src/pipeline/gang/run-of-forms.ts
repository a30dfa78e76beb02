import type { GangFacts } from '../../render/gang-facts.ts';
import type { RunToPrice } from './price-run.ts';
import type { SettledForms } from './weigh-stations.ts';

type Planned = Pick<GangFacts, 'ids' | 'quantities' | 'forms'>;

/** The forms of a plan for versions as they are priced. */
export function runOfVersions({ ids, quantities, forms }: Planned, limits: SettledForms['limits']): RunToPrice {
  return { ids, quantities, counts: forms.map(({ counts }) => counts), planned: forms.map(({ pressings }) => pressings), limits };
}

/** The forms of outlines as they are priced, with what the job says of each design. */
export function runOfOutlines(planned: Planned, { overs, inks }: { readonly overs: SettledForms['limits']; readonly inks: readonly (readonly string[])[] }): RunToPrice {
  const laid = planned.forms.flatMap(({ layout }) => layout?.designs ?? []);
  const outlineOf = (id: string) => laid.find((one) => one.id === id)!.outline;
  return { ...runOfVersions(planned, overs), designs: planned.ids.map((id, design) => ({ outline: outlineOf(id), inks: inks[design]! })) };
}
