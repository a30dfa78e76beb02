import { inputError } from '../../base/issue.ts';
import { READING_LIMITS } from '../limits.ts';
import { limitPassed } from '../xml.ts';

/** A pair of lines of the file: what the second one means, and the second one. */
export interface Group {
  readonly code: number;
  readonly value: string;
}

/** A group with code 0 and what follows up to the next one: an entity, a table entry, the edge of a section. */
export interface DxfRecord {
  readonly type: string;
  readonly groups: readonly Group[];
  /** Of the file, from 1. */
  readonly line: number;
}

/**
 * The records of a DXF file in text form. Comments (code 999) are dropped. Throws InputError `dxf-not-readable` where a
 * line that should hold a code does not, and `drawing-limit`.
 */
export function readRecords(text: string): DxfRecord[] {
  const lines = text.split(/\r\n|\r|\n/);
  const records: { type: string; groups: Group[]; line: number }[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    if (lines[i]!.trim() === '' && lines.slice(i).every((line) => line.trim() === '')) break;
    const code = Number(lines[i]);
    if (lines[i]!.trim() === '' || !Number.isInteger(code)) throw inputError('dxf-not-readable', { where: `line ${i + 1}`, facts: { found: lines[i]!.slice(0, 20) } });
    const value = lines[i + 1]!;
    if (code === 0) records.push({ type: value.trim().toUpperCase(), groups: [], line: i + 1 });
    else if (code !== 999) records.at(-1)?.groups.push({ code, value });
    if (records.length > READING_LIMITS.records) throw limitPassed('records', READING_LIMITS.records);
  }
  return records;
}

/** Text of the first group with this code, without blanks around it. */
export function textOf({ groups }: Pick<DxfRecord, 'groups'>, code: number): string | undefined {
  return groups.find((group) => group.code === code)?.value.trim();
}

/** Number of the first group with this code; undefined where there is none, NaN where it is no number. */
export function numberOf(record: Pick<DxfRecord, 'groups'>, code: number): number | undefined {
  const text = textOf(record, code);
  return text === undefined ? undefined : toNumber(text);
}

/** All numbers with this code, in order. */
export function numbersOf({ groups }: Pick<DxfRecord, 'groups'>, code: number): number[] {
  return groups.filter((group) => group.code === code).map(({ value }) => toNumber(value));
}

function toNumber(text: string): number {
  return text.trim() === '' ? NaN : Number(text);
}
