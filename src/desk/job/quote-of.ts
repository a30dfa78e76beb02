import { CARTONS, isWithin, MOST_QUANTITIES } from '../../press/figure-ranges.ts';
import type { QuoteAsk } from '../engine/protocol.ts';
import { rangeOf, type MoneyFigure } from './money-ranges.ts';
import { figureIn, wholesOf } from './number-of.ts';
import { askedRates } from './rate-fields.ts';
import { boardOf, type Records } from './records.ts';
import { settleRates, sourcesOf } from './settled-rates.ts';
import { currencyOf, type Job, type KeptLayout } from './job.ts';

/** A field of the money panel whose text cannot be used. */
export type MoneyFault = 'quantities' | 'currency' | MoneyFigure;

/** What cannot be used of a job's money, whatever is quoted; versions bring quantities of their own. */
export function moneyFaults(job: Job, records: Records): readonly MoneyFault[] {
  const asked = quoteOf(job, records, { ups: 1, sheet: { width: 1, height: 1 } });
  return 'faults' in asked ? asked.faults.filter((field) => field !== 'quantities' || job.versions.list.length === 0) : [];
}

export type QuoteOf = QuoteAsk | { readonly faults: readonly MoneyFault[] };

/** What is quoted: so many ups on such a sheet, mm. */
export interface Quoted {
  readonly ups: number;
  readonly sheet: { readonly width: number; readonly height: number };
}

export function quotedOf({ file }: KeptLayout): Quoted {
  return { ups: file.placements.length, sheet: file.sheet };
}

/** The quote job for a layout: what is typed, over what the chosen records say. */
export function quoteOf({ money, sheet, name }: Job, records: Records, quoted: Quoted): QuoteOf {
  const faults: MoneyFault[] = [];
  const number = (field: MoneyFigure) => {
    const value = figureIn(rangeOf(field), money[field]);
    if (value === 'fault') faults.push(field);
    return value === 'fault' ? undefined : value;
  };
  const quantities = wholesOf(money.quantities);
  if (quantities === 'fault' || quantities.length > MOST_QUANTITIES || quantities.some((quantity) => !isWithin(quantity, CARTONS))) faults.push('quantities');
  if (!/^[a-z]{3}$/i.test(currencyOf(money))) faults.push('currency');
  const board = boardOf(records, sheet.board);
  const settled = settleRates(money, sheet, records);
  // A rate that the job does not ask for has no field to mend it in.
  const asked = new Set(askedRates(money).map((one) => one.name));
  faults.push(...settled.faults.filter((rate) => asked.has(rate)));
  const job = {
    ...(name && { name }),
    ups: quoted.ups,
    sheet: `${quoted.sheet.width}x${quoted.sheet.height}`,
    quantities,
    currency: currencyOf(money),
    stages: money.stages,
    ...defined({ grammage: number('grammage'), boardPricePerTonne: number('boardPrice'), colours: number('colours'), varnishUnits: number('varnishUnits') }),
    ...(board && { board }),
    ...recordOf('press', records.presses.find(({ id }) => id === sheet.press)),
    ...recordOf('cutter', records.cutters.find(({ id }) => id === sheet.cutter)),
    rates: settled.rates,
  };
  return faults.length > 0 ? { faults } : { job, sources: sourcesOf(settled, money) };
}

function recordOf(kind: string, named: Records['presses'][number] | undefined): object {
  return named ? { [kind]: named.record } : {};
}

function defined<Fields extends object>(fields: Fields): Partial<Fields> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<Fields>;
}
