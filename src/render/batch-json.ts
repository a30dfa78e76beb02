import type { SheetCandidate } from '../press/sheet-candidates.ts';
import type { BatchCell, BatchFacts, Saving } from './batch-facts.ts';
import { english } from './messages/english.ts';

/** The batch as data, version 1. Holds no clock and no machine: equal batches are equal bytes. */
export function batchJson(facts: BatchFacts, engine: string): string {
  const { name, complete, currency, cartons, sheets, total, refused, doubtful, setAside, changed } = facts;
  const content = {
    format: 'blankwright-batch',
    version: 1,
    name,
    complete,
    engine,
    currency,
    cartons: cartons.map(({ id, name: called, yearly, cells, usual, best, saving }) => ({
      id,
      name: called ?? null,
      yearly: yearly ?? null,
      sheets: cells.map(cell),
      usual: usual ?? null,
      best: best ?? null,
      savingPerYear: saving ? savingOf(saving) : null,
    })),
    sheets: sheets.map(({ sheet, bestFor, saving }) => ({ sheet: sheetOf(sheet), bestFor, savingPerYear: savingOf(saving) })),
    total: savingOf(total),
    refused: refused.map(({ id, issues }) => ({ id, reasons: issues.map((issue) => english.sentence(issue)) })),
    doubtful: doubtful.map(({ id, issues }) => ({ id, reasons: issues.map((issue) => english.sentence(issue)) })),
    setAside: setAside.map(({ carton, sheet, message }) => ({ carton, sheet: sheetOf(sheet), message })),
    changed: changed.map(({ carton, sheet, ups, before, engine: earlier }) => ({ carton, sheet: sheetOf(sheet), ups, before, engine: earlier })),
  };
  return `${JSON.stringify(content, null, 1)}\n`;
}

function sheetOf({ sheet, grain }: SheetCandidate) {
  return { ...sheet, grain: grain ?? null };
}

function cell({ sheet, ups, upperBound, boardM2PerThousand, key }: BatchCell) {
  return { sheet: sheetOf(sheet), ups: ups ?? null, upperBound: upperBound ?? null, boardM2PerThousand: rounded(boardM2PerThousand, 3), answer: key ?? null };
}

function savingOf({ boardM2, boardKg, money }: Saving) {
  return { boardM2: rounded(boardM2, 2), boardKg: rounded(boardKg, 2), money: rounded(money, 2) };
}

function rounded(value: number | undefined, decimals: number): number | null {
  return value === undefined ? null : Math.round(value * 10 ** decimals) / 10 ** decimals;
}
