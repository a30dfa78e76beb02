import { writeLayoutFile } from '../layout/layout-file.ts';
import type { GangFacts } from './gang-facts.ts';
import { isOfOutlines, platesOf, runTotals, type RunFacts } from './run-facts.ts';

export function gangJson(facts: GangFacts, money?: RunFacts): string {
  const byId = (values: readonly number[]) => Object.fromEntries(facts.ids.map((id, v) => [id, values[v]!]));
  const content = {
    format: 'blankwright-gang',
    version: 1,
    forms: facts.forms.map(({ counts, pressings, changes, layout, prints }) => ({ counts: byId(counts), pressings, ...(facts.stations !== undefined && { stationsChanged: changes ?? null }), ...(prints && { stations: prints }), ...(layout && { layout: JSON.parse(writeLayoutFile(layout)) as unknown }) })),
    objective: facts.costs ? 'cost' : 'pressings',
    totalPressings: facts.pressings,
    totalCost: facts.cost ?? null,
    lowerBound: facts.lowerBound,
    optimal: facts.optimal,
    overs: byId(facts.overs),
    ...(facts.apart && { apart: facts.apart.map(({ designs, because, says }) => ({ designs, because, says: says.map((text) => text ?? null) })) }),
    ...(facts.separate && { separate: { forms: facts.separate.forms, totalPressings: facts.separate.pressings, totalCost: facts.separate.cost ?? null } }),
    ...(money && { money: moneyJson(money) }),
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}

/** Figures that a missing rate leaves open are null, as in a quote. */
function moneyJson(facts: RunFacts): object {
  const { cost: { forms, cost, costPerThousand, pricePerThousand, versions }, ids, currency, missing, planned, pressings } = facts;
  const plates = platesOf(facts);
  const perThousand = (one: Pick<typeof versions[number], 'costPerThousand' | 'pricePerThousand'>) => ({ costPerThousand: one.costPerThousand.value, pricePerThousand: one.pricePerThousand?.value ?? null });
  return {
    currency,
    sheets: runTotals(facts).sheets,
    cost: cost.value,
    ...perThousand({ costPerThousand, pricePerThousand }),
    forms: forms.map((form, i) => ({ pressings: planned[i]!, goodSheets: pressings[i]!, sheets: form.needed.sheets, plates: plates[i]!, boardKg: form.boardWeight.value, pressHours: form.pressHours?.value ?? null, cost: form.cost.value })),
    [isOfOutlines(facts) ? 'designs' : 'versions']: Object.fromEntries(ids.map((id, v) => [id, { copies: facts.made[v]!, cost: versions[v]!.cost.value, ...perThousand(versions[v]!) }])),
    missing,
  };
}
