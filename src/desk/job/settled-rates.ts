import { DEMO_RATES } from '../../press/demo-rates.ts';
import type { Rates, RateSource } from '../../press/rates.ts';
import type { MoneyFields, SheetFields } from './job.ts';
import { rangeOf } from './money-ranges.ts';
import { figureIn } from './number-of.ts';
import { askedRates, RATE_FIELDS, type RateName } from './rate-fields.ts';
import { nameOfRecord, type NamedRecord, type Records } from './records.ts';

export interface SettledRate {
  readonly value: number;
  readonly source: RateSource;
}

export interface SettledRates {
  /** As a record of rates. */
  readonly rates: Rates;
  readonly settled: ReadonlyMap<RateName, SettledRate>;
  /** Fields whose text is no number that such a rate may be. */
  readonly faults: readonly RateName[];
}

/** The record of rates that counts: the one chosen, else the last that was taken in; `none` is a choice too. */
export function ratesRecord({ rates }: Records, chosen: string): NamedRecord | undefined {
  return chosen === 'none' ? undefined : (rates.find(({ id }) => id === chosen) ?? rates.at(-1));
}

/** What is typed stands above the record of rates, that above the records of press and die-cutter, and invented rates below all. */
export function settleRates(money: MoneyFields, sheet: SheetFields, records: Records): SettledRates {
  const record = ratesRecord(records, money.ratesRecord);
  const machines = { press: records.presses.find(({ id }) => id === sheet.press), cutter: records.cutters.find(({ id }) => id === sheet.cutter) };
  const faults: RateName[] = [];
  const settled = new Map<RateName, SettledRate>();
  for (const { name, at } of RATE_FIELDS) {
    const typed = figureIn(rangeOf(name), money[name] ?? '');
    if (typed === 'fault') faults.push(name);
    const machine = at[0] === 'press' || at[0] === 'cutter' ? machines[at[0]] : undefined;
    const found = [
      typed === undefined || typed === 'fault' ? undefined : { value: typed, source: { kind: 'typed' } as const },
      inRecord(record, at),
      at.length === 2 ? inRecord(machine, [at[1]]) : undefined,
      money.inventedRates ? valueOf(DEMO_RATES, at, { kind: 'invented' }) : undefined,
    ].find((one) => one !== undefined);
    if (found) settled.set(name, found);
  }
  return { rates: asRates(settled, record), settled, faults };
}

function inRecord(record: NamedRecord | undefined, at: readonly string[]): SettledRate | undefined {
  return record && valueOf(record.record, at, { kind: 'record', name: nameOfRecord(record) });
}

function valueOf(record: object, at: readonly string[], source: RateSource): SettledRate | undefined {
  const value = at.reduce<unknown>((inner, field) => (typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>)[field] : undefined), record);
  return typeof value === 'number' ? { value, source } : undefined;
}

function asRates(settled: SettledRates['settled'], record: NamedRecord | undefined): Rates {
  const rates: Record<string, unknown> = {};
  for (const { name, at } of RATE_FIELDS) {
    const value = settled.get(name)?.value;
    if (value === undefined) continue;
    if (at.length === 1) rates[at[0]] = value;
    else rates[at[0]] = { ...(rates[at[0]] as object | undefined), [at[1]]: value };
  }
  const isInvented = [...settled.values()].some(({ source }) => source.kind === 'invented');
  const name = isInvented ? DEMO_RATES.name : record && nameOfRecord(record);
  return { ...rates, ...(name !== undefined && { name }) };
}

/** By what a quote calls it: where each rate that the job asks for comes from. */
export function sourcesOf({ settled }: SettledRates, money: MoneyFields): Readonly<Record<string, RateSource>> {
  return Object.fromEntries(askedRates(money).flatMap(({ name, figure }) => (settled.has(name) ? [[figure, settled.get(name)!.source]] : [])));
}
