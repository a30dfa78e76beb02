import type { CompareFacts, ComparedSheetFacts } from './compare-facts.ts';
import { createFormat } from './format.ts';
import { englishCompare } from './messages/english-compare.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { NearMissFacts } from './near-miss-facts.ts';
import { takeOvers } from './take-overs.ts';
import { nearMissJson } from './near-miss-section.ts';
import { roundTo } from './rounded.ts';

/** Money with two decimals, board with three. */
export function compareJson(facts: CompareFacts, misses?: NearMissFacts): string {
  const { quantities, winners, measure, currency, ratesName, missing, toleranceMm, leastBoard } = facts;
  const content = {
    format: 'blankwright-comparison',
    version: 1,
    quantities,
    currency,
    ...(ratesName !== undefined && { rates: ratesName }),
    measure,
    candidates: facts.sheets.map(candidateJson),
    winners,
    breakEven: takeOvers(winners),
    leastBoard,
    sentence: englishCompare.sentence(facts, createFormat(englishLanguage.locale)),
    missing,
    toleranceMm,
    skipped: facts.skipped,
    ...(misses && { nearMisses: nearMissJson(misses) }),
    issues: facts.notes.map(({ code, severity, where, facts: details }) => ({ code, severity, where, ...details })),
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}

function candidateJson(sheet: ComparedSheetFacts): object {
  const money = (values: readonly (number | null)[]) => (values.length === 0 ? [null] : values.map((value) => value === null ? null : roundTo(value, 2)));
  return {
    sheet: { width: roundTo(sheet.sheet.width, 3), height: roundTo(sheet.sheet.height, 3), grain: sheet.grain ?? null },
    ups: sheet.ups,
    upperBound: sheet.upperBound,
    boardM2PerThousand: roundTo(sheet.boardM2PerThousand, 3),
    costPerThousand: money(sheet.costPerThousand),
    boardCostPerThousand: money(sheet.boardCostPerThousand),
    boardM2PerThousandWithWaste: sheet.boardM2WithWaste.map((m2) => roundTo(m2, 3)),
    sheetsToOrder: sheet.sheetsToOrder,
    origin: sheet.origin,
    ...(sheet.die && { existingDie: sheet.die.number ?? true }),
    ...(sheet.fromCartons !== undefined && { fromCartons: sheet.fromCartons }),
    searched: sheet.searched,
    leastSheet: sheet.leastSheet,
    sheetToOrder: sheet.sheetToOrder,
  };
}
