import type { GangFacts } from '../../render/gang-facts.ts';
import type { RunToPrice } from './price-run.ts';
import type { SettledForms } from './weigh-stations.ts';

/** The forms of outlines as they are priced, with what the job says of each design. */
export function runOfOutlines({ ids, quantities, forms }: Pick<GangFacts, 'ids' | 'quantities' | 'forms'>, { overs, inks }: { readonly overs: SettledForms['limits']; readonly inks: readonly (readonly string[])[] }): RunToPrice {
  const laid = forms.flatMap(({ layout }) => layout?.designs ?? []);
  return {
    ids,
    quantities,
    counts: forms.map(({ counts }) => counts),
    planned: forms.map(({ pressings }) => pressings),
    limits: overs,
    designs: ids.map((id, design) => ({ outline: laid.find((one) => one.id === id)!.outline, inks: inks[design]! })),
  };
}
