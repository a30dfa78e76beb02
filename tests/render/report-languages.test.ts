import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planDay } from '../../src/pipeline/day.ts';
import { readDayJob } from '../../src/pipeline/day-job.ts';
import type { BatchFacts } from '../../src/render/batch-facts.ts';
import { batchReport } from '../../src/render/batch-report.ts';
import type { CuttingFacts } from '../../src/render/cutting-facts.ts';
import type { DayFacts } from '../../src/render/day-facts.ts';
import { dayPictures } from '../../src/render/day-pictures.ts';
import { dayReport } from '../../src/render/day-report.ts';
import type { GangFacts } from '../../src/render/gang-facts.ts';
import { gangReport } from '../../src/render/gang-report.ts';
import type { Language } from '../../src/render/messages/language.ts';
import { LANGUAGES } from '../../src/render/messages/languages.ts';
import { nestReport } from '../../src/render/nest-report.ts';
import type { ReelFacts } from '../../src/render/reel-facts.ts';
import { reelReport } from '../../src/render/reel-report.ts';
import type { Report } from '../../src/render/report.ts';
import { facts } from './facts.ts';

const cuts = { steps: [{ axis: 'y', places: [12, 499.5], piles: 1, turned: false, width: 720, height: 510 }, { axis: 'x', places: [6, 126], piles: 2, turned: true, width: 720, height: 487.5 }], lines: [], strokes: 4, turns: 1 } as const;
const cutting: CuttingFacts = { ...cuts, exact: true, dieCut: { ups: 16, limit: 17 }, machine: 'Massicot 115', liftHeight: 80, caliper: 0.085, time: { sheetsPerLift: 941, minutesPerLift: 3.4, minutesPerThousandSheets: 3.61 }, setUpMinutes: 12 };

const gang: GangFacts = {
  ids: ['mint', 'fennel'], quantities: [50_000, 7_000], stations: 12, formsAllowed: 3, costs: { form: 120, pressing: 0.05 }, pressings: 6_420, cost: 561.5, lowerBound: 550.25, optimal: false, overs: [2, 17],
  oversLimits: [{ least: 2, greatest: Infinity }, { least: 3, greatest: 500 }],
  forms: [{ counts: [8, 4], pressings: 6_226, prints: ['mint', 'mint', 'fennel'], cuts }, { counts: [1, 11], pressings: 194, changes: 7 }],
  apart: [{ designs: ['mint', 'fennel'], because: 'inks', says: ['7', '6'] }, { designs: ['mint', 'fennel'], because: 'coating', says: ['UV', undefined] }],
  separate: { forms: 4, pressings: 7_000, cost: 830.5 },
  notes: [{ code: 'field-left-aside', severity: 'note', where: 'job.json', facts: { field: 'colr' } }],
};

const dayJob = join(import.meta.dirname, '../../samples/jobs/day-fernhollow.json');
function day(change: (job: Record<string, unknown>) => object): DayFacts {
  const load = (file: string) => JSON.parse(readFileSync(resolve(join(dayJob, '..'), file), 'utf8'));
  return planDay(readDayJob(change(load(dayJob)), dayJob, load));
}
const today = day((job) => job);
const late = day((job) => ({ ...job, forms: (job['forms'] as object[]).map((form) => ({ ...form, due: '06:30', food: { contact: 'X', person: 'N. N.' } })) }));
const open = day((job) => ({ ...job, name: undefined, press: undefined, start: undefined }));

const reel: ReelFacts = { name: 'job', reelWidth: 720, cutOff: 1033.25, leastCutOff: 1001.5, designs: [{ id: 'A', ups: 12, widthMm: 120.5, heightMm: 80, rotations: [0, 180] }], gap: 4, bleed: 2, yield: 0.8123, stopped: 'effort', seconds: 4.2, seed: 7 };

const [usual, wide] = [{ sheet: { width: 1020, height: 720 }, grain: 'x' }, { sheet: { width: 1040, height: 740 } }] as unknown as BatchFacts['sheets'][number]['sheet'][];
const saving = { boardM2: 1234.5, boardKg: 432.1, money: 610.2 };
const batch: BatchFacts = {
  name: 'Fernhollow', complete: false, currency: 'EUR', total: saving,
  cartons: [
    { id: 'c1', name: undefined, yearly: 120_000, cells: [{ sheet: usual!, ups: 15, upperBound: 17, boardM2PerThousand: 48.96, key: undefined }, { sheet: wide!, ups: 17, upperBound: 17, boardM2PerThousand: 45.27, key: undefined }], usual: 0, best: 1, saving },
    { id: 'c2', name: undefined, yearly: undefined, cells: [], usual: undefined, best: undefined, saving: undefined },
  ],
  sheets: [{ sheet: usual!, bestFor: 0, saving: { boardM2: 0, boardKg: 0, money: 0 } }, { sheet: wide!, bestFor: 1, saving }],
  refused: [{ id: 'c3', where: 'c3.svg', issues: [{ code: 'gap-open', severity: 'error', facts: { widthMm: 2.5 } }] }],
  doubtful: [{ id: 'c4', issues: [{ code: 'dashed-is-crease', severity: 'warning', facts: { count: 3 } }] }],
  setAside: [{ carton: 'c5', sheet: wide!, message: 'SIGKILL' }],
  changed: [{ carton: 'c1', sheet: usual!, ups: 15, before: 14, engine: '0.9' }],
};
const none = { ...batch, cartons: [], complete: true };
const unknown = { ...batch, cartons: batch.cartons.slice(1) };

const REPORTS: Readonly<Record<string, (language: Language) => Report>> = {
  'a sheet cut by guillotine': (language) => nestReport({ ...facts, cutting }, language),
  'a sheet cut by guillotine, open': (language) => nestReport({ ...facts, cutting: { ...cutting, exact: false, dieCut: { ups: 15, limit: 15 }, caliper: undefined, time: { ...cutting.time, sheetsPerLift: undefined, minutesPerThousandSheets: undefined } } }, language),
  'a gang run': (language) => gangReport(gang, language),
  'a gang run of outlines': (language) => gangReport({ ...gang, stations: undefined, optimal: true, costs: undefined, cost: undefined, separate: { forms: 2, pressings: 6_420, cost: undefined } }, language),
  'a reel': (language) => reelReport(reel, language),
  'a reel, closed': (language) => reelReport({ ...reel, cutOff: reel.leastCutOff, bleed: 0, stopped: 'limit-met' }, language),
  'a batch': (language) => batchReport(batch, { mostCartons: 1, pictured: [0] }, language),
  'a batch of which nothing was laid out': (language) => batchReport(none, { mostCartons: 9, pictured: [] }, language),
  'a batch of which no saving is known': (language) => batchReport(unknown, { mostCartons: 9, pictured: [] }, language),
  'a day': (language) => dayReport(today, { tickets: true }, language),
  'a day that is late': (language) => dayReport(late, { tickets: true }, language),
  'a day without clock times': (language) => dayReport(open, { tickets: true }, language),
};

/** Everything of a report that a person reads. */
function texts({ title, answer, sections, caution }: Report): string[] {
  const inSections = sections.flatMap(({ heading, sentences, figures, table }) => [heading, ...sentences, ...figures.flatMap(({ label, value, formula, note }) => [label, value, formula ?? '', note ?? '']), ...(table ? [...table.head, ...table.rows.flat()] : [])]);
  return [title, answer, ...inSections, caution.heading, caution.text].filter((text) => text !== '');
}

const NUMBER = /(?:\d{1,3}(?: \d{3})+|\d+)(?:[.,]\d+)?/g;
const figuresIn = (report: Report) => texts(report).flatMap((text) => text.match(NUMBER) ?? []).map((number) => number.replace(/ /g, '').replace(',', '.')).toSorted();

/** Words that English sentences of a report can hardly do without, and that no name in these jobs holds. */
const ENGLISH = /\b(the|of|and|is|are|with|each|sheets?|pressings?|makeready|changeover|units?|blanks?|knife|gripper|more|less|fewer|found|proved|whether|given|stays|due|late|strokes?|turned|ups?|inked|wash-ups?|plates|ordered|made|over)\b/i;
/** Names from the jobs. */
const NAMES = /Fernhollow’s printer, invented minutes|Fernhollow, one day’s work|six colours and coater|gold is laid down last/g;

describe.each(Object.keys(LANGUAGES).filter((tag) => tag !== 'en'))('%s', (tag) => {
  const language = LANGUAGES[tag]!;

  test.each(Object.entries(REPORTS))('%s: no English left, the same figures', (_, make) => {
    const [own, english] = [make(language), make(LANGUAGES['en']!)];
    expect(own.language).toBe(tag);
    const left = texts(own).filter((text) => ENGLISH.test(text.replace(NAMES, '')));
    expect(left).toEqual([]);
    expect(figuresIn(own)).toEqual(figuresIn(english));
    expect(own.sections.map(({ id }) => id)).toEqual(english.sections.map(({ id }) => id));
  });

  test('the chart of the day speaks it', () => {
    const [chart] = dayPictures(today, language);
    for (const word of Object.values(language.day.legend)) expect(chart!.svg).toContain(word);
    expect(chart!.svg).not.toMatch(/makeready|changeover|forms</);
  });
});

test('English itself trips the check', () => {
  for (const make of Object.values(REPORTS)) expect(texts(make(LANGUAGES['en']!)).filter((text) => ENGLISH.test(text)).length).toBeGreaterThan(5);
});
