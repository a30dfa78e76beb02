import type { Command } from 'commander';
import { inputError, type Issue } from '../base/issue.ts';
import { readLayoutFile, type LayoutFile } from '../layout/layout-file.ts';
import { judge } from '../layout/judge.ts';
import type { CostTerms } from '../pipeline/compare-costs.ts';
import { checkWaste, MOST_CARTONS, readStages, withMachines } from '../pipeline/quote-job.ts';
import type { Machines } from '../press/machines.ts';
import { DEMO_RATES } from '../press/demo-rates.ts';
import { ratesSchema, type Rates } from '../press/rates.ts';
import { dieSchema, readRecord } from '../press/records.ts';
import { GERMAN_TABLE, wasteTableSchema } from '../press/waste-table.ts';
import { openJob } from './job-files.ts';
import { readRecordFile } from './read-record-file.ts';
import { wholeNumber, type OptionReader } from './option-reader.ts';

/** What an estimator asks for when no quantities are given. */
const USUAL_QUANTITIES = [5000, 20_000, 100_000];
const USUAL_COLOURS = 4;
const USUAL_STAGES = 'die-cutting';

export function addCostOptions(command: Command): Command {
  return command
    .option('--quantities <list>', 'quantities to count with: 5000,20000,100000 (those by default with --rates)')
    .option('--rates <file>', 'the shop’s rates (JSON or CSV), or demo for invented ones, named so; board prices come from the sheets or the board record')
    .option('--colours <n>', 'printed colours, for plates, waste and ink (default 4)')
    .option('--varnish-units <n>', 'varnish units (default 0)')
    .option('--stages <list>', 'stages after printing, for waste and hours: die-cutting,gluing (default die-cutting)')
    .option('--waste <file>', 'makeready and running waste (JSON or CSV); by default the published German table')
    .option('--currency <code>', 'currency of rates and prices (default EUR)');
}

export interface CostOptions {
  readonly quantities: readonly number[] | undefined;
  readonly colours: number | undefined;
  readonly varnishUnits: number | undefined;
  readonly stages: string | undefined;
  readonly currency: string;
}

export function readCostOptions(raw: Readonly<Record<string, unknown>>, reader: OptionReader): CostOptions {
  return {
    quantities: reader.read('--quantities', quantityList, `whole quantities from 1 to ${MOST_CARTONS} are wanted, such as 5000,20000,100000`) ?? (raw['rates'] === undefined ? undefined : USUAL_QUANTITIES),
    colours: reader.read('--colours', wholeNumber(0, 20), 'a whole number from 0 to 20 is wanted'),
    varnishUnits: reader.read('--varnish-units', wholeNumber(0, 5), 'a whole number from 0 to 5 is wanted'),
    stages: reader.read('--stages', (text) => text, ''),
    currency: reader.read('--currency', currencyValue, CURRENCY_WANTED) ?? 'EUR',
  };
}

export const CURRENCY_WANTED = 'a currency of three letters is wanted, such as EUR';
export function currencyValue(text: string): string | undefined {
  return /^[A-Za-z]{3}$/.test(text) ? text.toUpperCase() : undefined;
}

/** A file's rates, the invented ones for `demo`, none where nothing was given. */
export function readRates(rates: string | undefined): Rates {
  if (rates === undefined) return {};
  return rates === 'demo' ? DEMO_RATES : readRecord(ratesSchema, readRecordFile(rates, 'rates'), rates);
}

/** Rising, each once. */
function quantityList(text: string): number[] | undefined {
  const read = text.split(',').map((part) => wholeNumber(1, MOST_CARTONS)(part.trim()));
  return read.includes(undefined) || read.length > 50 ? undefined : [...new Set(read as number[])].toSorted((a, b) => a - b);
}

/** Everything that costs depend on besides sheets and ups, and what of it was assumed. */
export function costTerms(options: CostOptions, raw: { readonly rates?: string; readonly waste?: string; readonly quantities?: string }, machines: Machines): { terms: CostTerms; notes: Issue[] } {
  const waste = raw.waste === undefined ? GERMAN_TABLE : readRecord(wasteTableSchema, readRecordFile(raw.waste, 'waste'), raw.waste);
  const rates = readRates(raw.rates);
  const stages = options.stages ?? USUAL_STAGES;
  const route = { colours: options.colours ?? USUAL_COLOURS, varnishUnits: options.varnishUnits ?? 0, stages: readStages(stages === '' ? [] : stages.split(',').map((name) => name.trim()), '--stages') };
  checkWaste({ ...route, ups: 1 }, waste, '--waste');
  const { board } = machines;
  const quantities = options.quantities ?? [];
  const note = (code: string, facts: Issue['facts'] & object): Issue => ({ code, severity: 'note', facts });
  const notes = quantities.length === 0 ? [] : [
    ...(raw.quantities === undefined ? [note('compare-quantities-assumed', { quantities: quantities.join(', ') })] : []),
    ...(options.colours === undefined ? [note('compare-route-assumed', { what: 'colours', value: route.colours })] : []),
    ...(options.stages === undefined ? [note('compare-route-assumed', { what: 'stages', value: route.stages.join(', ') })] : []),
  ];
  return {
    terms: { quantities, route, grammage: board?.grammage, caliperMm: board?.caliper, pricePerTonne: board?.pricePerTonne, currency: options.currency, waste, rates: withMachines(rates, machines.press, machines.cutter) },
    notes,
  };
}

/** A die record with its layout, or the layout file itself. Refuses a layout that is not sound. */
export function readStandingDie(path: string): { number: string | undefined; layout: LayoutFile } {
  const { json, load } = openJob(path, 'dies');
  const isLayout = typeof json === 'object' && json !== null && 'placements' in json;
  const die = isLayout ? undefined : readRecord(dieSchema, json, path);
  if (die && die.layout === undefined) throw inputError('die-layout-missing', { where: path });
  const layout = die ? readLayoutFile(load(die.layout!), die.layout!) : readLayoutFile(json, path);
  const { state, faults } = judge(layout);
  if (state !== 'sound') throw inputError('die-layout-faulty', { where: path, facts: { faults: faults.length } });
  return { number: die?.number, layout };
}
