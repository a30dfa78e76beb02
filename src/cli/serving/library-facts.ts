import type { Entry } from '../../shop/library/records.ts';
import type { EntryReply } from '../../wire/library.ts';

/** What is told of an entry's content: bounded, whatever a record holds. */
const MOST_FACTS = 60;
const MOST_TEXT = 300;
const MOST_TABLES = 6;
const MOST_ROWS = 100;
const MOST_COLUMNS = 12;
const MOST_CHANGES = 20;

/** Fields that tell entries apart, in the order in which a person asks for them. */
export const TELLING = ['name', 'customer', 'dimensions', 'revision', 'rack', 'owner', 'ups', 'sheet', 'yearly', 'grade', 'grammage'];

type Content = Entry['content'];
type Plain = string | number | boolean;

function isPlain(value: unknown): value is Plain {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
}

function short<Value extends Plain>(value: Value): Value | string {
  return typeof value === 'string' && value.length > MOST_TEXT ? `${value.slice(0, MOST_TEXT)}…` : value;
}

export function toldOf(content: Content): [string, string | number][] {
  return TELLING.flatMap((field): [string, string | number][] => {
    const value = content[field];
    return typeof value === 'string' || typeof value === 'number' ? [[field, short(value)]] : [];
  });
}

/** A drawing's fingerprint says nothing to anybody. */
export function factsOf(content: Content): [string, Plain][] {
  return Object.entries(content)
    .flatMap(([field, value]): [string, Plain][] => (field !== 'drawing' && isPlain(value) ? [[field.slice(0, MOST_TEXT), short(value)]] : []))
    .slice(0, MOST_FACTS);
}

/** Lists of records with plain fields, such as the quantities of a quote. */
export function tablesOf(content: Content): EntryReply['tables'] {
  return Object.entries(content)
    .flatMap(([field, value]) => {
      const rows = Array.isArray(value) ? value.filter((one): one is Record<string, unknown> => typeof one === 'object' && one !== null && !Array.isArray(one)) : [];
      const shown = rows.slice(0, MOST_ROWS);
      const head = [...new Set(shown.flatMap((row) => Object.keys(row).filter((key) => isPlain(row[key]))))].slice(0, MOST_COLUMNS);
      return head.length === 0 ? [] : [{ field, head, rows: shown.map((row) => head.map((key) => (isPlain(row[key]) ? short(row[key]) : '–'))), more: rows.length - shown.length }];
    })
    .slice(0, MOST_TABLES);
}

/** What each revision changed in the one before it; the latest first. */
export function historyLines(revisions: readonly Entry[]): EntryReply['history'] {
  return revisions.map(({ revision, at, removed, content }, index) => {
    const before = revisions[index + 1]?.content ?? {};
    const fields = [...new Set([...Object.keys(before), ...Object.keys(content)])].filter((field) => JSON.stringify(before[field]) !== JSON.stringify(content[field]));
    return { revision, at, removed, changes: index + 1 < revisions.length ? fields.slice(0, MOST_CHANGES).map((field) => ({ field, from: textOf(before[field]), to: textOf(content[field]) })) : [] };
  });
}

function textOf(value: unknown): string | null {
  if (value === undefined || value === null) return null;
  return isPlain(value) ? String(short(value)) : '…';
}
