import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { InputError, type Issue } from '../base/issue.ts';
import { pathLength } from '../dieline/curve-part.ts';
import { placedRings } from '../estimate/placed-rings.ts';
import { boxOf, type Box } from '../geometry/point.ts';
import { backLayout } from '../layout/back-layout.ts';
import { barCodeIssues, barCodesOf } from '../layout/bar-codes.ts';
import type { WorkStyle } from '../layout/back-up.ts';
import { writeLayoutFile, type LayoutFile } from '../layout/layout-file.ts';
import type { SoundLayout } from '../layout/sound.ts';
import { LEAST_STRIP_MM } from '../press/stripping.ts';
import { coatingForm, type CoatingForm } from '../render/coating.ts';
import { dieDxf } from '../render/die-dxf.ts';
import { dieRules, type DieRule } from '../render/die-rules.ts';
import { createFormat } from '../render/format.ts';
import { handoverFacts, type HandoverDetails, type HandoverFacts } from '../render/handover-facts.ts';
import { crewTicket, customerPage, dieOrder, type HandoverLanguage } from '../render/handover-pages.ts';
import type { ImposedArtwork } from '../render/imposed-artwork.ts';
import { imposedSvg } from '../render/imposed-svg.ts';
import { englishLanguage } from '../render/messages/english-language.ts';
import type { Language } from '../render/messages/language.ts';
import { markedSheet } from '../render/marked-sheet.ts';
import { placementsCsv } from '../render/placements-csv.ts';
import { printMarks } from '../render/print-marks.ts';
import { ranges } from '../render/ranges.ts';
import { reportHtml } from '../render/report-html.ts';
import { sheetScene } from '../render/sheet-scene.ts';
import type { SheetView } from '../render/sheet-view.ts';
import { drawn } from '../render/shapes.ts';
import { stepsPdf } from '../render/steps-pdf.ts';
import { strippingFigures, strippingMarks, strippingReport } from '../render/stripping-report.ts';
import { sceneToSvg } from '../render/svg.ts';
import { viewOfLayout } from '../render/view-of-layout.ts';
import { layoutXjdf } from '../render/xjdf.ts';
import { imposeArtwork, type GivenArtwork } from './artwork.ts';
import { strippingAsked } from './stripping-asked.ts';
import { strippingVerdict } from './stripping-choice.ts';

/** One file of the folder. */
export interface HandoverFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

export interface Handover {
  readonly files: readonly HandoverFile[];
  /** What is doubtful about artwork and back. */
  readonly issues: readonly Issue[];
}

/** What a handover may be given besides the layout. */
export interface HandoverInputs {
  readonly language?: HandoverLanguage;
  readonly front?: readonly GivenArtwork[];
  /** As it is looked at from the back; only with a way to print the back. */
  readonly back?: readonly GivenArtwork[];
  /** Files made elsewhere that go into the same folder: the manifest lists them too. */
  readonly besides?: readonly HandoverFile[];
}

/** What the handover of every layout holds, whatever else may come with it. */
export const HANDOVER_FILES = [
  'layout.json', 'sheet-steps.pdf', 'sheet.svg', 'die-printed-side.dxf', 'die-rule-side.dxf', 'die-order.html', 'placements.csv', 'job.xjdf', 'stripping.html',
  'crew-ticket.html', 'customer.html', 'manifest.json',
] as const;

/** Words, pictures and figures of a language. */
export function handoverLanguage({ locale, handover: words, picture }: Language): HandoverLanguage {
  return { locale, words, picture, format: createFormat(locale) };
}

const ENGLISH = handoverLanguage(englishLanguage);

/**
 * The files for plate room, die maker, press crew and customer, with a manifest of their fingerprints. Takes only what
 * the judge found sound. Throws an InputError `handover-unknown-rules` while it is not known what lines of a design are.
 */
export async function handover(layout: SoundLayout, details: HandoverDetails, { language = ENGLISH, front = [], back = [], besides = [] }: HandoverInputs = {}): Promise<Handover> {
  const { words, picture: pictureWords, format } = language;
  const bare = viewOfLayout(layout, { grain: details.grain, figures: [] });
  const rules = dieRules(bare);
  refuseUnknown(bare, rules);
  const facts = handoverFacts(layout, bare, rules, details);
  const notice = words.notice(facts, format);
  const view = { ...bare, figures: titleCells(facts, language) };
  const picture = { section: 'answer', svg: sceneToSvg(sheetScene(view, { words: pictureWords, format })), onPaper: true };
  const imposed = front.length > 0 ? imposeArtwork(layout, front, details.versions) : undefined;
  const codes = barCodeIssues(layout, barCodesOf(layout, details.barCodes ?? [], imposed?.barsSeen ?? (() => undefined)), ranges);
  const coating = coatingForm(layout, bare);
  const second = await backFiles(facts, back, language);
  const files: HandoverFile[] = [
    { name: 'layout.json', content: writeLayoutFile(layout) },
    { name: 'sheet-steps.pdf', content: await stepsPdf(bare, rules, notice, language) },
    ...(imposed ? [{ name: 'sheet-artwork.pdf', content: await stepsPdf(bare, rules, notice, language, imposed) }, ...artworkSvg('sheet-artwork.svg', bare, imposed)] : []),
    ...second.files,
    { name: 'sheet.svg', content: picture.svg },
    { name: 'die-printed-side.dxf', content: dieDxf(bare, rules, { side: 'printed', notice, words, nicks: details.nicks }) },
    { name: 'die-rule-side.dxf', content: dieDxf(bare, rules, { side: 'rule', notice, words, nicks: details.nicks }) },
    { name: 'die-order.html', content: reportHtml(dieOrder(facts, language), [picture]) },
    { name: 'placements.csv', content: placementsCsv(layout, bare, details.back, details.versions) },
    { name: 'job.xjdf', content: layoutXjdf(facts, bare) },
    ...(coating ? await coatingFiles(coating, layout, view, rules, notice, language) : []),
    strippingPage(facts, view, language),
    { name: 'crew-ticket.html', content: reportHtml(crewTicket(facts, language, coating), [picture]) },
    { name: 'customer.html', content: reportHtml(customerPage(facts, language), [picture]) },
    ...besides,
  ];
  return { files: [...files, { name: 'manifest.json', content: manifest(facts, files) }], issues: [...(imposed?.issues ?? []), ...codes, ...marksWithoutRoom(bare, notice), ...second.issues, ...allCoated(coating)] };
}

/** What comes off the sheet; and where a way of stripping is known, whether the layout suits it. */
function strippingPage(facts: HandoverFacts, view: SheetView, language: HandoverLanguage): HandoverFile {
  const { picture: pictureWords, format } = language;
  const asked = strippingAsked(facts.layout);
  const mode = facts.stripping ?? asked?.wish.mode;
  const leastStrip = facts.leastStrip ?? asked?.wish.leastStrip ?? LEAST_STRIP_MM;
  const wish = mode && { mode, leastStrip };
  const { stripping, broken } = strippingVerdict(facts.layout, { mode: mode ?? 'with-tools', leastStrip });
  // What the search said of other layouts counts for the wish that it had.
  const price = asked && mode === asked.wish.mode && leastStrip === asked.wish.leastStrip ? { ...asked, broken } : undefined;
  const [ups, layoutNumber] = view.figures;
  const figures = [ups!, ...strippingFigures(stripping, language), layoutNumber!];
  const scene = markedSheet({ ...view, figures }, { words: pictureWords, format }, strippingMarks(stripping, view.sheet, language));
  return { name: 'stripping.html', content: reportHtml(strippingReport(stripping, { broken, wish, price }, facts, language), [{ section: 'answer', svg: sceneToSvg(scene), onPaper: true }]) };
}

const COATED = { fill: 'hatch' } as const;

/** The coating form as picture, as PDF with the step Varnish, and as closed lines for the cutter of blankets. */
async function coatingFiles(coating: CoatingForm, layout: LayoutFile, view: SheetView, rules: readonly DieRule[], notice: string, language: HandoverLanguage): Promise<HandoverFile[]> {
  const { words, picture: pictureWords, format } = language;
  const areas = coating.coated.map((curves): DieRule => ({ role: 'Varnish', station: 0, curves }));
  const knives = rules.filter(({ role }) => role === 'Cutting');
  const withoutBleed = viewOfLayout({ ...layout, rules: { ...layout.rules, bleed: 0 } }, { figures: [] });
  const bare = { ...view, designs: withoutBleed.designs, figures: [{ label: words.coating.coated, value: format.area(coating.coatedMm2) }, ...view.figures] };
  const title = `${words.coating.title}  ·  ${notice}`;
  return [
    { name: 'coating.svg', content: sceneToSvg(markedSheet(bare, { words: pictureWords, format }, { name: 'Varnish', items: [drawn(coating.coated, COATED)], key: [{ look: COATED, text: words.coating.coated, area: true }] })) },
    { name: 'coating.pdf', content: await stepsPdf(bare, [...areas, ...knives], title, language) },
    { name: 'coating.dxf', content: dieDxf(bare, [...areas, ...knives], { side: 'printed', notice: title, words }) },
  ];
}

function allCoated(coating: CoatingForm | undefined): Issue[] {
  return (coating?.withoutFree ?? []).map((design) => ({ code: 'coating-without-free', severity: 'warning', facts: { design } }));
}

/** Marks that find no room in the waste. */
function marksWithoutRoom(view: SheetView, notice: string, side: 'front' | 'back' = 'front'): Issue[] {
  return printMarks(view, notice).missing.map((kind) => ({ code: `mark-without-room-${kind}`, severity: 'note', facts: { side } }));
}

/** The sheet as its back is printed, with the artwork of that side. */
async function backFiles({ layout, grain, back: style, ...facts }: HandoverFacts, given: readonly GivenArtwork[], language: HandoverLanguage): Promise<Handover> {
  if (style === undefined) return { files: [], issues: [] };
  const { words, picture: pictureWords, format } = language;
  const turned = backLayout(layout, style);
  const bare = viewOfLayout(turned, { grain, figures: [] });
  const all: HandoverFacts = { ...facts, layout: turned, grain, back: style };
  const notice = `${words.backSide}  ·  ${words.notice(all, format)}`;
  const [ups, ...cells] = titleCells(all, language);
  const figures = [ups!, { label: words.backSide, value: words.back[style] }, ...cells];
  const imposed = given.length > 0 ? imposeArtwork(turned, given, facts.versions) : undefined;
  const gripperEdge = words.backGripper(style);
  return {
    files: [
      { name: 'sheet-back.svg', content: sceneToSvg(sheetScene({ ...bare, figures }, { words: { ...pictureWords, gripperEdge }, format })) },
      { name: 'sheet-back.pdf', content: await stepsPdf(bare, dieRules(bare), notice, { words: { ...words, gripperEdge }, format }, imposed) },
      ...(imposed ? artworkSvg('sheet-back-artwork.svg', bare, imposed) : []),
    ],
    issues: [...(imposed?.issues ?? []), ...marksWithoutRoom(bare, notice, 'back'), ...offStations(layout, turned, style), ...secondGripper(layout, turned)],
  };
}

/** The print alone as SVG, where all of it came so. */
function artworkSvg(name: string, view: SheetView, imposed: ImposedArtwork): HandoverFile[] {
  const content = imposedSvg(view, imposed);
  return content === undefined ? [] : [{ name, content }];
}

/** Where the same plate prints both sides, every back must lie on a front of some station. */
function offStations(front: LayoutFile, back: LayoutFile, style: WorkStyle): Issue[] {
  if (style !== 'work-and-turn' && style !== 'work-and-tumble') return [];
  const boxes = placedRings(front).map(boxOf);
  const far = (a: Box, b: Box) => Math.max(Math.abs(a.minX - b.minX), Math.abs(a.minY - b.minY), Math.abs(a.maxX - b.maxX), Math.abs(a.maxY - b.maxY));
  const off = placedRings(back).flatMap((ring, station) => (boxes.some((box) => far(box, boxOf(ring)) <= BACK_MICRONS) ? [] : [station + 1]));
  return off.length === 0 ? [] : [{ code: 'back-not-on-stations', severity: 'warning', facts: { style, count: off.length, stations: off.slice(0, 12).join(', ') } }];
}

/** The edge that is gripped for the back needs to stay as free of ink as the one of the front. */
function secondGripper({ printable: front }: LayoutFile, { printable: back }: LayoutFile): Issue[] {
  if (back.y >= front.y) return [];
  return [{ code: 'second-gripper-narrow', severity: 'warning', facts: { foundMm: back.y, wantedMm: front.y } }];
}

/** Front and back lie on one another within this, µm: far below what a press registers. */
const BACK_MICRONS = 20;

function titleCells(facts: HandoverFacts, { words: { labels, designLine }, format }: HandoverLanguage): SheetView['figures'] {
  const { layout, layoutNumber, revision, fingerprint } = facts;
  return [
    { label: labels.ups, value: String(layout.placements.length) },
    { label: labels.layout, value: layoutNumber ?? fingerprint.slice(0, 12) },
    ...(revision === undefined ? [] : [{ label: labels.revision, value: revision }]),
    { label: labels.sheet, value: format.size(layout.sheet.width, layout.sheet.height) },
    { label: labels.gap, value: format.length(layout.rules.gap) },
    { label: labels.bleed, value: format.length(layout.rules.bleed) },
    ...facts.designs.slice(0, 4).map((design) => ({ label: design.id, value: designLine(design, format) })),
  ];
}

function refuseUnknown(view: SheetView, rules: readonly DieRule[]): void {
  const issues = view.designs.flatMap(({ id, rules: own }, index): Issue[] => {
    const lines = own.filter(({ role }) => role === 'Unknown').length;
    if (lines === 0) return [];
    const unknown = rules.filter(({ role, station }) => role === 'Unknown' && view.placements[station]!.design === index);
    return [{ code: 'handover-unknown-rules', severity: 'error', facts: { design: id, lines, metres: unknown.reduce((sum, { curves }) => sum + pathLength(curves), 0) / 1000 } }];
  });
  if (issues.length > 0) throw new InputError(issues);
}

function manifest({ fingerprint, layoutNumber, revision, approvedBy, date, designs }: HandoverFacts, files: readonly HandoverFile[]): string {
  const content = {
    format: 'blankwright-handover',
    version: 1,
    layout: { number: layoutNumber ?? null, fingerprint },
    dieline: { revision: revision ?? null, drawings: designs.map(({ id, fingerprint: drawing }) => ({ design: id, fingerprint: drawing ?? null })) },
    approvedBy: approvedBy ?? null,
    date: date ?? null,
    files: files.map(({ name, content: bytes }) => ({ name, sha256: bytesToHex(sha256(typeof bytes === 'string' ? utf8ToBytes(bytes) : bytes)) })),
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}

/** Throws an InputError when a drawing, by its fingerprint, is none of those the layout was made from. */
export function checkDrawing(layout: LayoutFile, fingerprint: string, where: string): void {
  const known = layout.designs.flatMap(({ drawing }) => (drawing?.fingerprint === undefined ? [] : [drawing.fingerprint]));
  if (known.includes(fingerprint)) return;
  const issue = known.length === 0 ? { code: 'handover-no-fingerprint' } : { code: 'handover-drawing-changed', facts: { found: fingerprint.slice(0, 12) } };
  throw new InputError([{ severity: 'error', where, ...issue }]);
}
