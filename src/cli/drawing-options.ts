import type { Command } from 'commander';
import { z } from 'zod';
import { inputError } from '../base/issue.ts';
import { DEFAULT_READ_OPTIONS, type ReadOptions } from '../dieline/options.ts';
import { parseRoleRule, type RoleRule } from '../dieline/role-rule.ts';
import { readJson } from './files.ts';
import { lengthValue, LENGTH_WANTED, wholeNumber, type OptionReader } from './option-reader.ts';

/** Options of every command that reads a drawing. */
export function addDrawingOptions(command: Command): Command {
  const collect = (value: string, before: readonly string[]) => [...before, value];
  return command
    .option('--scale <mm>', 'millimetres one user unit of the drawing stands for')
    .option('--width-is <mm>', 'known width of the blank; the scale follows from it')
    .option('--page <number>', 'page of a PDF (default 1)')
    .option('--blank <number>', 'which of several blanks in the drawing is meant, as `read` numbers them')
    .option('--role <rule>', 'what some lines are: Cutting=layer:knife, =class:k, =id:cut*, =stroke:#111111, =dash:any; repeatable, first match wins', collect, [])
    .option('--roles <file>', 'a file of such rules, {"roles": ["Cutting=layer:knife"]}, asked after --role')
    .option('--close-gaps <mm>', `close gaps in outlines up to this width (default ${DEFAULT_READ_OPTIONS.closeGaps})`);
}

/** Faults of numbers go to the reader; a rule or rule file that cannot be used throws an InputError at once. */
export function readDrawingOptions(raw: Readonly<Record<string, unknown>>, reader: OptionReader): ReadOptions {
  const scale = reader.read('--scale', scaleValue, 'millimetres of one user unit are wanted, above 0 and at most 1000, such as 0.352778');
  const widthIs = reader.read('--width-is', widthValue, 'a width above 0 in mm is wanted, such as 182 or 7.5in');
  const blank = reader.read('--blank', wholeNumber(1, 9999), 'the number of a blank is wanted, such as 2');
  const page = reader.read('--page', wholeNumber(1, 9999), 'the number of a page is wanted, such as 2');
  const closeGaps = reader.read('--close-gaps', gapValue, `${LENGTH_WANTED}, at most ${WIDEST_GAP_MM} mm`) ?? DEFAULT_READ_OPTIONS.closeGaps;
  if (raw.scale !== undefined && raw.widthIs !== undefined) {
    reader.fault({ code: 'options-contradict', facts: { first: '--scale', second: '--width-is', reason: 'each of them fixes the scale; give one' } });
  }
  const given = (raw.role as readonly string[] | undefined) ?? [];
  const roles = [...given.map((text) => parseRoleRule(text, '--role')), ...(raw.roles === undefined ? [] : readRoleFile(String(raw.roles)))];
  return { roles, closeGaps, ...(scale === undefined ? {} : { scale }), ...(widthIs === undefined ? {} : { widthIs }), ...(blank === undefined ? {} : { blank }), ...(page === undefined ? {} : { page }) };
}

/** A gap wider than this is a missing line, mm. */
const WIDEST_GAP_MM = 10;

function gapValue(text: string): number | undefined {
  const mm = lengthValue(text);
  return mm !== undefined && mm <= WIDEST_GAP_MM ? mm : undefined;
}

function widthValue(text: string): number | undefined {
  const mm = lengthValue(text);
  return mm !== undefined && mm > 0 ? mm : undefined;
}

function scaleValue(text: string): number | undefined {
  const value = /^\s*$/.test(text) ? NaN : Number(text);
  return value > 0 && value <= 1000 ? value : undefined;
}

const roleFileSchema = z.strictObject({ roles: z.array(z.string()).max(1000) });

/** A house style: rules in the order in which they are asked. */
function readRoleFile(path: string): RoleRule[] {
  const parsed = roleFileSchema.safeParse(readJson(path));
  if (!parsed.success) {
    const [{ path: field, message }] = parsed.error.issues;
    throw inputError('field-not-valid', { where: [path, ...field].join(': '), facts: { reason: message } });
  }
  return parsed.data.roles.map((text) => parseRoleRule(text, path));
}
