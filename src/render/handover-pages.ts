import { channelWidth, creaseHeight, cuttingForce } from '../estimate/die-figures.ts';
import type { CoatingForm } from './coating.ts';
import type { Format } from './format.ts';
import type { HandoverFacts } from './handover-facts.ts';
import { englishQuote } from './messages/english-quote.ts';
import type { HandoverLabel, HandoverWords } from './messages/english-handover.ts';
import type { PictureWords } from './messages/words.ts';
import { shownFigure } from './quote-report.ts';
import { ranges } from './ranges.ts';
import type { Figure, Report, ReportSection } from './report.ts';

export interface HandoverLanguage {
  /** BCP 47 tag. */
  readonly locale: string;
  readonly words: HandoverWords;
  readonly picture: PictureWords;
  readonly format: Format;
}

/** The order that goes to the die maker with the two DXF files. */
export function dieOrder(facts: HandoverFacts, { locale, words, format }: HandoverLanguage): Report {
  const { headings, labels } = words;
  const { layout, ruleMm, stationMm, steps, creaseMm, nicks } = facts;
  const metres = (mm: number) => `${format.number(mm / 1000, 2, true)} m`;
  const caliper = facts.board?.caliper;
  const figures = (...all: ReturnType<typeof creaseHeight>[]) => all.map((one) => named(shownFigure(one, '', englishQuote('carton'), format), words));
  return page(locale, words.titles.die, words.dieAnswer(facts, format), { heading: headings.caution, text: words.caution }, [
    section('who', headings.who, [], signOff(facts, words)),
    section('sheet', headings.sheet, [], [
      ...sheetFigures(facts, words, format),
      row(labels.centre, words.centreLine(facts, format)),
      row(labels.gap, format.length(layout.rules.gap)),
      ...(nicks ? [row(labels.nicks, words.nicks(nicks))] : []),
    ]),
    section('rules', headings.rules, [words.merged], ruleMm.map(([role, mm]) => row(words.role(role), metres(mm)))),
    section('steps', headings.steps, [words.rows(steps.rows, format)], [
      row(labels.stepX, words.usualStep(steps.x, format)),
      row(labels.otherX, words.deviations(steps.x, format)),
      row(labels.stepY, words.usualStep(steps.y, format)),
      row(labels.otherY, words.deviations(steps.y, format)),
    ]),
    section('creases', headings.creases, [], [
      ...(creaseMm ? [row(labels.creaseAlong, metres(creaseMm.along)), row(labels.creaseAcross, metres(creaseMm.across))] : []),
      ...(caliper === undefined ? [row(labels.board, words.notGiven)] : figures(creaseHeight(caliper), channelWidth(caliper, 'along'), channelWidth(caliper, 'across'))),
    ]),
    section('force', headings.force, [words.confirm], figures(cuttingForce(facts.cuttingMm))),
    section('stations', headings.stations, [], stationRows(stationMm, facts, words, metres)),
    section('views', headings.views, [words.views], []),
  ]);
}

/** In a language with a word of its own for the figure its formula stands in numbers only. */
function named(shown: Figure, { figures }: HandoverWords): Figure {
  const name = figures[shown.label];
  return name === undefined ? shown : { label: name, value: shown.value, ...(shown.formula !== undefined && { formula: shown.formula }) };
}

/** Stations with equal lengths stand in one row: `1–4, 6`. */
function stationRows(stationMm: readonly (readonly number[])[], { ruleMm }: HandoverFacts, words: HandoverWords, metres: (mm: number) => string): Figure[] {
  const texts = stationMm.map((lengths) => lengths.map((mm, i) => `${words.role(ruleMm[i]![0])} ${metres(mm)}`).join(', '));
  return alike(texts).map(([numbers, text]) => row(`${words.labels.station} ${numbers}`, text));
}

/** Numbers of the stations that have each text. */
function alike(texts: readonly string[]): [numbers: string, text: string][] {
  return [...new Set(texts)].map((text) => [ranges(texts.flatMap((other, station) => (other === text ? [station + 1] : []))), text]);
}

/** One page for the press and the die-cutter. */
export function crewTicket(facts: HandoverFacts, { locale, words, format }: HandoverLanguage, coating?: CoatingForm): Report {
  const { headings, labels } = words;
  const amount = (value: number | undefined) => (value === undefined ? words.notGiven : format.number(value, 0));
  return page(locale, words.titles.crew, words.crewAnswer(facts, format), { heading: headings.caution, text: words.crewCaution }, [
    section('who', headings.who, [], signOff(facts, words)),
    section('job', headings.job, [], [
      ...facts.designs.map((design) => row(design.id, words.designLine(design, format))),
      ...(facts.versions ? alike(facts.versions).map(([numbers, version]) => row(version, `${labels.station} ${numbers}`)) : []),
      row(labels.quantity, amount(facts.quantity)),
      row(labels.sheets, amount(facts.sheets)),
      ...(facts.back ? [row(labels.back, words.back[facts.back])] : []),
      ...(facts.food === undefined ? [] : [row(labels.food, facts.food)]),
    ]),
    section('sheet', headings.sheet, [], [...sheetFigures(facts, words, format), row(labels.gripper, format.length(facts.layout.usable.y)), row(labels.bleed, format.length(facts.layout.rules.bleed))]),
    section('coating', words.coating.heading, [], coating ? coatingFigures(coating, words, format) : []),
    section('checks', headings.checks, [words.byHand], []),
  ]);
}

/** Stations alike stand in one row. */
function coatingFigures({ coatedMm2, stations }: CoatingForm, { coating, labels }: HandoverWords, format: Format): Figure[] {
  const texts = stations.map(({ freeAreas, freeMm2 }) => coating.stationFree(freeAreas, format.area(freeMm2)));
  return [row(coating.coated, format.area(coatedMm2)), ...alike(texts).map(([numbers, text]) => row(`${coating.free}, ${labels.station} ${numbers}`, text))];
}

/** One page for the customer: what is laid out and how; no rates. */
export function customerPage(facts: HandoverFacts, { locale, words, format }: HandoverLanguage): Report {
  const { headings, labels } = words;
  return page(locale, words.titles.customer, words.customerAnswer(facts, format), { heading: headings.caution, text: words.customerCaution }, [
    section('job', headings.job, [], [
      ...facts.designs.map((design) => row(design.id, words.designLine(design, format))),
      ...(facts.quantity === undefined ? [] : [row(labels.quantity, format.number(facts.quantity, 0))]),
      ...boardFigures(facts, words, format),
      row(labels.bleed, format.length(facts.layout.rules.bleed)),
      ...(facts.food === undefined ? [] : [row(labels.food, facts.food)]),
    ]),
    section('who', headings.who, [], signOff(facts, words)),
  ]);
}

function signOff(facts: HandoverFacts, { labels, notGiven }: HandoverWords): Figure[] {
  const of = (label: HandoverLabel, value: string | undefined) => row(labels[label], value ?? notGiven);
  return [of('layout', facts.layoutNumber), of('revision', facts.revision), of('approvedBy', facts.approvedBy), of('date', facts.date), of('fingerprint', facts.fingerprint.slice(0, 16))];
}

function sheetFigures(facts: HandoverFacts, words: HandoverWords, format: Format): Figure[] {
  const { sheet, lay } = facts.layout;
  return [row(words.labels.sheet, format.size(sheet.width, sheet.height)), row(words.labels.lay, words.lays[lay]), ...boardFigures(facts, words, format)];
}

function boardFigures({ board, grain, layout: { sheet } }: HandoverFacts, { labels }: HandoverWords, format: Format): Figure[] {
  const told = [board?.name, board?.grade, ...(board?.grammage === undefined ? [] : [`${format.number(board.grammage)} g/m²`]), ...(board?.caliper === undefined ? [] : [format.length(board.caliper)])].filter((text) => text !== undefined);
  // ISO 217: (M) stands after the side that runs in the machine's direction, along the fibres.
  const sides = [sheet.width, sheet.height].map((mm, i) => format.bareLength(mm) + ((i === 0) === (grain === 'x') ? ' (M)' : ''));
  return [...(told.length > 0 ? [row(labels.board, told.join(', '))] : []), ...(grain ? [row(labels.grain, sides.join(' × '))] : [])];
}

function row(label: string, value: string): Figure {
  return { label, value };
}

function section(id: string, heading: string, sentences: readonly string[], figures: readonly Figure[]): ReportSection {
  return { id, heading, sentences, figures };
}

function page(language: string, title: string, answer: string, caution: Report['caution'], sections: readonly ReportSection[]): Report {
  return { language, title, answer, caution, sections: sections.filter(({ sentences, figures }) => sentences.length + figures.length > 0) };
}
