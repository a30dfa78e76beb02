import { z } from 'zod';
import { inputError, InputError, type Issue } from '../base/issue.ts';
import { parseSizeMm } from '../base/units.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { readLayoutFile } from '../layout/layout-file.ts';
import { ringArea } from '../geometry/point.ts';
import { inkedM2 } from '../estimate/ink-zones.ts';
import { wasteOfStage, stagesOf, type Route } from '../estimate/sheets-needed.ts';
import type { QuoteTerms } from '../estimate/quote.ts';
import { isGrade, GRADES } from '../press/grades.ts';
import { checkMachines } from '../press/machines.ts';
import { DEMO_RATES } from '../press/demo-rates.ts';
import { CARTONS, COLOURS, MOST_QUANTITIES, VARNISH_UNITS } from '../press/figure-ranges.ts';
import { ratesSchema, type Rates } from '../press/rates.ts';
import { foodSchema, type FoodRecord } from '../press/food.ts';
import { inkSchema, USUAL_INK_ZONE_MM, type Coverage, type InkRecord } from '../press/inks.ts';
import { readNoted } from '../press/known-fields.ts';
import { packingSchema } from '../press/packing.ts';
import { boardSchema, caliper, cutterSchema, dieSchema, grammage, pressSchema, tonnePrice, type BoardRecord, type DieRecord } from '../press/records.ts';
import type { Size } from '../press/sheet-areas.ts';
import { designFields } from './quote-design-fields.ts';
import { packingTerms } from './quote-packing.ts';
import { createRecordReader, recordOrFile, type LoadJson } from './record-reader.ts';
import { stageOf, STAGES, type Stage } from '../press/stages.ts';
import { GERMAN_TABLE, wasteTableSchema, type WasteTable } from '../press/waste-table.ts';

export const MOST_CARTONS = CARTONS.most;
const MOST_UPS = 100_000;

/** ISO 4217, in capitals however it was typed. */
export const currencyField = z.string().regex(/^[A-Za-z]{3}$/, 'a currency of three letters is wanted, such as EUR').transform((code) => code.toUpperCase());

const text = z.string().max(500);
const quantity = z.int().min(CARTONS.least, `a whole quantity from 1 to ${MOST_CARTONS} is wanted`).max(MOST_CARTONS, `a whole quantity from 1 to ${MOST_CARTONS} is wanted`);
const jobSchema = z.object({
  id: text.optional(),
  name: text.optional(),
  customer: text.optional(),
  date: text.optional(),
  validUntil: text.optional(),
  ups: z.int().min(1).max(MOST_UPS).optional(),
  sheet: z.string().optional(),
  layout: z.string().optional(),
  grammage: grammage.optional(),
  grade: text.optional(),
  caliper: caliper.optional(),
  /** mm² of one blank, as `read` gives it; a layout brings its own. */
  blankArea: z.number().positive().max(1e8).optional(),
  quantities: z.array(quantity).min(1).max(MOST_QUANTITIES),
  colours: z.int().min(COLOURS.least).max(COLOURS.most).optional(),
  /** Instead of a number of colours: each ink with what it covers of a blank. */
  inks: z.array(inkSchema).min(1).max(20).optional(),
  food: foodSchema.optional(),
  /** What the pages call it. */
  product: z.enum(['carton', 'label', 'blank']).default('carton'),
  varnishUnits: z.int().min(VARNISH_UNITS.least).max(VARNISH_UNITS.most).default(0),
  stages: z.array(z.string()).max(20).default([]),
  boardPricePerTonne: tonnePrice.optional(),
  currency: currencyField.default('EUR'),
  rates: recordOrFile.optional(),
  waste: recordOrFile.optional(),
  packing: recordOrFile.optional(),
  /** Of the line to order by: metric, or inches, points and pounds as well. */
  units: z.enum(['metric', 'inch']).default('metric'),
  board: recordOrFile.optional(),
  press: recordOrFile.optional(),
  cutter: recordOrFile.optional(),
  ownDie: z.boolean().default(false),
  /** A die that stands: its record, or the file of it. */
  existingDie: recordOrFile.optional(),
  /** Other layouts or sheets to be held against this one. */
  alternatives: z.array(z.strictObject({ name: text.optional(), ups: z.int().min(1).max(MOST_UPS).optional(), sheet: z.string().optional(), layout: z.string().optional(), ownDie: z.boolean().default(false) })).max(20).default([]),
  /** Deliveries may be more or less by so many percent. */
  oversPercent: z.number().min(0).max(50).default(10),
  sheetGrain: designFields.sheetGrain,
  /** BCP 47: decimal sign and the decimals of the currency. */
  locale: z.string().optional(),
});

export interface QuoteJob {
  readonly name: string | undefined;
  readonly customer: string | undefined;
  readonly date: string | undefined;
  readonly validUntil: string | undefined;
  readonly quantities: readonly number[];
  readonly sheet: Size;
  readonly terms: QuoteTerms;
  readonly board: BoardRecord;
  readonly grade: string | undefined;
  readonly product: 'carton' | 'label' | 'blank';
  readonly units: 'metric' | 'inch';
  readonly inks: readonly InkRecord[] | undefined;
  readonly inkZoneMm: number;
  readonly food: FoodRecord | undefined;
  readonly existingDie: StandingDie | undefined;
  readonly alternatives: readonly QuoteAlternative[];
  readonly oversPercent: number;
  readonly locale: string;
  readonly layout: LayoutFile | undefined;
  /** What was left aside or taken for granted. */
  readonly notes: readonly Issue[];
}

export interface StandingDie {
  readonly number: string | undefined;
  readonly rack: string | undefined;
  readonly ups: number;
  readonly sheet: Size;
  /** Strokes that it is still good for; undefined where nobody said. */
  readonly strokesLeft: number | undefined;
}

/** Another layout for the same carton. */
export interface QuoteAlternative {
  readonly name: string | undefined;
  readonly ups: number;
  readonly sheet: Size;
  readonly ownDie: boolean;
}

/**
 * Takes in a quote's job. `ratesGiven` overrides the job's rates (`demo` or a file's path). Throws an InputError that
 * names file and field for everything that is wrong.
 */
export function readQuoteJob(json: unknown, where: string, load: LoadJson, ratesGiven?: string, laidOut?: LayoutFile): QuoteJob {
  const { record: job, notes: fieldNotes } = readNoted(jobSchema.extend(designFields), json, where);
  const records = createRecordReader(where, load);
  const record = records.read;
  const layout = laidOut ?? (job.layout === undefined ? undefined : readLayoutFile(load(job.layout), job.layout));
  const { ups, sheet } = upsAndSheet(job, layout, where);
  const board = record(boardSchema, job.board, 'board') ?? {};
  const press = record(pressSchema, job.press, 'press');
  const cutter = record(cutterSchema, job.cutter, 'cutter');
  const grade = job.grade ?? board.grade;
  if (grade !== undefined && !isGrade(grade)) throw inputError('grade-unknown', { where, facts: { grade, known: Object.keys(GRADES).join(', ') } });
  const caliperMm = job.caliper ?? board.caliper;
  checkMachines(sheet, { press, cutter, board: { ...board, caliper: caliperMm } }, `${where}: sheet`);
  const colours = coloursOf(job, where);
  if (press?.units !== undefined && colours > press.units) throw inputError('colours-over-units', { where, facts: { colours, units: press.units, press: press.name ?? 'the press' } });

  const die = record(dieSchema, job.existingDie, 'existingDie');
  const layoutOfDie = die?.layout === undefined ? undefined : readLayoutFile(load(die.layout), die.layout);
  const rates = ratesGiven === 'demo' || job.rates === 'demo' ? DEMO_RATES : (record(ratesSchema, ratesGiven ?? job.rates, 'rates') ?? {});
  const waste = record(wasteTableSchema, job.waste, 'waste') ?? GERMAN_TABLE;
  const route: Route = { ups, colours, varnishUnits: job.varnishUnits, stages: readStages(job.stages, where) };
  checkWaste(route, waste, where);
  const grams = job.grammage ?? board.grammage;
  if (grams === undefined) throw inputError('grammage-missing', { where });
  const blankM2 = layout ? blankArea(layout) : job.blankArea === undefined ? undefined : job.blankArea / 1e6;
  const packing = record(packingSchema, job.packing, 'packing');
  return {
    name: job.name ?? job.id,
    customer: job.customer,
    date: job.date,
    validUntil: job.validUntil,
    quantities: [...new Set(job.quantities)],
    sheet,
    terms: {
      route,
      board: { widthMm: sheet.width, heightMm: sheet.height, grammage: grams },
      caliperMm,
      blankM2,
      inks: job.inks?.map(({ coverage, ...ink }) => ({ ...ink, inkedM2: inkedOnBlank(coverage, layout, blankM2) })),
      packing: packing && packingTerms(packing, { isGlued: route.stages.includes('gluing'), caliperMm, blankM2, grammage: grams }, typeof job.packing === 'string' ? job.packing : `${where}: packing`),
      pricePerTonne: job.boardPricePerTonne ?? board.pricePerTonne,
      currency: job.currency,
      waste,
      rates: withMachines(rates, press, cutter),
      ownDie: job.ownDie,
    },
    board: { ...board, sheetGrain: board.sheetGrain ?? job.sheetGrain },
    product: job.product,
    units: job.units,
    inks: job.inks,
    inkZoneMm: press?.inkZoneWidth ?? USUAL_INK_ZONE_MM,
    food: job.food,
    grade,
    existingDie: die && standingDie(die, layoutOfDie, sheet, where),
    alternatives: job.alternatives.map((one, i) => alternativeOf(one, sheet, `${where}: alternatives.${i}`, load)),
    oversPercent: job.oversPercent,
    locale: readLocale(job.locale, where),
    layout,
    notes: [...fieldNotes, ...records.notes, ...twiceNotes(job.quantities, where), ...dieNotes(die, sheet, where), ...(route.stages.length === 0 ? [{ code: 'no-stages-given', severity: 'note', where } as const] : [])],
  };
}

function standingDie(die: DieRecord, layout: LayoutFile | undefined, sheet: Size, where: string): StandingDie {
  const ups = layout?.placements.length ?? die.ups;
  if (ups === undefined || ups === 0) throw inputError('die-ups-missing', { where: `${where}: existingDie` });
  return { number: die.number, rack: die.rack, ups, sheet: layout?.sheet ?? die.sheet ?? sheet, strokesLeft: die.mostStrokes === undefined ? undefined : Math.max(0, die.mostStrokes - (die.strokes ?? 0)) };
}

/** A sheet that the die is not known to run on asks for a look at the machine. */
function dieNotes(die: DieRecord | undefined, sheet: Size, where: string): Issue[] {
  const { minSheet, maxSheet } = die ?? {};
  const on = die?.sheet ?? sheet;
  const isOutside = (minSheet && (on.width < minSheet.width || on.height < minSheet.height)) || (maxSheet && (on.width > maxSheet.width || on.height > maxSheet.height));
  return isOutside ? [{ code: 'sheet-outside-die', severity: 'warning', where: `${where}: existingDie`, facts: { width: on.width, height: on.height } }] : [];
}

function alternativeOf({ name, ups, sheet, layout: file, ownDie }: { name?: string | undefined; ups?: number | undefined; sheet?: string | undefined; layout?: string | undefined; ownDie: boolean }, usual: Size, where: string, load: LoadJson): QuoteAlternative {
  if (file !== undefined) {
    const layout = readLayoutFile(load(file), file);
    return { name, ups: layout.placements.length, sheet: layout.sheet, ownDie };
  }
  if (ups === undefined) throw inputError('ups-or-layout-missing', { where });
  return { name, ups, sheet: sheet === undefined ? usual : readSize(sheet, `${where}.sheet`), ownDie };
}

const USUAL_LOCALE = 'en';

function readLocale(locale: string | undefined, where: string): string {
  if (locale === undefined) return USUAL_LOCALE;
  try {
    return Intl.getCanonicalLocales(locale)[0] ?? USUAL_LOCALE;
  } catch {
    throw inputError('field-not-valid', { where: `${where}: locale`, facts: { reason: 'a language tag is wanted, such as en, de or fr-CH' } });
  }
}

function upsAndSheet(job: { ups?: number | undefined; sheet?: string | undefined }, layout: LayoutFile | undefined, where: string): { ups: number; sheet: Size } {
  const ups = layout ? layout.placements.length : job.ups;
  const sheet = layout ? layout.sheet : job.sheet === undefined ? undefined : readSize(job.sheet, `${where}: sheet`);
  if (ups === undefined || sheet === undefined) throw inputError('ups-or-layout-missing', { where });
  if (ups === 0) throw inputError('layout-holds-nothing', { where });
  if (layout && job.ups !== undefined && job.ups !== ups) throw inputError('ups-contradict-layout', { where, facts: { ups: job.ups, layout: ups } });
  return { ups, sheet: { width: sheet.width, height: sheet.height } };
}

/** m² of a blank, on average where the layout holds several designs; openings not taken off. */
function blankArea({ designs, placements }: LayoutFile): number {
  const areas = new Map(designs.map(({ id, outline }) => [id, ringArea(outline.map(([x, y]) => ({ x, y })))]));
  return placements.reduce((sum, { design }) => sum + (areas.get(design) ?? 0), 0) / placements.length / 1e6;
}

/** As many colours as inks. */
function coloursOf({ colours, inks }: { colours?: number | undefined; inks?: readonly InkRecord[] | undefined }, where: string): number {
  if (!inks) return colours ?? 0;
  const names = inks.map(({ name }) => name);
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (twice !== undefined) throw inputError('ink-twice', { where: `${where}: inks`, facts: { ink: twice } });
  if (colours !== undefined && colours !== inks.length) throw inputError('inks-contradict-colours', { where, facts: { colours, inks: inks.length } });
  return inks.length;
}

/** m² on a blank, on average where the layout holds several designs. Cells need the blank's box, so a layout. */
function inkedOnBlank(coverage: Coverage, layout: LayoutFile | undefined, blankM2: number | undefined): number | undefined {
  if (!layout) return typeof coverage === 'number' && blankM2 !== undefined ? coverage * blankM2 : undefined;
  const outlines = new Map(layout.designs.map(({ id, outline }) => [id, inkedM2(outline, coverage)]));
  return layout.placements.reduce((sum, { design }) => sum + (outlines.get(design) ?? 0), 0) / layout.placements.length;
}

const LONGEST_SIDE = 16_000;

export function readSize(value: string, where: string): Size {
  const size = parseSizeMm(value);
  const fits = (mm: number) => mm >= 1 && mm <= LONGEST_SIDE;
  if (!size || !fits(size.width) || !fits(size.height)) throw inputError('field-not-valid', { where, facts: { reason: `a size with sides from 1 to ${LONGEST_SIDE} mm is wanted, such as "1020x720" or "28x40in"` } });
  return size;
}

export function readStages(names: readonly string[], where: string): Stage[] {
  return names.map((name) => {
    const stage = stageOf(name);
    if (!stage) throw inputError('stage-unknown', { where: `${where}: stages`, facts: { stage: name, known: STAGES.join(', ') } });
    return stage;
  });
}

export function checkWaste(route: Route, waste: WasteTable, where: string): void {
  const open = stagesOf(route).filter((stage) => !wasteOfStage(stage, route, waste));
  if (open.length > 0) throw new InputError(open.map((stage) => ({ code: 'waste-table-silent', severity: 'error', where, facts: { stage, table: waste.name } })));
}

/** A press or die-cutter record fills what the rates leave open; it stands above invented rates. */
export function withMachines(rates: Rates, press: Rates['press'], cutter: Rates['cutter']): Rates {
  const joined = (machine: Rates['press'], record: Rates['press']) => (machine || record) && (rates === DEMO_RATES ? { ...machine, ...record } : { ...record, ...machine });
  const [withPress, withCutter] = [joined(rates.press, press), joined(rates.cutter, cutter)];
  return { ...rates, ...(withPress && { press: withPress }), ...(withCutter && { cutter: withCutter }) };
}

/** A quantity given twice is quoted once, and that is said. */
function twiceNotes(quantities: readonly number[], where: string): Issue[] {
  const twice = new Set(quantities.filter((quantity, i) => quantities.indexOf(quantity) < i));
  return [...twice].map((given): Issue => ({ code: 'quantity-twice', severity: 'note', where, facts: { quantity: given } }));
}
