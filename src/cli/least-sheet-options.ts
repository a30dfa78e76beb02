import type { Command } from 'commander';
import type { LeastSheetWish } from '../pipeline/least-sheet.ts';
import { lengthValue, oneOf, wholeNumber, type OptionReader } from './option-reader.ts';

/** What `--ups` cannot stand beside, and why. */
const BESIDE: readonly (readonly [string, string])[] = [
  ['locked', 'locked blanks belong to one sheet'],
  ['grid', 'rows and columns say how many there are'],
  ['guillotine', 'the least sheet is looked for with die-cut layouts'],
  ['back', 'the least sheet is looked for with one side printed'],
  ['library', 'answers are kept for sheets that are given'],
];

const MOST_UPS = 2000;

export function addLeastSheetOptions(command: Command): Command {
  return command
    .option('--ups <n>', 'find the least sheet, at most --sheet, that holds so many')
    .option('--least <what>', 'with --ups: what is to be least, depth (away from the gripper), width or area (default depth)')
    .option('--step <mm>', 'with --ups: sheets in steps of so many mm (default 1, for area 10)');
}

/** Undefined where no least sheet is asked for. */
export function readLeastSheetOptions(raw: Readonly<Record<string, unknown>>, reader: OptionReader): LeastSheetWish | undefined {
  const ups = reader.read('--ups', wholeNumber(1, MOST_UPS), `a whole number from 1 to ${MOST_UPS} is wanted`);
  const least = reader.read('--least', oneOf('depth', 'width', 'area'), 'depth, width or area is wanted') ?? 'depth';
  const stepMm = reader.read('--step', stepValue, 'a length from 0.1 to 100 mm is wanted') ?? (least === 'area' ? 10 : 1);
  if (raw['ups'] === undefined) {
    for (const option of ['least', 'step']) if (raw[option] !== undefined) reader.fault({ code: 'option-needs-other', where: `--${option}`, facts: { other: '--ups' } });
    return undefined;
  }
  const other = raw['cut'] === 'guillotine' ? ['cut', 'the least sheet is looked for with die-cut layouts'] : BESIDE.find(([option]) => raw[option!] !== undefined);
  if (other) reader.fault({ code: 'options-contradict', facts: { first: '--ups', second: `--${other[0]}`, reason: other[1]! } });
  return ups === undefined ? undefined : { ups, least, stepMm };
}

function stepValue(text: string): number | undefined {
  const length = lengthValue(text);
  return length !== undefined && length >= 0.1 && length <= 100 ? length : undefined;
}
