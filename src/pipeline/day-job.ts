import { z } from 'zod';
import { inputError, type Issue } from '../base/issue.ts';
import type { PressState } from '../estimate/day/changeover.ts';
import { readLayoutFile } from '../layout/layout-file.ts';
import { judgeForProduction, type SoundLayout } from '../layout/sound.ts';
import { foodSchema, type FoodRecord } from '../press/food.ts';
import { caliperClassOf, changeoverSchema, INVENTED_CHANGEOVER, type ChangeoverTable } from '../press/changeover.ts';
import { checkMachines } from '../press/machines.ts';
import { boardSchema, pressSchema, readRecord, type BoardRecord, type PressRecord } from '../press/records.ts';
import type { Size } from '../press/sheet-areas.ts';
import { checkDistinct } from './gang/versions-job.ts';
import { readSize } from './quote-job.ts';
import { createRecordReader, recordOrFile, type LoadJson } from './record-reader.ts';

const MOST_FORMS = 60;
const MOST_SHEETS = 10_000_000;

const text = z.string().min(1).max(500);
const clock = z.string().transform((value, context) => {
  const [, hours, minutes] = /^(\d{1,2}):([0-5]\d)$/.exec(value) ?? [];
  const time = Number(hours) * 60 + Number(minutes);
  if (time < 48 * 60) return time;
  context.addIssue({ code: 'custom', message: 'a time from 00:00 to 47:59 is wanted, such as "10:30"; times after midnight go on counting, "25:15"' });
  return z.NEVER;
});

const settings = {
  sheet: z.string().optional(),
  board: recordOrFile.optional(),
  caliper: z.number().positive().max(50).optional(),
  inks: z.array(text).max(20).default([]),
  inkFamily: text.optional(),
  coating: text.optional(),
  die: text.optional(),
};

const formSchema = z.strictObject({
  ...settings,
  id: text,
  sheets: z.int(`a whole number of sheets from 1 to ${MOST_SHEETS} is wanted`).min(1).max(MOST_SHEETS),
  layout: z.string().optional(),
  due: clock.optional(),
  makereadyMinutes: z.number().min(0).max(1440).optional(),
  speed: z.number().positive().max(1e6).optional(),
  food: foodSchema.optional(),
  note: text.optional(),
});

const schema = z.strictObject({
  name: text.optional(),
  date: text.optional(),
  start: clock.default(6 * 60),
  press: recordOrFile.optional(),
  changeover: recordOrFile.optional(),
  /** What the press was left set for. */
  before: z.strictObject(settings).optional(),
  forms: z.array(formSchema).min(1, 'at least one form is wanted').max(MOST_FORMS, `at most ${MOST_FORMS} forms are put in order`),
});

type Settings = Pick<z.infer<typeof formSchema>, keyof typeof settings>;

export interface DayForm {
  readonly id: string;
  readonly state: PressState;
  readonly sheets: number;
  readonly board: BoardRecord | undefined;
  readonly caliper: number | undefined;
  readonly layout: SoundLayout | undefined;
  /** Minutes after midnight. */
  readonly due: number | undefined;
  readonly makereadyMinutes: number | undefined;
  /** Sheets an hour. */
  readonly speed: number | undefined;
  readonly food: FoodRecord | undefined;
  readonly note: string | undefined;
}

export interface DayJob {
  readonly name: string | undefined;
  readonly date: string | undefined;
  /** Minutes after midnight. */
  readonly start: number;
  readonly press: PressRecord | undefined;
  readonly table: ChangeoverTable;
  readonly before: PressState | undefined;
  readonly forms: readonly DayForm[];
  readonly notes: readonly Issue[];
}

/** A day's forms on one press. Throws an InputError that names file, form and field. */
export function readDayJob(json: unknown, where: string, load: LoadJson, changeoverGiven?: string): DayJob {
  const job = readRecord(schema, json, where);
  checkDistinct(job.forms.map(({ id }) => id), where);
  const records = createRecordReader(where, load);
  const record = records.read;
  const press = record(pressSchema, job.press, 'press');
  const given = record(changeoverSchema, changeoverGiven ?? job.changeover, 'changeover');
  const table = given ?? INVENTED_CHANGEOVER;
  const read = (form: Settings, field: string, layout?: SoundLayout): { state: PressState; board: BoardRecord | undefined; caliper: number | undefined } => {
    const place = `${where}: ${field}`;
    const board = record(boardSchema, form.board, `${field}.board`);
    const caliper = form.caliper ?? board?.caliper;
    const sheet = sheetOf(form, layout, place);
    checkForm(form, sheet, caliper, press, place);
    const caliperClass = caliper === undefined ? undefined : caliperClassOf(table, caliper);
    if (caliper !== undefined && caliperClass === undefined) throw inputError('caliper-over-classes', { where: place, facts: { caliper, most: table.caliperClasses.at(-1)!.upTo! } });
    const { inks, inkFamily, coating, die } = form;
    return { state: { inks, inkFamily, coating, die, widthMm: sheet?.width, heightMm: sheet?.height, caliperClass }, board, caliper };
  };
  const before = job.before && read(job.before, 'before').state;
  const forms = job.forms.map((form): DayForm => {
    const layout = form.layout === undefined ? undefined : soundLayout(load(form.layout), form.layout);
    const { state, board, caliper } = read(form, `form ${form.id}`, layout);
    if (state.widthMm === undefined) throw inputError('sheet-or-layout-missing', { where: `${where}: form ${form.id}` });
    const speed = form.speed ?? (state.caliperClass === undefined ? undefined : table.caliperClasses[state.caliperClass]!.speed) ?? press?.speed;
    const { id, sheets, due, food, note } = form;
    // An ink family that the food record names is the form's, so that its wash-up is counted.
    const inkFamily = state.inkFamily ?? (typeof food === 'object' ? food.inkFamily : undefined);
    return { id, state: { ...state, inkFamily }, sheets, board, caliper, layout, due, speed, makereadyMinutes: form.makereadyMinutes ?? press?.makereadyMinutes, food, note };
  });
  const { name, date, start } = job;
  return { name, date, start, press, table, before, forms, notes: [...records.notes, ...doubts(forms, where)] };
}

function sheetOf({ sheet }: Settings, layout: SoundLayout | undefined, where: string): Size | undefined {
  const given = sheet === undefined ? undefined : readSize(sheet, where);
  if (!layout) return given;
  const { width, height } = layout.sheet;
  if (given && (given.width !== width || given.height !== height)) throw inputError('sheet-contradicts-layout', { where, facts: { sheet: `${given.width} × ${given.height}`, layout: `${width} × ${height}` } });
  return { width, height };
}

function checkForm({ inks, coating }: Settings, sheet: Size | undefined, caliper: number | undefined, press: PressRecord | undefined, where: string): void {
  const twice = inks.find((ink, i) => inks.indexOf(ink) < i);
  if (twice !== undefined) throw inputError('ink-twice', { where, facts: { ink: twice } });
  if (!press) return;
  const name = press.name ?? 'the press';
  if (press.units !== undefined && inks.length > press.units) throw inputError('inks-over-units', { where, facts: { inks: inks.length, units: press.units, press: name } });
  if (press.coater === false && coating !== undefined) throw inputError('press-without-coater', { where, facts: { coating, press: name } });
  if (sheet) checkMachines(sheet, { press, board: { caliper } }, where);
}

function soundLayout(json: unknown, file: string): SoundLayout {
  const { judgement, sound } = judgeForProduction(readLayoutFile(json, file));
  if (!sound) throw inputError('layout-of-form-faulty', { where: file, facts: { faults: judgement.faults.length } });
  return sound;
}

/** Thickness known for some forms only: its changes cannot all be counted. */
function doubts(forms: readonly DayForm[], where: string): Issue[] {
  const unknown = forms.filter(({ caliper }) => caliper === undefined).map(({ id }) => id);
  return unknown.length === 0 || unknown.length === forms.length ? [] : [{ code: 'caliper-open', severity: 'warning', where, facts: { forms: unknown.join(', ') } }];
}
