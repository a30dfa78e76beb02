import { numberOf, wholesOf } from './number-of.ts';
import { boardOf, type Records } from './records.ts';
import type { Job, KeptLayout } from './job.ts';

/** A field of the money panel whose text is no number. */
export type MoneyFault = 'quantities' | 'grammage' | 'boardPrice' | 'colours' | 'varnishUnits' | 'pressRate' | 'pressSpeed' | 'cutterRate' | 'cutterSpeed' | 'platePrice' | 'diePrice' | 'margin';

export type QuoteOf = { readonly job: Readonly<Record<string, unknown>> } | { readonly faults: readonly MoneyFault[] };

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
  const number = (field: Exclude<MoneyFault, 'quantities'>) => {
    const value = numberOf(money[field]);
    if (value === 'fault') faults.push(field);
    return value === 'fault' ? undefined : value;
  };
  const quantities = wholesOf(money.quantities);
  if (quantities === 'fault') faults.push('quantities');
  const board = boardOf(records, sheet.board);
  const machine = (hourlyRate: number | undefined, speed: number | undefined) => defined({ hourlyRate, speed });
  const rates = {
    press: machine(number('pressRate'), number('pressSpeed')),
    cutter: machine(number('cutterRate'), number('cutterSpeed')),
    ...defined({ platePrice: number('platePrice'), diePrice: number('diePrice'), marginPercent: number('margin') }),
  };
  const job = {
    ...(name && { name }),
    ups: quoted.ups,
    sheet: `${quoted.sheet.width}x${quoted.sheet.height}`,
    quantities,
    currency: money.currency || 'EUR',
    stages: money.stages,
    ...defined({ grammage: number('grammage'), boardPricePerTonne: number('boardPrice'), colours: number('colours'), varnishUnits: number('varnishUnits') }),
    ...(board && { board }),
    ...recordOf('press', records.presses.find(({ id }) => id === sheet.press)),
    ...recordOf('cutter', records.cutters.find(({ id }) => id === sheet.cutter)),
    rates,
  };
  return faults.length > 0 ? { faults } : { job };
}

function recordOf(kind: string, named: Records['presses'][number] | undefined): object {
  return named ? { [kind]: named.record } : {};
}

function defined<Fields extends object>(fields: Fields): Partial<Fields> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<Fields>;
}
