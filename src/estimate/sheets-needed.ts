import { countsCartons, STAGES, type Stage } from '../press/stages.ts';
import type { WasteTable } from '../press/waste-table.ts';

/** What a job asks of the machines, as far as waste goes. */
export interface Route {
  readonly ups: number;
  readonly colours: number;
  readonly varnishUnits: number;
  readonly stages: readonly Stage[];
}

/** One stage of the chain: `into` must go in so that `out` come out. */
export interface StageNeed {
  readonly stage: Stage;
  readonly counts: 'sheets' | 'cartons';
  readonly into: number;
  readonly out: number;
  readonly setUp: number;
  readonly runningPercent: number;
}

export interface SheetsNeeded {
  /** Sheets to order: what the first stage needs. */
  readonly sheets: number;
  /** Sheets if nothing were lost. */
  readonly netSheets: number;
  /** In the order in which they are worked. */
  readonly chain: readonly StageNeed[];
}

/**
 * Sheets for a quantity. Convention: each stage must also cover what all later ones lose. From the last stage back to
 * the first, what must come out is divided by (1 − running waste) and rounded up, then the set-up is added; cartons
 * become sheets by dividing by the ups, rounded up. Undefined entries of the table are left to the caller to refuse.
 */
export function sheetsNeeded(quantity: number, route: Route, table: WasteTable): SheetsNeeded {
  const chain: StageNeed[] = [];
  let wanted = quantity;
  let counts: 'sheets' | 'cartons' = 'cartons';
  const toSheets = () => {
    if (counts === 'cartons') wanted = Math.ceil(wanted / route.ups);
    counts = 'sheets';
  };
  for (const stage of stagesOf(route).toReversed()) {
    if (!countsCartons(stage)) toSheets();
    const { setUp, runningPercent } = wasteOfStage(stage, route, table)!;
    const into = beforeRunning(wanted, runningPercent) + setUp;
    chain.unshift({ stage, counts, into, out: wanted, setUp, runningPercent });
    wanted = into;
  }
  toSheets();
  return { sheets: wanted, netSheets: Math.ceil(quantity / route.ups), chain };
}

/** The job's stages in working order; printing is one of them as soon as there is a colour or a varnish unit. */
export function stagesOf({ colours, varnishUnits, stages }: Route): readonly Stage[] {
  return STAGES.filter((stage) => stages.includes(stage) || (stage === 'printing' && colours + varnishUnits > 0));
}

/** Set-up and running waste of one stage; undefined where the table says nothing. */
export function wasteOfStage(stage: Stage, { colours, varnishUnits }: Route, table: WasteTable): { setUp: number; runningPercent: number } | undefined {
  if (stage !== 'printing') return table.stages[stage];
  const { setUpPerMachine, colours: rows, varnish } = table.printing;
  const row = rows.filter(({ fromColours }) => fromColours <= colours).toSorted((a, b) => b.fromColours - a.fromColours)[0];
  return {
    setUp: setUpPerMachine + colours * (row?.setUpPerPlate ?? 0) + varnishUnits * (varnish.setUpPerUnit + varnish.setUpPerPlate),
    runningPercent: toParts((row?.runningPercent ?? 0) + varnishUnits * varnish.runningPercent) / PARTS_PER_PERCENT,
  };
}

/** Percents are counted in whole millionths, so that a quotient that comes out even is not rounded up by a float's dust. */
const MILLION = 1_000_000;
const PARTS_PER_PERCENT = MILLION / 100;

function toParts(percent: number): number {
  return Math.round(percent * PARTS_PER_PERCENT);
}

/** Exact for quantities up to 10⁹: the product stays below 2⁵³ and a quotient that is not whole misses by over 10⁻⁶. */
function beforeRunning(out: number, runningPercent: number): number {
  return Math.ceil((out * MILLION) / (MILLION - toParts(runningPercent)));
}
