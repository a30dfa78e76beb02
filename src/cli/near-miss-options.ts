import type { Command } from 'commander';
import type { NearMissTerms } from '../pipeline/near-misses.ts';
import { withMachines } from '../pipeline/quote-job.ts';
import type { Machines } from '../press/machines.ts';
import { wholeNumber, type OptionReader } from './option-reader.ts';
import { CURRENCY_WANTED, currencyValue, readRates } from './cost-options.ts';

export function addNearMissOptions(command: Command): Command {
  return command
    .option('--near-misses', 'also search which single small change brings one more up, each with its judged layout')
    .option('--yearly <n>', 'cartons a year, to say what a near miss is worth; board prices come from the board record');
}

const MOST_YEARLY = 1e10;

export interface NearMissOptions {
  readonly wanted: boolean;
  readonly yearly: number | undefined;
  readonly currency: string;
}

export function readNearMissOptions(raw: Readonly<Record<string, unknown>>, reader: OptionReader): NearMissOptions {
  const wanted = raw['nearMisses'] === true;
  const yearly = reader.read('--yearly', wholeNumber(1, MOST_YEARLY), `a whole number of cartons from 1 to ${MOST_YEARLY} is wanted`);
  if (yearly !== undefined && !wanted) reader.fault({ code: 'option-needs-other', where: '--yearly', facts: { other: '--near-misses' } });
  return { wanted, yearly, currency: reader.read('--currency', currencyValue, CURRENCY_WANTED) ?? 'EUR' };
}

export function nearMissTerms({ yearly, currency }: NearMissOptions, rates: string | undefined, machines: Machines): NearMissTerms {
  const { board, press, cutter } = machines;
  return { yearly, currency, grammage: board?.grammage, pricePerTonne: board?.pricePerTonne, rates: withMachines(readRates(rates), press, cutter) };
}
