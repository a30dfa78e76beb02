import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { InputError, type Issue } from '../base/issue.ts';
import { pathLength } from '../dieline/curve-part.ts';
import { writeLayoutFile, type LayoutFile } from '../layout/layout-file.ts';
import type { SoundLayout } from '../layout/sound.ts';
import { dieDxf } from '../render/die-dxf.ts';
import { dieRules, type DieRule } from '../render/die-rules.ts';
import { createFormat } from '../render/format.ts';
import { handoverFacts, type HandoverDetails, type HandoverFacts } from '../render/handover-facts.ts';
import { crewTicket, customerPage, dieOrder, type HandoverLanguage } from '../render/handover-pages.ts';
import { englishHandover } from '../render/messages/english-handover.ts';
import { englishPicture } from '../render/messages/english-picture.ts';
import { placementsCsv } from '../render/placements-csv.ts';
import { reportHtml } from '../render/report-html.ts';
import { sheetScene } from '../render/sheet-scene.ts';
import type { SheetView } from '../render/sheet-view.ts';
import { stepsPdf } from '../render/steps-pdf.ts';
import { sceneToSvg } from '../render/svg.ts';
import { viewOfLayout } from '../render/view-of-layout.ts';
import { layoutXjdf } from '../render/xjdf.ts';

/** One file of the folder. */
export interface HandoverFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

const ENGLISH: HandoverLanguage = { locale: 'en', words: englishHandover, format: createFormat('en') };

/**
 * The files for plate room, die maker, press crew and customer, with a manifest of their fingerprints. Takes only what
 * the judge found sound. Throws an InputError `handover-unknown-rules` while it is not known what lines of a design are.
 */
export async function handover(layout: SoundLayout, details: HandoverDetails, language: HandoverLanguage = ENGLISH): Promise<HandoverFile[]> {
  const { words, format } = language;
  const bare = viewOfLayout(layout, { grain: details.grain, figures: [] });
  const rules = dieRules(bare);
  refuseUnknown(bare, rules);
  const facts = handoverFacts(layout, bare, rules, details);
  const notice = words.notice(facts, format);
  const view = { ...bare, figures: titleCells(facts, language) };
  const picture = { section: 'answer', svg: sceneToSvg(sheetScene(view, { words: englishPicture, format })), onPaper: true };
  const files: HandoverFile[] = [
    { name: 'layout.json', content: writeLayoutFile(layout) },
    { name: 'sheet-steps.pdf', content: await stepsPdf(bare, rules, notice, language) },
    { name: 'sheet.svg', content: picture.svg },
    { name: 'die-printed-side.dxf', content: dieDxf(bare, rules, { side: 'printed', notice, words, nicks: details.nicks }) },
    { name: 'die-rule-side.dxf', content: dieDxf(bare, rules, { side: 'rule', notice, words, nicks: details.nicks }) },
    { name: 'die-order.html', content: reportHtml(dieOrder(facts, language), [picture]) },
    { name: 'placements.csv', content: placementsCsv(layout, bare, details.back) },
    { name: 'job.xjdf', content: layoutXjdf(facts, bare) },
    { name: 'crew-ticket.html', content: reportHtml(crewTicket(facts, language), [picture]) },
    { name: 'customer.html', content: reportHtml(customerPage(facts, language), [picture]) },
  ];
  return [...files, { name: 'manifest.json', content: manifest(facts, files) }];
}

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
