import type { BatchCarton, BatchCell, BatchFacts, BatchSheet, Saving } from '../../render/batch-facts.ts';
import type { SheetCandidate } from '../../press/sheet-candidates.ts';
import type { BatchJob } from './batch-job.ts';
import type { CartonResult, Result } from './run-batch.ts';

type Laid = Extract<CartonResult, { results: unknown }>;

/** Savings a year by carton and by sheet, and what could not be done. */
export function summaryOf(job: BatchJob, results: readonly CartonResult[], complete: boolean): BatchFacts {
  const laid = results.filter((result): result is Laid => 'results' in result);
  const cartons = laid.map((carton) => cartonOf(carton, job));
  const each = laid.flatMap(({ id, results: own }) => own.map((result) => ({ carton: id, result })));
  return {
    name: job.name,
    complete,
    currency: job.currency,
    cartons,
    sheets: job.candidates.map((sheet, index) => sheetOf(sheet, index, cartons, job)),
    total: sum(cartons.flatMap(({ saving }) => (saving ? [saving] : []))),
    refused: results.filter((result) => 'issues' in result),
    doubtful: laid.flatMap(({ id, doubts }) => (doubts.length > 0 ? [{ id, issues: doubts }] : [])),
    setAside: each.flatMap(({ carton, result }) => ('setAside' in result ? [{ carton, sheet: result.candidate, message: result.setAside }] : [])),
    changed: each.flatMap(({ carton, result }) => ('ups' in result && result.before ? [{ carton, sheet: result.candidate, ups: result.ups, before: result.before.ups, engine: result.before.engine }] : [])),
  };
}

function cartonOf({ id, name, yearly, usual, results }: Laid, job: BatchJob): BatchCarton {
  const cells = results.map(cellOf);
  const holding = [...cells.keys()].filter((index) => cells[index].ups !== undefined);
  const best = holding.toSorted((a, b) => cells[a].boardM2PerThousand! - cells[b].boardM2PerThousand! || a - b)[0];
  const usualIndex = cells[usual]?.ups === undefined ? undefined : usual;
  const saving = best === undefined || usualIndex === undefined || yearly === undefined ? undefined : savingOf(cells[usualIndex], cells[best], yearly, job);
  return { id, name, yearly, cells, usual: usualIndex, best, saving };
}

function cellOf(result: Result): BatchCell {
  const { candidate } = result;
  if (!('ups' in result)) return { sheet: candidate, ups: undefined, upperBound: undefined, boardM2PerThousand: undefined, key: undefined };
  return { sheet: candidate, ups: result.ups, upperBound: result.upperBound, boardM2PerThousand: (candidate.boughtM2 / result.ups) * 1000, key: result.key };
}

/** Board of the one less board of the other; each at its own price. */
function savingOf(from: BatchCell, to: BatchCell, yearly: number, { grammage, pricePerTonne }: BatchJob): Saving {
  const thousands = yearly / 1000;
  const kg = ({ boardM2PerThousand }: BatchCell) => (grammage === undefined ? undefined : (boardM2PerThousand! * thousands * grammage) / 1000);
  const cost = (cell: BatchCell) => {
    const price = cell.sheet.pricePerTonne ?? pricePerTonne;
    const weight = kg(cell);
    return price === undefined || weight === undefined ? undefined : (weight * price) / 1000;
  };
  return { boardM2: (from.boardM2PerThousand! - to.boardM2PerThousand!) * thousands, boardKg: difference(kg(from), kg(to)), money: difference(cost(from), cost(to)) };
}

function difference(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : a - b;
}

function sheetOf(sheet: SheetCandidate, index: number, cartons: readonly BatchCarton[], job: BatchJob): BatchSheet {
  const gains = cartons.flatMap(({ cells, usual, yearly }) => {
    if (usual === undefined || yearly === undefined || cells[index].ups === undefined) return [];
    const saving = savingOf(cells[usual], cells[index], yearly, job);
    return saving.boardM2 > 0 ? [saving] : [];
  });
  return { sheet, bestFor: cartons.filter(({ best }) => best === index).length, saving: sum(gains) };
}

/** Nothing saved is known to be nothing; one figure that is not known leaves the sum open. */
function sum(savings: readonly Saving[]): Saving {
  const total = (values: readonly (number | undefined)[]) => values.reduce<number | undefined>((all, value) => (all === undefined || value === undefined ? undefined : all + value), 0);
  return { boardM2: total(savings.map(({ boardM2 }) => boardM2))!, boardKg: total(savings.map(({ boardKg }) => boardKg)), money: total(savings.map(({ money }) => money)) };
}
