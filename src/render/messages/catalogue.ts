import type { Issue } from '../../base/issue.ts';
import { withFieldNames } from './field-names.ts';

/**
 * The one place where issue codes become sentences. A sentence says what is wrong, where, and what to do. Each language
 * is one table per area; `{name}` stands for a fact of the issue, lengths being in millimetres; `{count|line is|lines are}` for the first words where
 * the fact is 1, else for the others.
 */
export type MessageTable = Readonly<Record<string, string>>;

export interface Catalogue {
  sentence(issue: Issue): string;
}

export interface CatalogueOptions {
  /** Answers for codes that no table has. */
  readonly otherwise?: Catalogue;
  /** Words that stand for facts of the same name. */
  readonly terms?: Readonly<Record<string, string>>;
  readonly decimalSign?: string;
}

export function createCatalogue(tables: readonly MessageTable[], { otherwise, terms = {}, decimalSign = '.' }: CatalogueOptions = {}): Catalogue {
  const messages = new Map<string, string>();
  for (const table of tables) {
    for (const [code, text] of Object.entries(table)) {
      if (messages.has(code)) throw new Error(`message ${code} is written twice`);
      messages.set(code, text);
    }
  }
  return {
    sentence(issue) {
      const text = messages.get(issue.code);
      if (text === undefined && otherwise) return otherwise.sentence(issue);
      if (text === undefined) throw new Error(`no message for issue ${issue.code}`);
      const sentence = text.replace(/\{(\w+)(?:\|([^|}]*)\|([^|}]*))?\}/g, (_, name: string, one?: string, many = '') =>
        one === undefined ? formatFact(name === 'where' ? issue.where : issue.facts?.[name], terms, decimalSign) : issue.facts?.[name] === 1 ? one : many,
      );
      return issue.mendedBy === 'field' ? withFieldNames(sentence) : sentence;
    },
  };
}

/** Numbers with at most three decimals and no trailing zeros; a word or a list of words as the terms say. */
function formatFact(fact: string | number | undefined, terms: Readonly<Record<string, string>>, decimalSign: string): string {
  if (fact === undefined) return '?';
  return typeof fact === 'number' ? String(Math.round(fact * 1000) / 1000).replace('.', decimalSign) : (terms[fact] ?? fact.split(', ').map((part) => terms[part] ?? part).join(', '));
}
