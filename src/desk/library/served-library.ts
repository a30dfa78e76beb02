import { InputError, type Issue } from '../../base/issue.ts';
import { english } from '../../render/messages/english.ts';
import type { IssueReply } from '../../wire/issue.ts';
import type { AnswerReply, BatchReply, EntriesReply, EntryReply, LibraryReply } from '../../wire/library.ts';

export type EntryKind = LibraryReply['kinds'][number]['kind'];

export interface EntriesWanted {
  readonly text: string;
  readonly kind: EntryKind | '';
  /** Tolerance of sizes and shapes, mm. */
  readonly within: number;
  readonly page: number;
}

/** The library behind the server. All reject with an InputError: what was asked cannot be used, or nobody answers. */
export interface ServedLibrary {
  holds(): Promise<LibraryReply>;
  entries(wanted: EntriesWanted): Promise<EntriesReply>;
  /** `outline` in mm. */
  like(outline: readonly (readonly [number, number])[], wanted: EntriesWanted): Promise<EntriesReply>;
  entry(kind: EntryKind, id: string): Promise<EntryReply>;
  file(kind: EntryKind, id: string): Promise<Uint8Array>;
  batch(id: string, page: number): Promise<BatchReply>;
  answer(key: string, name: string): Promise<AnswerReply>;
  keepJob(id: string, content: object): Promise<{ readonly kept: 'new' | 'changed' | 'unchanged'; readonly revision: number }>;
}

export function servedLibrary(): ServedLibrary {
  return {
    holds: () => json('library', {}),
    entries: ({ text, kind, within, page }) => json('library/entries', { text, within, page, ...(kind !== '' && { kind }) }),
    like: (outline, { kind, within, page }) => posted('library/like', { outline, within, page, ...(kind !== '' && { kind }) }),
    entry: (kind, id) => json('library/entry', { kind, id }),
    file: async (kind, id) => new Uint8Array(await (await asked(address('library/file', { kind, id }))).arrayBuffer()),
    batch: (id, page) => json('library/batch', { id, page }),
    answer: (key, name) => json('library/answer', { key, name }),
    keepJob: (id, content) => posted('library/jobs', { id, content }),
  };
}

function address(path: string, query: Readonly<Record<string, string | number>>): string {
  const text = new URLSearchParams(Object.entries(query).map(([field, value]) => [field, String(value)]));
  return `api/${path}?${text.toString()}`;
}

async function json<Reply>(path: string, query: Readonly<Record<string, string | number>>): Promise<Reply> {
  return (await asked(address(path, query))).json() as Promise<Reply>;
}

async function posted<Reply>(path: string, content: object): Promise<Reply> {
  return (await asked(`api/${path}`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(content) })).json() as Promise<Reply>;
}

async function asked(where: string, init?: RequestInit): Promise<Response> {
  const response = await fetch(where, init).catch(() => undefined);
  if (!response) throw refused([{ code: 'library-silent' }]);
  if (response.ok) return response;
  const { issues } = (await response.json().catch(() => ({ issues: [] }))) as { issues: readonly IssueReply[] };
  throw refused(issues.length === 0 ? [{ code: 'library-silent' }] : issues.map(refusedIssue));
}

/** The page words what it knows; of anything else it has only the server's own sentence. */
function refusedIssue({ code, where, facts, message }: IssueReply): Pick<Issue, 'code' | 'where' | 'facts'> {
  return english.knows(code) ? { code, ...(where !== undefined && { where }), ...(facts && { facts }) } : { code: 'library-refuses', facts: { message } };
}

function refused(issues: readonly Pick<Issue, 'code' | 'where' | 'facts'>[]): InputError {
  return new InputError(issues.map((issue) => ({ ...issue, severity: 'error' })));
}
