import { countsCartons } from '../../press/stages.ts';
import type { WasteTable } from '../../press/waste-table.ts';
import { figure, given, type Figure } from '../figure.ts';
import { machineCost, machineHours } from '../machine-time.ts';
import { delivery, MACHINE_OF, packedDelivery, quoteQuantity, type QuantityQuote, type QuoteTerms } from '../quote.ts';
import { packed } from '../packing.ts';
import { sheetsNeeded, stagesOf, type StageNeed } from '../sheets-needed.ts';

/** Versions of one blank, or several outlines, on the forms of a run. */
export interface RunJob {
  /** Ordered. */
  readonly quantities: readonly number[];
  /** Wanted at the end: what is ordered, and the least overs. */
  readonly wanted: readonly number[];
  /** Ups of each version or outline on each form: `[form][version]`. */
  readonly counts: readonly (readonly number[])[];
  /** What outlines differ in, one a design; absent: versions, of one blank and on one die. */
  readonly blanks?: readonly RunBlank[] | undefined;
  /** Good sheets wanted of each form behind its last stage in sheets, at least 1. */
  readonly pressings: readonly number[];
  readonly terms: QuoteTerms;
}

/** One of several outlines. */
export interface RunBlank {
  /** m², openings not taken off. */
  readonly areaM2: number;
  /** Names of its inks; none named: those of the terms. */
  readonly inks: readonly string[];
  /** m² on one blank of each ink of the terms, where they name theirs. */
  readonly inkedM2?: readonly number[] | undefined;
}

export interface RunCost {
  /** One a form: its sheets, hours and costs; what follows in cartons left out, and of versions the die. */
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
  /** Whether a part weighs as much as its blank is large. */
  readonly isByArea?: boolean;
}

/**
 * What versions or outlines on common forms cost; common practice, no source. Of versions: the press is made ready for
 * every form; what comes after it is set up once, with the longest form, and the gluer and packer once, with the largest
 * version, since die and blank are the same. A form is borne by its stations, each printing station alike; the die by copies
 * made; gluing and packing by copies worked; packing material and freight by copies ordered. Of outlines every form has a
 * die of its own and is set up by itself on every machine; its blanks bear it by their area, freight too; gluer and packer
 * are set up for each design, which bears what it takes there. One version, or one outline, on one form comes to what
 * `quoteQuantity` says.
 */
export function runCost({ quantities, wanted, counts, blanks, pressings, terms }: RunJob): RunCost {
  const { currency } = terms;
  const longest = pressings.indexOf(Math.max(...pressings));
  const isByArea = blanks !== undefined;
  const forms = pressings.map((run, form) => quoteQuantity(run, blanks ? termsOfOutlines(terms, counts[form]!, blanks) : termsOfForm(terms, counts[form]!, form === longest)));
  const rest = blanks
    ? [...stagesOfEach(wanted, terms), ...delivered(quantities, forms, terms, blanks)]
    : [...dieOf(counts, pressings, terms), ...cartonStages(wanted, terms), ...delivered(quantities, forms, terms)];
  const shared: Shared[] = [...forms.map(({ cost }, form) => ({ paid: { ...cost, name: `form ${form + 1}` }, parts: counts[form]!, isByArea })), ...rest];
  const cost = figure('cost', currency, shared.map(({ paid }) => paid.name).join(' + '), Object.fromEntries(shared.map(({ paid }) => [paid.name, paid])));
  return {
    forms,
    rest: rest.map(({ paid }) => paid),
    cost,
    ...byThousand(cost, sum(quantities), terms),
    versions: quantities.map((quantity, version) => versionCost(quantity, version, shared, terms, blanks)),
  };
}

/** Copies of each that must come off the forms so that so many are left behind gluing and packing. `isSetUpForEach`: as for outlines. */
export function copiesOffForms(wanted: readonly number[], terms: QuoteTerms, isSetUpForEach = false): number[] {
  return wanted.map((copies, version) => cartonChain(wanted, version, terms, isSetUpForEach)[0]?.into ?? copies);
}

function versionCost(quantity: number, version: number, shared: readonly Shared[], terms: QuoteTerms, blanks: RunJob['blanks']): VersionCost {
  const borne = shared.filter(({ parts }) => parts[version]! > 0);
  const areas = borne.some((one) => one.isByArea && bearersOf(one).length > 1) ? blanks!.map(({ areaM2 }, design): [string, number] => [areaName(design), areaM2]) : [];
  const cost = figure('cost', terms.currency, borne.map((one) => shareOf(one, version)).join(' + ') || '0', Object.fromEntries([...borne.map(({ paid }) => [paid.name, paid] as const), ...areas]));
  return { cost, ...byThousand(cost, quantity, terms) };
}

/** What a version bears of a cost, as a formula. */
function shareOf(shared: Shared, version: number): string {
  const { paid, parts, isByArea = false } = shared;
  const bearers = bearersOf(shared);
  if (bearers.length === 1) return paid.name;
  const part = (bearer: number) => `${parts[bearer]} × ${areaName(bearer)}`;
  return isByArea ? `${paid.name} × ${part(version)} ÷ (${bearers.map(part).join(' + ')})` : `${paid.name} × ${parts[version]} ÷ ${sum(parts)}`;
}

function bearersOf({ parts }: Shared): number[] {
  return parts.flatMap((part, version) => (part > 0 ? [version] : []));
}

function areaName(design: number): string {
  return `blank area ${design + 1}`;
}

function byThousand(cost: Figure, quantity: number, { currency, rates: { marginPercent } }: QuoteTerms) {
  const costPerThousand = figure('cost per thousand', currency, '1000 × cost ÷ quantity', { cost, quantity });
  return {
    costPerThousand,
    pricePerThousand: marginPercent === undefined ? undefined : figure('price per thousand', currency, 'cost per thousand × (1 + margin ÷ 100)', { 'cost per thousand': costPerThousand, margin: marginPercent }),
  };
}

/** One form as a job of its own, a sheet being what is made. */
function sheetTerms({ rates, route, ...terms }: QuoteTerms): QuoteTerms {
  const { packingPerThousand: _, freightPerTonne: __, ...own } = rates;
  return { ...terms, rates: own, route: { ...route, ups: 1, stages: route.stages.filter((stage) => !countsCartons(stage)) }, blankM2: undefined, packing: undefined };
}

/** A form of versions; behind the press it is set up only where `isSetUp` says so. */
function termsOfForm(terms: QuoteTerms, counts: readonly number[], isSetUp: boolean): QuoteTerms {
  const { waste, inks } = terms;
  const { rates, ...form } = sheetTerms(terms);
  const printing = sum(counts);
  const ready = <Machine extends object>(machine: Machine | undefined) => machine && { ...machine, makereadyMinutes: 0 };
  return {
    ...form,
    inks: inks?.map((ink) => ({ ...ink, inkedM2: ink.inkedM2 === undefined ? undefined : ink.inkedM2 * printing })),
    ownDie: true,
    rates: isSetUp ? rates : { ...rates, ...defined({ coater: ready(rates.coater), foilPress: ready(rates.foilPress), embosser: ready(rates.embosser), cutter: ready(rates.cutter), stripper: ready(rates.stripper) }) },
    waste: isSetUp ? waste : { ...waste, stages: withoutSetUp(waste.stages) },
  };
}

/**
 * A form of outlines, set up by itself with a die of its own. It is printed in the inks that its blanks name together; a
 * blank that names none has those of the terms.
 */
function termsOfOutlines(terms: QuoteTerms, counts: readonly number[], blanks: readonly RunBlank[]): QuoteTerms {
  const form = sheetTerms(terms);
  const on = blanks.flatMap((blank, design) => (counts[design]! > 0 ? [{ blank, ups: counts[design]! }] : []));
  const named = new Set(on.flatMap(({ blank }) => blank.inks));
  const isOpen = on.some(({ blank }) => blank.inks.length === 0);
  const carries = ({ inks }: RunBlank, ink: string) => inks.length === 0 || inks.includes(ink);
  const inks = form.inks?.flatMap(({ name, ...ink }, i) => (isOpen || named.has(name) ? [{ ...ink, name, inkedM2: sum(on.map(({ blank, ups }) => (carries(blank, name) ? ups * blank.inkedM2![i]! : 0))) }] : []));
  const colours = inks?.length ?? (isOpen ? Math.max(named.size, form.route.colours) : named.size);
  return { ...form, inks, route: { ...form.route, colours } };
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

/** Gluing and packing of outlines, which the machines are set up for one by one. */
function stagesOfEach(wanted: readonly number[], terms: QuoteTerms): Shared[] {
  const chains = wanted.map((_, design) => cartonChain(wanted, design, terms, true));
  return chains[0]!.map(({ stage }, i) => {
    const { key, noun } = MACHINE_OF[stage];
    const machine = terms.rates[key];
    return sumOfEach(chains.map((chain) => machineCost(noun, machineHours(noun, chain[i]!.into, machine), machine, terms.currency)), 'design', terms);
  });
}

/** Costs of one kind, each borne by whose it is. */
function sumOfEach(own: readonly Figure[], whose: 'design' | 'version', { currency }: QuoteTerms): Shared {
  const inputs = Object.fromEntries(own.map((one, i) => [`${whose} ${i + 1}`, one]));
  return { paid: figure(own[0]!.name, currency, Object.keys(inputs).join(' + '), inputs), parts: own.map(({ value }) => value ?? 1) };
}

/** What a version needs at the stages that count cartons, their set-up with the largest version only, or for each. */
function cartonChain(wanted: readonly number[], version: number, { route, waste }: QuoteTerms, isSetUpForEach = false): readonly StageNeed[] {
  const largest = wanted.indexOf(Math.max(...wanted));
  const stages = route.stages.filter(countsCartons);
  const table = isSetUpForEach || version === largest ? waste : { ...waste, stages: withoutSetUp(waste.stages) };
  return sheetsNeeded(wanted[version]!, { ups: 1, colours: 0, varnishUnits: 0, stages }, table).chain;
}

/** Packing material and freight: of what is packed version by version, else of the run; freight of outlines by what they weigh. */
function delivered(quantities: readonly number[], forms: readonly QuantityQuote[], terms: QuoteTerms, blanks?: readonly RunBlank[]): Shared[] {
  const { packing } = terms;
  if (packing) {
    const each = quantities.map((quantity, i) => packedDelivery(quantity, packed(quantity, blanks ? { ...packing, blankM2: blanks[i]!.areaM2 } : packing), terms));
    return each[0]!.map((_, i) => sumOfEach(each.map((costs) => costs[i]!), blanks ? 'design' : 'version', terms));
  }
  const weight = figure('board weight', 'kg', forms.map((_, form) => `form ${form + 1}`).join(' + '), Object.fromEntries(forms.map(({ boardWeight }, form) => [`form ${form + 1}`, boardWeight])));
  return delivery(sum(quantities), weight, terms).map((paid) => ({ paid, parts: quantities, isByArea: blanks !== undefined && paid.name === 'freight' }));
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}
