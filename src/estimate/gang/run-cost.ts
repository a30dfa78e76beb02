import { countsCartons } from '../../press/stages.ts';
import type { WasteTable } from '../../press/waste-table.ts';
import { figure, given, type Figure } from '../figure.ts';
import { machineCost, machineHours } from '../machine-time.ts';
import { delivery, MACHINE_OF, packedDelivery, quoteQuantity, type QuantityQuote, type QuoteTerms } from '../quote.ts';
import { packed } from '../packing.ts';
import { sheetsNeeded, stagesOf, type StageNeed } from '../sheets-needed.ts';

/** Versions of one blank on the forms of a run. The route's ups are the stations of a form. */
export interface RunJob {
  /** Ordered. */
  readonly quantities: readonly number[];
  /** Wanted at the end: what is ordered, and the least overs. */
  readonly wanted: readonly number[];
  /** Stations of each version on each form: `[form][version]`. */
  readonly counts: readonly (readonly number[])[];
  /** Good sheets wanted of each form behind its last stage in sheets, at least 1. */
  readonly pressings: readonly number[];
  readonly terms: QuoteTerms;
}

export interface RunCost {
  /** One a form: its sheets, hours and costs; the die and what follows in cartons left out. */
  readonly forms: readonly QuantityQuote[];
  /** Paid for the run as a whole. */
  readonly rest: readonly Figure[];
  readonly cost: Figure;
  readonly costPerThousand: Figure;
  /** Only where a margin was given. */
  readonly pricePerThousand: Figure | undefined;
  /** In the order of the quantities. Their costs sum to that of the run. */
  readonly versions: readonly VersionCost[];
}

export interface VersionCost {
  readonly cost: Figure;
  readonly costPerThousand: Figure;
  readonly pricePerThousand: Figure | undefined;
}

/** A cost of the whole run with what each version bears of it. */
interface Shared {
  readonly paid: Figure;
  readonly parts: readonly number[];
}

/**
 * What versions on common forms cost. The press is made ready for every form; what comes after it is set up once, with the
 * longest form, and the gluer and packer once, with the largest version, since die and blank are the same. A form is borne
 * by its stations, each printing station alike; the die by copies made; gluing and packing by copies worked; packing
 * material and freight by copies ordered. One version on one form comes to what `quoteQuantity` says.
 */
export function runCost({ quantities, wanted, counts, pressings, terms }: RunJob): RunCost {
  const { currency } = terms;
  const longest = pressings.indexOf(Math.max(...pressings));
  const forms = pressings.map((run, form) => quoteQuantity(run, termsOfForm(terms, counts[form]!, form === longest)));
  const rest = [...dieOf(counts, pressings, terms), ...cartonStages(wanted, terms), ...delivered(quantities, forms, terms)];
  const shared: Shared[] = [...forms.map(({ cost }, form) => ({ paid: { ...cost, name: `form ${form + 1}` }, parts: counts[form]! })), ...rest];
  const cost = figure('cost', currency, shared.map(({ paid }) => paid.name).join(' + '), Object.fromEntries(shared.map(({ paid }) => [paid.name, paid])));
  return {
    forms,
    rest: rest.map(({ paid }) => paid),
    cost,
    ...byThousand(cost, sum(quantities), terms),
    versions: quantities.map((quantity, version) => versionCost(quantity, version, shared, terms)),
  };
}

/** Copies of each version that must come off the forms so that so many are left behind gluing and packing. */
export function copiesOffForms(wanted: readonly number[], terms: QuoteTerms): number[] {
  return wanted.map((copies, version) => cartonChain(wanted, version, terms)[0]?.into ?? copies);
}

function versionCost(quantity: number, version: number, shared: readonly Shared[], terms: QuoteTerms): VersionCost {
  const borne = shared.filter(({ parts }) => parts[version]! > 0);
  const formula = borne.map(({ paid, parts }) => (sum(parts) === parts[version] ? paid.name : `${paid.name} × ${parts[version]} ÷ ${sum(parts)}`)).join(' + ') || '0';
  const cost = figure('cost', terms.currency, formula, Object.fromEntries(borne.map(({ paid }) => [paid.name, paid])));
  return { cost, ...byThousand(cost, quantity, terms) };
}

function byThousand(cost: Figure, quantity: number, { currency, rates: { marginPercent } }: QuoteTerms) {
  const costPerThousand = figure('cost per thousand', currency, '1000 × cost ÷ quantity', { cost, quantity });
  return {
    costPerThousand,
    pricePerThousand: marginPercent === undefined ? undefined : figure('price per thousand', currency, 'cost per thousand × (1 + margin ÷ 100)', { 'cost per thousand': costPerThousand, margin: marginPercent }),
  };
}

/** One form as a job of its own, a sheet being what is made; behind the press it is set up only where `isSetUp` says so. */
function termsOfForm(terms: QuoteTerms, counts: readonly number[], isSetUp: boolean): QuoteTerms {
  const { rates, route, waste, inks } = terms;
  const printing = sum(counts);
  const { packingPerThousand: _, freightPerTonne: __, ...own } = rates;
  const ready = <Machine extends object>(machine: Machine | undefined) => machine && { ...machine, makereadyMinutes: 0 };
  return {
    ...terms,
    route: { ...route, ups: 1, stages: route.stages.filter((stage) => !countsCartons(stage)) },
    blankM2: undefined,
    inks: inks?.map((ink) => ({ ...ink, inkedM2: ink.inkedM2 === undefined ? undefined : ink.inkedM2 * printing })),
    packing: undefined,
    ownDie: true,
    rates: isSetUp ? own : { ...own, ...defined({ coater: ready(own.coater), foilPress: ready(own.foilPress), embosser: ready(own.embosser), cutter: ready(own.cutter), stripper: ready(own.stripper) }) },
    waste: isSetUp ? waste : { ...waste, stages: withoutSetUp(waste.stages) },
  };
}

function withoutSetUp(stages: WasteTable['stages']): WasteTable['stages'] {
  return Object.fromEntries(Object.entries(stages).map(([stage, need]) => [stage, { ...need, setUp: 0 }]));
}

function defined<Fields extends object>(fields: Fields): Partial<Fields> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<Fields>;
}

function dieOf(counts: RunJob['counts'], pressings: RunJob['pressings'], { route, rates, currency, ownDie }: QuoteTerms): Shared[] {
  if (ownDie || !stagesOf(route).includes('die-cutting')) return [];
  const made = counts[0]!.map((_, version) => counts.reduce((all, form, f) => all + form[version]! * pressings[f]!, 0));
  return [{ paid: figure('die', currency, 'die price', { 'die price': given(rates.diePrice, 'die price') }), parts: made }];
}

/** Gluing and packing, the run through each machine at one go. */
function cartonStages(wanted: readonly number[], terms: QuoteTerms): Shared[] {
  const chains = wanted.map((_, version) => cartonChain(wanted, version, terms));
  return chains[0]!.map(({ stage }, i) => {
    const { key, noun } = MACHINE_OF[stage];
    const machine = terms.rates[key];
    const parts = chains.map((chain) => chain[i]!.into);
    return { paid: machineCost(noun, machineHours(noun, sum(parts), machine), machine, terms.currency), parts };
  });
}

/** What a version needs at the stages that count cartons, their set-up with the largest version only. */
function cartonChain(wanted: readonly number[], version: number, { route, waste }: QuoteTerms): readonly StageNeed[] {
  const largest = wanted.indexOf(Math.max(...wanted));
  const stages = route.stages.filter(countsCartons);
  const table = version === largest ? waste : { ...waste, stages: withoutSetUp(waste.stages) };
  return sheetsNeeded(wanted[version]!, { ups: 1, colours: 0, varnishUnits: 0, stages }, table).chain;
}

/** Packing material and freight: of what is packed version by version, else of the run. */
function delivered(quantities: readonly number[], forms: readonly QuantityQuote[], terms: QuoteTerms): Shared[] {
  const { packing, currency } = terms;
  if (packing) {
    const each = quantities.map((quantity) => packedDelivery(quantity, packed(quantity, packing), terms));
    return each[0]!.map(({ name }, i) => {
      const own = each.map((costs) => costs[i]!);
      const inputs = Object.fromEntries(own.map((one, version) => [`version ${version + 1}`, one]));
      return { paid: figure(name, currency, Object.keys(inputs).join(' + '), inputs), parts: own.map(({ value }) => value ?? 1) };
    });
  }
  const weight = figure('board weight', 'kg', forms.map((_, form) => `form ${form + 1}`).join(' + '), Object.fromEntries(forms.map(({ boardWeight }, form) => [`form ${form + 1}`, boardWeight])));
  return delivery(sum(quantities), weight, terms).map((paid) => ({ paid, parts: quantities }));
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}
