import type { Command } from 'commander';
import type { z } from 'zod';
import { turnOfDegrees, type Turn } from '../geometry/turn.ts';
import { COMMON_KNIFE_REASONS, FACING_SIDES, type CommonKnifePair } from '../layout/common-knife-pairs.ts';
import { symmetryOf, WORK_STYLES, type WorkStyle } from '../layout/back-up.ts';
import type { LayingSettings } from '../pipeline/laying.ts';
import type { Machines } from '../press/machines.ts';
import { readNoted } from '../press/known-fields.ts';
import type { TableKind } from '../press/tables/record-tables.ts';
import { BAR_WANTED, boardSchema, cutterSchema, parseBar, pressSchema } from '../press/records.ts';
import { MOST_LEAST_STRIP_MM, STRIPPING_MODES, STRIPPING_RULES, type StrippingSaid } from '../press/stripping.ts';
import { sentence } from './command.ts';
import { readRecordFile } from './read-record-file.ts';
import { createOptionReader, lengthValue, LENGTH_WANTED, oneOf, sizeValue, SIZE_WANTED, wholeNumber, type OptionReader } from './option-reader.ts';

export interface LayingOptions extends Omit<LayingSettings, 'sheet'> {
  readonly drawnFrom: 'printed' | 'inside';
}

export interface EffortOptions {
  readonly effort: 'quick' | 'normal' | 'thorough';
  readonly seconds: number | undefined;
  readonly seed: number;
  readonly workers: number | undefined;
}

export function addLayingOptions(command: Command): Command {
  return command
    .option('--gripper <mm>', 'no knife comes nearer to the gripper edge (default 12)')
    .option('--tail <mm>', 'no knife comes nearer to the tail (default 10)')
    .option('--side-margins <left[,right]>', 'no knife comes nearer to the sides, mm (default 6)')
    .option('--ink-gripper <mm>', 'no ink comes nearer to the gripper edge (default 10)')
    .option('--ink-tail <mm>', 'no ink comes nearer to the tail (default 3)')
    .option('--ink-sides <mm>', 'no ink comes nearer to the sides (default 3)')
    .option('--bar <place:mm>', 'colour bar and its height: tail:6, gripper:6, centre:6 or none (default none)')
    .option('--gap <mm>', 'least distance from knife to knife (default 6)')
    .option('--bleed <mm>', 'ink beyond the outline (default 3)')
    .option('--bleed-meeting <how>', 'apart: bleeds of neighbours clear each other; cut: cut at the middle of the gap (default apart)')
    .option('--common-knife', 'neighbours may share one straight rule: unprinted, or the same colour runs through')
    .option('--common-knife-pairs <pairs>', 'only these edges of the drawing may share a rule, and why: left+right=unprinted,upper+lower=same-colour,left+left=by-word (without a reason: by-word)')
    .option('--rotations <degrees>', 'allowed rotations, counter-clockwise: 0,180 or 0,90,180,270 or 0 or 0,90 (default 0,180)')
    .option('--grain <side>', 'side of the drawing along which the grain must run: x, y or any')
    .option('--sheet-grain <side>', 'grain of the sheet: x (along the gripper edge), y, long or short')
    .option('--lay <side>', 'side lay: left or right (default left)')
    .option('--drawn-from <side>', 'the drawing shows the printed side or the inside (default printed)')
    .option('--press <file>', 'press record (JSON) with the same settings by name')
    .option('--cutter <file>', 'die-cutter record (JSON); of press and die-cutter the narrower limit binds')
    .option('--board <file>', 'board record (JSON), or a table of boards and a name: boards.csv#name');
}

export function addEffortOptions(command: Command): Command {
  return command
    .option('--effort <much>', 'quick (about 2 s), normal (up to 30 s) or thorough (up to 10 minutes)', 'normal')
    .option('--seconds <n>', 'stop after so many seconds with the best so far')
    .option('--seed <n>', 'seed of the search: the same seed gives the same layout', '1')
    .option('--workers <n>', 'worker threads (default: one per core, at most 8); the layout is the same for any number');
}

export function readLayingOptions(raw: Readonly<Record<string, unknown>>, reader: OptionReader): Omit<LayingOptions, 'machines'> {
  const length = (option: string) => reader.read(option, lengthValue, LENGTH_WANTED);
  const rotations = reader.read('--rotations', rotationsValue, 'quarter turns are wanted, such as 0,180 or 0,90,180,270');
  const grain = reader.read('--grain', oneOf('x', 'y', 'any'), 'x, y or any is wanted');
  const sheetGrain = reader.read('--sheet-grain', oneOf('x', 'y', 'long', 'short'), 'x, y, long or short is wanted');
  if (raw.rotations !== undefined && (raw.grain !== undefined || raw.sheetGrain !== undefined)) {
    reader.fault({ code: 'options-contradict', facts: { first: '--rotations', second: '--grain', reason: 'both say which rotations are allowed; give one of them' } });
  }
  if (raw.commonKnife === true && raw.commonKnifePairs !== undefined) {
    reader.fault({ code: 'options-contradict', facts: { first: '--common-knife', second: '--common-knife-pairs', reason: 'the one allows all edges, the other names those allowed; give one of them' } });
  }
  return {
    settings: {
      gripper: length('--gripper'),
      tail: length('--tail'),
      sideMargins: reader.read('--side-margins', sidesValue, 'one or two lengths in mm are wanted, left,right, such as 6 or 6,8'),
      inkGripper: length('--ink-gripper'),
      inkTail: length('--ink-tail'),
      inkSides: length('--ink-sides'),
      bar: reader.read('--bar', parseBar, BAR_WANTED),
      gap: length('--gap'),
      bleed: length('--bleed'),
      lay: reader.read('--lay', oneOf('left', 'right'), 'left or right is wanted'),
    },
    bleedMeeting: reader.read('--bleed-meeting', oneOf('apart', 'cut'), 'apart or cut is wanted'),
    commonKnife: raw.commonKnife === true || raw['commonKnifePairs'] !== undefined,
    commonKnifePairs: reader.read('--common-knife-pairs', pairsValue, `pairs of ${FACING_SIDES.join(', ')} are wanted with one of ${COMMON_KNIFE_REASONS.join(', ')}, such as left+right=unprinted`),
    rotations,
    grain,
    sheetGrain,
    drawnFrom: reader.read('--drawn-from', oneOf('printed', 'inside'), 'printed or inside is wanted') ?? 'printed',
  };
}

export function readEffortOptions(reader: OptionReader): EffortOptions {
  return {
    effort: reader.read('--effort', oneOf('quick', 'normal', 'thorough'), 'quick, normal or thorough is wanted') ?? 'normal',
    seconds: reader.read('--seconds', secondsValue, 'seconds above 0 are wanted, such as 20'),
    seed: reader.read('--seed', wholeNumber(0, 2 ** 31 - 1), `a whole number from 0 to ${2 ** 31 - 1} is wanted`) ?? 1,
    workers: reader.read('--workers', wholeNumber(1, 64), 'a whole number from 1 to 64 is wanted'),
  };
}

function readMachine<Schema extends z.ZodType>(schema: Schema, path: string, kind: TableKind): z.output<Schema> {
  const { record, notes } = readNoted(schema, readRecordFile(path, kind), path);
  for (const issue of notes) process.stderr.write(`${sentence(issue)}\n`);
  return record;
}

/** Reads the record files that were named. */
export function readMachines(raw: { press?: string; cutter?: string; board?: string }): Machines {
  return {
    press: raw.press === undefined ? undefined : readMachine(pressSchema, raw.press, 'presses'),
    cutter: raw.cutter === undefined ? undefined : readMachine(cutterSchema, raw.cutter, 'cutters'),
    board: raw.board === undefined ? undefined : readMachine(boardSchema, raw.board, 'boards'),
  };
}

export interface NestOptions extends LayingOptions, EffortOptions {
  readonly sheet: LayingSettings['sheet'];
  /** How many different layouts to offer. */
  readonly layouts: number;
  readonly grid: { readonly rows: number; readonly columns: number } | undefined;
  readonly cut: 'die' | 'guillotine';
  readonly back: WorkStyle | undefined;
  readonly stripping: StrippingSaid | 'none';
}

/** All options of `nest` but the drawing's own and the output files. Throws one InputError that names every fault. */
export function readNestOptions(raw: Readonly<Record<string, unknown>>): NestOptions {
  const reader = createOptionReader(raw);
  const sheet = reader.read('--sheet', sizeValue, SIZE_WANTED);
  if (raw.sheet === undefined) reader.fault({ code: 'option-missing', where: '--sheet', facts: { expected: SIZE_WANTED } });
  const laying = readLayingOptions(raw, reader);
  const effort = readEffortOptions(reader);
  const layouts = reader.read('--layouts', wholeNumber(1, 9), 'a whole number from 1 to 9 is wanted') ?? 1;
  const grid = reader.read('--grid', gridValue, 'rows × columns are wanted, such as 3x5');
  const cut = reader.read('--cut', oneOf('die', 'guillotine'), 'die or guillotine is wanted') ?? 'die';
  for (const other of ['locked', 'grid'] as const) if (cut === 'guillotine' && raw[other] !== undefined) reader.fault({ code: 'options-contradict', facts: { first: '--cut guillotine', second: `--${other}`, reason: 'straight cuts are worked out for the whole sheet' } });
  if (cut === 'die' && raw.guillotine !== undefined) reader.fault({ code: 'options-contradict', facts: { first: '--guillotine', second: '--cut die', reason: 'a guillotine cuts only with --cut guillotine' } });
  const back = reader.read('--back', oneOf(...WORK_STYLES), `${WORK_STYLES.join(', ')} is wanted`);
  if (symmetryOf(back) !== 'none' && raw['commonKnifePairs'] !== undefined) reader.fault({ code: 'options-contradict', facts: { first: '--common-knife-pairs', second: `--back ${back}`, reason: 'on the half that carries backs left and right change places' } });
  if (symmetryOf(back) !== 'none' && raw.explainLimit !== undefined) {
    reader.fault({ code: 'options-contradict', facts: { first: '--explain-limit', second: `--back ${back}`, reason: 'the limit is proved for one half of the sheet, and a layout file holds both' } });
  }
  const stripping = readStrippingOptions(raw, reader);
  if (cut === 'guillotine' && raw['stripping'] !== undefined) reader.fault({ code: 'options-contradict', facts: { first: '--cut guillotine', second: '--stripping', reason: 'straight cuts leave nothing to strip' } });
  reader.finish();
  const machines = readMachines(raw);
  return { sheet: sheet!, ...laying, ...effort, layouts, grid, cut, back, machines, stripping: cut === 'die' ? stripping : 'none' };
}

export const LEAST_STRIP_WANTED = `whole millimetres from 1 to ${MOST_LEAST_STRIP_MM} are wanted`;
export const leastStripValue = wholeNumber(1, MOST_LEAST_STRIP_MM);
export const STRIPPING_WANTED = `${STRIPPING_MODES.join(', ')} is wanted`;
export const strippingValue = oneOf(...STRIPPING_MODES);

export function addStrippingOptions(command: Command): Command {
  return command
    .option('--stripping <way>', 'how the waste is taken off: by-hand, with-tools or with-blanking; among equal ups the layout that strips best')
    .option('--stripping-rule <how>', 'prefer: as said; must: only layouts that keep what that way asks, with the ups it costs (default prefer)')
    .option('--least-strip <mm>', 'waste between two blanks should be so wide, whole millimetres (default 5)');
}

/** As options say it; what they leave open the record of the die-cutter may say. */
export function readStrippingOptions(raw: Readonly<Record<string, unknown>>, reader: OptionReader): StrippingSaid {
  for (const option of ['strippingRule', 'leastStrip'] as const) {
    if (raw[option] !== undefined && raw['stripping'] === undefined && raw['cutter'] === undefined) reader.fault({ code: 'stripping-mode-missing', where: option === 'leastStrip' ? '--least-strip' : '--stripping-rule', facts: { modes: STRIPPING_MODES.join(', ') } });
  }
  return {
    mode: reader.read('--stripping', strippingValue, STRIPPING_WANTED),
    rule: reader.read('--stripping-rule', oneOf(...STRIPPING_RULES), `${STRIPPING_RULES.join(' or ')} is wanted`),
    leastStrip: reader.read('--least-strip', leastStripValue, LEAST_STRIP_WANTED),
  };
}

function rotationsValue(text: string): readonly Turn[] | undefined {
  const turns = text.split(',').map((part) => (/^\s*-?\d+\s*$/.test(part) ? turnOfDegrees(Number(part)) : undefined));
  return turns.includes(undefined) ? undefined : [...new Set(turns as Turn[])];
}

/** `left+right=unprinted,upper+lower`; without a reason it is by word. */
function pairsValue(text: string): readonly CommonKnifePair[] | undefined {
  const pairs = text.split(',').map((part): CommonKnifePair | undefined => {
    const [, one, other, why = 'by-word'] = /^\s*([a-z]+)\+([a-z]+)(?:=([a-z-]+))?\s*$/.exec(part) ?? [];
    const [side, beside] = [one, other].map((name) => FACING_SIDES.find((known) => known === name));
    const reason = COMMON_KNIFE_REASONS.find((known) => known === why);
    return side && beside && reason && { sides: [side, beside], reason };
  });
  return pairs.every((pair) => pair !== undefined) ? pairs : undefined;
}

function sidesValue(text: string): readonly [number, number] | undefined {
  const sides = text.split(',').map(lengthValue);
  if (sides.length > 2 || sides.includes(undefined)) return undefined;
  return [sides[0]!, sides[1] ?? sides[0]!];
}

function secondsValue(text: string): number | undefined {
  const value = Number(text);
  return text.trim() !== '' && Number.isFinite(value) && value > 0 ? value : undefined;
}

const MAX_GRID = 1000;
function gridValue(text: string): { rows: number; columns: number } | undefined {
  const match = /^(\d+)[x×](\d+)$/i.exec(text);
  if (!match) return undefined;
  const [rows, columns] = [Number(match[1]), Number(match[2])];
  return rows >= 1 && columns >= 1 && rows <= MAX_GRID && columns <= MAX_GRID ? { rows, columns } : undefined;
}
