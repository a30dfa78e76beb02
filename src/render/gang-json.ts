import { writeLayoutFile } from '../layout/layout-file.ts';
import type { GangFacts } from './gang-facts.ts';

export function gangJson(facts: GangFacts): string {
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
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}
