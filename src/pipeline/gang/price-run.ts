import { copiesOffForms, runCost } from '../../estimate/gang/run-cost.ts';
import type { RunFacts } from '../../render/run-facts.ts';
import type { QuoteJob } from '../quote-job.ts';
import { holdsRates } from '../../press/rates.ts';
import { weighStations, type SettledForms } from './weigh-stations.ts';

/** What is priced: versions on forms whose stations are settled, every version on some form. */
export interface RunToPrice extends SettledForms {
  readonly ids: readonly string[];
  /** How often each form is pressed by the plan; absent: as these stations want it at least. */
  readonly planned?: readonly number[];
}

/**
 * The whole run in money. What gluing and packing lose must come off the forms as well, so the pressings may be more than
 * those of the plan, in which quantities are what comes off the forms. The quote's ups are the stations of a form.
 */
export async function priceRun({ ids, quantities, counts, limits, planned }: RunToPrice, { terms, product, sheet, locale, notes }: QuoteJob): Promise<RunFacts> {
  const wanted = quantities.map((quantity, version) => quantity + (limits?.[version]?.least ?? 0));
  const copies = copiesOffForms(wanted, terms);
  const most = copiesOffForms(quantities.map((quantity, version) => quantity + (limits?.[version]?.greatest ?? 0)), terms);
  const allowed = copies.map((copy, version) => ({ least: 0, ...(limits?.[version]?.greatest !== undefined && { greatest: Math.max(0, most[version]! - copy) }) }));
  const byPlan = planned ?? (await weighStations({ quantities, counts, limits })).pressings;
  const taken = await weighStations({ quantities: copies, counts, limits: allowed });
  const pressed = taken.pressings.flatMap((run, form) => (run > 0 ? [form] : []));
  const kept = <T>(list: readonly T[]) => pressed.map((form) => list[form]!);
  const cost = runCost({ quantities, wanted, counts: kept(counts), pressings: kept(taken.pressings), terms });
  return {
    ids,
    quantities,
    copies,
    made: copies.map((copy, version) => copy + taken.overs[version]!),
    counts: kept(counts),
    numbers: pressed.map((form) => form + 1),
    planned: kept(byPlan),
    pressings: kept(taken.pressings),
    stations: terms.route.ups,
    sheet,
    product,
    currency: terms.currency,
    waste: terms.waste,
    ratesName: terms.rates.name,
    anyRates: holdsRates(terms.rates),
    cost,
    missing: [...new Set(cost.cost.missing)],
    locale,
    notes,
  };
}
