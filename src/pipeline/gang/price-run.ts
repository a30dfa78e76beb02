import { copiesOffForms, runCost, type RunBlank } from '../../estimate/gang/run-cost.ts';
import { inkedM2 } from '../../estimate/ink-zones.ts';
import { ringArea } from '../../geometry/point.ts';
import type { Design } from '../../layout/layout-file.ts';
import type { RunFacts } from '../../render/run-facts.ts';
import type { QuoteJob } from '../quote-job.ts';
import { holdsRates } from '../../press/rates.ts';
import { weighStations, type SettledForms } from './weigh-stations.ts';

/** What is priced: versions or outlines on forms whose stations are settled, every one on some form. */
export interface RunToPrice extends SettledForms {
  readonly ids: readonly string[];
  /** Of outlines, one a design; absent: versions of one blank. */
  readonly designs?: readonly RunDesign[] | undefined;
  /** How often each form is pressed by the plan; absent: as these stations want it at least. */
  readonly planned?: readonly number[];
}

export interface RunDesign extends Pick<Design, 'outline'> {
  /** None named: those of the quote. */
  readonly inks: readonly string[];
}

/**
 * The whole run in money. What gluing and packing lose must come off the forms as well, so the pressings may be more than
 * those of the plan, in which quantities are what comes off the forms. The quote's ups are the stations of a form.
 */
export async function priceRun({ ids, designs, quantities, counts, limits, planned }: RunToPrice, quote: QuoteJob): Promise<RunFacts> {
  const { terms, product, sheet, locale, notes } = quote;
  const blanks = designs?.map((design) => blankOf(design, quote));
  const isOfOutlines = blanks !== undefined;
  const wanted = quantities.map((quantity, version) => quantity + (limits?.[version]?.least ?? 0));
  const copies = copiesOffForms(wanted, terms, isOfOutlines);
  const most = copiesOffForms(quantities.map((quantity, version) => quantity + (limits?.[version]?.greatest ?? 0)), terms, isOfOutlines);
  const allowed = copies.map((copy, version) => ({ least: 0, ...(limits?.[version]?.greatest !== undefined && { greatest: Math.max(0, most[version]! - copy) }) }));
  const byPlan = planned ?? (await weighStations({ quantities, counts, limits })).pressings;
  const taken = await weighStations({ quantities: copies, counts, limits: allowed });
  const pressed = taken.pressings.flatMap((run, form) => (run > 0 ? [form] : []));
  const kept = <T>(list: readonly T[]) => pressed.map((form) => list[form]!);
  const cost = runCost({ quantities, wanted, counts: kept(counts), blanks, pressings: kept(taken.pressings), terms });
  return {
    ids,
    quantities,
    copies,
    made: copies.map((copy, version) => copy + taken.overs[version]!),
    counts: kept(counts),
    numbers: pressed.map((form) => form + 1),
    planned: kept(byPlan),
    pressings: kept(taken.pressings),
    stations: isOfOutlines ? undefined : terms.route.ups,
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

function blankOf({ outline, inks }: RunDesign, { inks: quoted }: QuoteJob): RunBlank {
  return { areaM2: ringArea(outline.map(([x, y]) => ({ x, y }))) / 1e6, inks, inkedM2: quoted?.map(({ coverage }) => inkedM2(outline, coverage)) };
}
