import { InputError, type Issue } from '../base/issue.ts';
import { parseLengthMm, parseSizeMm } from '../base/units.ts';
import type { Size } from '../press/sheet-areas.ts';

/**
 * Reads the raw texts of options into values and collects every fault, so that one run names them all. Option names are
 * given as typed on the command line (`--side-margins`).
 */
export interface OptionReader {
  /** The parsed value; undefined when the option was not given or is faulty (the fault is kept for `finish`). */
  read<Value>(option: string, parse: (text: string) => Value | undefined, expected: string): Value | undefined;
  /** A flaw between options. */
  fault(issue: Omit<Issue, 'severity'>): void;
  /** Throws an InputError with all faults, if any. */
  finish(): void;
}

export function createOptionReader(raw: Readonly<Record<string, unknown>>): OptionReader {
  const issues: Issue[] = [];
  const fault = (issue: Omit<Issue, 'severity'>) => void issues.push({ severity: 'error', ...issue });
  return {
    fault,
    read(option, parse, expected) {
      const text = raw[fieldOf(option)];
      if (text === undefined) return undefined;
      const value = parse(String(text));
      if (value === undefined) fault({ code: 'option-not-valid', where: option, facts: { value: String(text), expected } });
      return value;
    },
    finish() {
      if (issues.length > 0) throw new InputError(issues);
    },
  };
}

/** `--side-margins` is kept by commander as `sideMargins`. */
function fieldOf(option: string): string {
  return option.replace(/^--/, '').replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** Longest length an option may give, mm: outlines and sheets are held to 2²⁴ µm. */
const MAX_LENGTH = 16_000;

export const LENGTH_WANTED = `a length from 0 to ${MAX_LENGTH} mm is wanted, such as 12 or 0.5in`;
export function lengthValue(text: string): number | undefined {
  const mm = parseLengthMm(text);
  return mm !== undefined && mm >= 0 && mm <= MAX_LENGTH ? mm : undefined;
}

export const SIZE_WANTED = `a size with sides from 1 to ${MAX_LENGTH} mm is wanted, first along the gripper edge, such as 1020x720 or 28x40in`;
export function sizeValue(text: string): Size | undefined {
  const size = parseSizeMm(text);
  const fits = (mm: number) => mm >= 1 && mm <= MAX_LENGTH;
  return size && fits(size.width) && fits(size.height) ? size : undefined;
}

/** A reader for whole numbers from `least` to `most`. */
export function wholeNumber(least: number, most: number): (text: string) => number | undefined {
  return (text) => {
    const value = /^\d+$/.test(text) ? Number(text) : NaN;
    return value >= least && value <= most ? value : undefined;
  };
}

/** A reader for one of some words. */
export function oneOf<const Words extends readonly string[]>(...words: Words): (text: string) => Words[number] | undefined {
  return (text) => words.find((word) => word === text);
}
