import { MACHINE_OF, type MachineKey } from '../../estimate/quote.ts';
import type { Rates } from '../../press/rates.ts';
import { numberOf } from './number-of.ts';
import { STAGES, type Stage } from '../../press/stages.ts';

export const MACHINE_FIGURES = ['Rate', 'Speed', 'Makeready'] as const;
export type MachineFigure = (typeof MACHINE_FIGURES)[number];
export const PLAIN_RATES = ['platePrice', 'diePrice', 'inkPrice', 'inkFilm', 'inkCoverage', 'varnishPrice', 'varnishFilm', 'packing', 'freight', 'margin', 'carbon'] as const;
export type PlainRate = (typeof PLAIN_RATES)[number];
/** A rate as a field of the money panel. */
export type RateName = PlainRate | `${MachineKey}${MachineFigure}`;

export interface RateField {
  readonly name: RateName;
  /** Where it stands in a record of rates. */
  readonly at: readonly [field: keyof Rates] | readonly [machine: MachineKey, field: 'hourlyRate' | 'speed' | 'makereadyMinutes'];
  /** What a quote calls it, in its formulas and among what is missing. */
  readonly figure: string;
}

const MACHINE_AT = { Rate: 'hourlyRate', Speed: 'speed', Makeready: 'makereadyMinutes' } as const;
const PLAIN: Readonly<Record<PlainRate, readonly [field: keyof Rates, figure: string]>> = {
  platePrice: ['platePrice', 'plate price'],
  diePrice: ['diePrice', 'die price'],
  inkPrice: ['inkPricePerKg', 'ink price'],
  inkFilm: ['inkGramsPerM2', 'ink film'],
  inkCoverage: ['inkCoverage', 'ink coverage'],
  varnishPrice: ['coatingPricePerKg', 'varnish price'],
  varnishFilm: ['coatingGramsPerM2', 'varnish film'],
  packing: ['packingPerThousand', 'packing per thousand'],
  freight: ['freightPerTonne', 'freight per tonne'],
  margin: ['marginPercent', 'margin'],
  carbon: ['carbonPerTonne', 'carbon of the board'],
};

/** The fields of one stage's machine. */
export function machineFields(stage: Stage): RateField[] {
  const { key, noun } = MACHINE_OF[stage];
  return MACHINE_FIGURES.map((figure) => ({ name: `${key}${figure}`, at: [key, MACHINE_AT[figure]], figure: `${noun} ${figure.toLowerCase()}` }));
}

/** Every rate that a quote may ask for. */
export const RATE_FIELDS: readonly RateField[] = [...STAGES.flatMap(machineFields), ...PLAIN_RATES.map((name): RateField => ({ name, at: [PLAIN[name][0]], figure: PLAIN[name][1] }))];

export const NO_RATES = Object.fromEntries(RATE_FIELDS.map(({ name }) => [name, ''])) as Readonly<Record<RateName, string>>;

/** Fields of a job's money that say what is asked for, as typed. */
interface Asking {
  readonly colours: string;
  readonly varnishUnits: string;
  readonly stages: readonly string[];
}

/** The stages that the job goes through, printing among them. */
export function askedStages({ colours, varnishUnits, stages }: Asking): Stage[] {
  return STAGES.filter((stage) => stages.includes(stage) || (stage === 'printing' && isAny(colours, varnishUnits)));
}

/** The rates that such a job asks for. */
export function askedRates(money: Asking): RateField[] {
  const { colours, varnishUnits, stages } = money;
  const isLeftOut = (name: RateName) =>
    (name === 'platePrice' && !isAny(colours, varnishUnits)) || (name === 'diePrice' && !stages.includes('die-cutting')) || (name.startsWith('ink') && !isAny(colours)) || (name.startsWith('varnish') && !isAny(varnishUnits));
  return [...askedStages(money).flatMap(machineFields), ...RATE_FIELDS.filter(({ at, name }) => at.length === 1 && !isLeftOut(name))];
}

function isAny(...counts: readonly string[]): boolean {
  return counts.some((text) => numberOf(text) !== 0 && numberOf(text) !== undefined);
}
