import { z } from 'zod';
import { fingerprintOf } from '../../dieline/fingerprint.ts';
import { inputError } from '../../base/issue.ts';
import { parseLengthMm } from '../../base/units.ts';
import { WORK_STYLES } from '../../layout/back-up.ts';
import { readLayoutFile } from '../../layout/layout-file.ts';
import type { GivenBarCode } from '../../layout/bar-codes.ts';
import { judgeForProduction } from '../../layout/sound.ts';
import type { GivenArtwork } from '../../pipeline/artwork.ts';
import { checkDrawing, handover, handoverLanguage } from '../../pipeline/handover.ts';
import { sheetGrainAxis } from '../../press/grain.ts';
import { boardSchema, readRecord } from '../../press/records.ts';
import type { HandoverDetails } from '../../render/handover-facts.ts';
import { WORK_STYLES_WANTED } from '../../render/messages/english-handover.ts';
import { readColour, type NamedInk } from '../../render/svg-pdf/colours.ts';
import { BLANK_SIDES, type BlankSide } from '../../render/nicks.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { exists, readInput, readJson, refuseTakenFolder, writeFolder } from '../files.ts';
import { readArtwork } from '../read-drawing.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { LEAST_STRIP_WANTED, leastStripValue, STRIPPING_WANTED, strippingValue } from '../nest-options.ts';
import { createOptionReader, lengthValue, LENGTH_WANTED, oneOf, wholeNumber } from '../option-reader.ts';
import { readRecordFile } from '../read-record-file.ts';

interface Options {
  readonly to: string;
  readonly drawing: readonly string[];
  readonly layoutNumber?: string;
  readonly revision?: string;
  readonly approvedBy?: string;
  readonly date?: string;
  readonly product?: string;
  readonly board?: string;
  readonly sheetGrain?: string;
  readonly quantity?: string;
  readonly sheets?: string;
  readonly back?: string;
  readonly gang?: string;
  readonly form?: string;
  readonly artwork: readonly string[];
  readonly artworkBack: readonly string[];
  readonly artworkPage?: string;
  readonly artworkBackPage?: string;
  readonly artworkAt?: string;
  readonly stripping?: string;
  readonly ink: readonly string[];
  readonly barCode: readonly string[];
  readonly leastStrip?: string;
  readonly language: string;
  readonly nicks?: string;
  readonly nickWidth?: string;
  readonly nicksClearOf?: string;
  readonly food?: string;
}

export const registerHandover: RegisterCommand = (program) => {
  const collect = (value: string, before: readonly string[]) => [...before, value];
  program
    .command('handover')
    .description('Writes the folder of files for plate room, die maker, press crew and customer; only from a layout that the judge finds sound.')
    .argument('<layout>', 'a layout file')
    .requiredOption('--to <folder>', 'folder to make; it must not hold anything yet')
    .option('--drawing <file>', 'the drawing as it is now; stops when it is no longer the one laid out; repeatable', collect, [])
    .option('--layout-number <text>', 'number of the layout')
    .option('--revision <text>', 'revision of the dieline')
    .option('--approved-by <name>', 'who approved the layout')
    .option('--date <text>', 'date that stands on every page')
    .option('--product <text>', 'what the customer calls the job')
    .option('--board <file>', 'board record (JSON); its caliper gives crease heights and channels')
    .option('--sheet-grain <axis>', 'x (along the gripper edge), y, long or short; else as the board record says')
    .option('--quantity <n>', 'cartons or labels ordered')
    .option('--sheets <n>', 'sheets to print')
    .option('--back <style>', `how the second side is printed: ${WORK_STYLES.join(', ')}`)
    .option('--artwork <file>', 'PDF or SVG of the print of one blank, placed on every station; of several designs or versions: name=file.pdf; repeatable', collect, [])
    .option('--gang <file>', 'plan of versions, as gang --json writes it: which version each station prints, in station order')
    .option('--form <n>', 'form of that plan', '1')
    .option('--artwork-back <file>', 'the same for the back, as it is looked at; needs --back', collect, [])
    .option('--artwork-page <n>', 'page of the artwork', '1')
    .option('--artwork-back-page <n>', 'page of the artwork of the back', '1')
    .option('--ink <name=colour>', 'a colour of SVG artwork that stands for an ink, such as "Fernhollow Green=#1a7d43"; repeatable', collect, [])
    .option('--artwork-at <x,y>', 'place of the artwork page’s lower left corner from that of the blank, mm; else found by die line, trim box or page size')
    .option('--bar-code <x,y,width,height>', 'box of a bar code on the blank, mm from its lower left corner; of several designs name=…; ,x or ,y after it says along which side of the drawing its bars run, else it is seen in the artwork; repeatable', collect, [])
    .option('--language <tag>', `language of pages and pictures: ${LANGUAGE_TAGS}`, 'en')
    .option('--stripping <way>', 'how the waste is taken off: by-hand, with-tools or with-blanking; the stripping page says whether the layout suits it (default: as the layout was asked for)')
    .option('--least-strip <mm>', 'strips of waste narrower than this are listed, whole millimetres (default 5, or as the layout was asked for)')
    .option('--nicks <n>', 'nicks on every blank')
    .option('--nick-width <mm>', 'width of a nick', '0.5')
    .option('--nicks-clear-of <sides>', `sides of the drawing without nicks: ${BLANK_SIDES.join(', ')}, with commas between`)
    .option('--food <text>', 'food record; repeated as it is written')
    .addHelpText('after', '\nExit code 0: the folder stands; 1: it stands, but artwork or back ask for a decision; 2: nothing was written.')
    .action(action(runHandover));
};

async function runHandover(path: string, options: Options): Promise<number> {
  refuseTakenFolder(options.to);
  const layout = readLayoutFile(readJson(path), path);
  const details = { ...readDetails(options, layout.sheet), versions: options.gang === undefined ? undefined : readVersions(options.gang, options.form, layout.placements.length) };
  for (const drawing of options.drawing) checkDrawing(layout, fingerprintOf(readInput(drawing)), drawing);
  const { judgement, sound } = judgeForProduction(layout);
  if (!sound) throw inputError('handover-faulty', { where: path, facts: { faults: judgement.faults.length } });
  if (options.artworkBack.length > 0 && details.back === undefined) throw inputError('artwork-back-without-style');
  const { files, issues } = await handover(sound, details, { ...(await readArtworks(options)), language: handoverLanguage(languageValue(options.language)) });
  writeFolder(options.to, files);
  for (const issue of issues) process.stderr.write(`${sentence(issue)}\n`);
  process.stdout.write(`${options.to}\n${files.map(({ name }) => `  ${name}\n`).join('')}`);
  return issues.some(({ severity }) => severity !== 'note') ? ASKS : DONE;
}

const planSchema = z.looseObject({ forms: z.array(z.looseObject({ counts: z.record(z.string(), z.int().nonnegative().max(10_000)), stations: z.array(z.string()).optional() })).min(1).max(1000) });

/** What each station prints: as the plan says, else the versions of one form, one after the other. */
function readVersions(path: string, form: string | undefined, stations: number): string[] {
  const reader = createOptionReader({ form });
  const number = reader.read('--form', wholeNumber(1, 1000), 'the number of a form is wanted, such as 2') ?? 1;
  reader.finish();
  const { forms } = readRecord(planSchema, readJson(path), path);
  const chosen = forms[number - 1];
  if (!chosen) throw inputError('gang-no-such-form', { where: path, facts: { number, count: forms.length } });
  if (chosen.stations?.length === stations) return chosen.stations;
  const wanted = Object.values(chosen.counts).reduce((sum, count) => sum + count, 0);
  if (wanted !== stations) throw inputError('gang-other-stations', { where: path, facts: { number, wanted, found: stations } });
  return Object.entries(chosen.counts).flatMap(([version, count]) => Array.from({ length: count }, () => version));
}

async function readArtworks(options: Options): Promise<{ front: GivenArtwork[]; back: GivenArtwork[] }> {
  const reader = createOptionReader(options as unknown as Record<string, unknown>);
  const [front, back] = (['--artwork-page', '--artwork-back-page'] as const).map((option) => reader.read(option, wholeNumber(1, 9999), 'the number of a page is wanted, such as 2') ?? 1);
  const at = reader.read('--artwork-at', placeValue, 'two lengths in mm are wanted, such as -3,-3');
  reader.finish();
  const inks = options.ink.map(inkValue);
  const read = async (text: string, page: number): Promise<GivenArtwork> => {
    const { design, path } = designAndFile(text);
    return { design, where: path, artwork: await readArtwork(path, page, inks), at };
  };
  return { front: await Promise.all(options.artwork.map((text) => read(text, front!))), back: await Promise.all(options.artworkBack.map((text) => read(text, back!))) };
}

/** `carton=20,30,38,26,y`: design, box, axis of the bars; first and last may be left out. */
function barCodeValue(text: string): GivenBarCode {
  const [, design, box] = /^(?:(.+)=)?([^=]*)$/.exec(text) ?? [];
  const words = (box ?? '').split(',').map((word) => word.trim());
  const [x, y, width, height] = words.slice(0, 4).map((word) => parseLengthMm(word));
  const bars = words[4] === 'x' || words[4] === 'y' ? words[4] : undefined;
  const isWhole = x !== undefined && y !== undefined && width !== undefined && height !== undefined && width > 0 && height > 0 && words.length === (bars ? 5 : 4);
  if (isWhole) return { design, box: { minX: x, minY: y, maxX: x + width, maxY: y + height }, bars };
  throw inputError('option-not-valid', { where: '--bar-code', facts: { value: text, expected: 'four lengths in mm are wanted, x, y, width, height, and x or y after them, such as 20,30,38,26,y' } });
}

/** `Fernhollow Green=#1a7d43`. */
function inkValue(text: string): NamedInk {
  const [, name, colour] = /^\s*([^=]*[^=\s])\s*=\s*(.+?)\s*$/.exec(text) ?? [];
  if (name !== undefined && colour !== undefined && readColour(colour, [])) return { name, colour };
  throw inputError('option-not-valid', { where: '--ink', facts: { value: text, expected: 'a name and a colour are wanted, such as "Fernhollow Green=#1a7d43"' } });
}

/** `mint=mint.pdf`; a name before the sign that is a file's own is part of the file's. */
function designAndFile(text: string): { design: string | undefined; path: string } {
  const [, design, path] = /^([^=]+)=(.+)$/.exec(text) ?? [];
  return design !== undefined && path !== undefined && !exists(text) ? { design, path } : { design: undefined, path: text };
}

function placeValue(text: string): { x: number; y: number } | undefined {
  const values = text.split(',').map((part) => parseLengthMm(part));
  const [x, y] = values;
  return values.length === 2 && x !== undefined && y !== undefined && Math.max(Math.abs(x), Math.abs(y)) < 10_000 ? { x, y } : undefined;
}

function readDetails(options: Options, sheet: { readonly width: number; readonly height: number }): HandoverDetails {
  const reader = createOptionReader(options as unknown as Record<string, unknown>);
  const count = (option: string, most: number) => reader.read(option, wholeNumber(1, most), `a whole number from 1 to ${most} is wanted`);
  const nicks = count('--nicks', 100);
  const widthMm = reader.read('--nick-width', lengthValue, LENGTH_WANTED) ?? 0;
  const clearOf = reader.read('--nicks-clear-of', sidesValue, `${BLANK_SIDES.join(', ')} are wanted, with commas between`) ?? [];
  const given = reader.read('--sheet-grain', oneOf('x', 'y', 'long', 'short'), 'x, y, long or short is wanted');
  const quantity = count('--quantity', 1e9);
  const sheets = count('--sheets', 1e9);
  const stripping = reader.read('--stripping', strippingValue, STRIPPING_WANTED);
  const leastStrip = reader.read('--least-strip', leastStripValue, LEAST_STRIP_WANTED);
  const back = reader.read('--back', oneOf(...WORK_STYLES), WORK_STYLES_WANTED);
  reader.finish();
  const board = options.board === undefined ? undefined : readRecord(boardSchema, readRecordFile(options.board, 'boards'), options.board);
  const grain = given ?? board?.sheetGrain;
  const { layoutNumber, revision, approvedBy, date, product, food } = options;
  return {
    layoutNumber, revision, approvedBy, date, product, food, board, quantity, sheets, back, leastStrip, stripping,
    grain: grain && sheetGrainAxis(grain, sheet),
    barCodes: options.barCode.map(barCodeValue),
    nicks: nicks === undefined ? undefined : { count: nicks, widthMm, clearOf },
  };
}

function sidesValue(text: string): BlankSide[] | undefined {
  const sides = text.split(',').map((word) => BLANK_SIDES.find((side) => side === word.trim()));
  return sides.every((side) => side !== undefined) ? sides : undefined;
}
