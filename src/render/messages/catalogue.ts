import type { Issue } from '../../base/issue.ts';
import { MM_PER_INCH } from '../../base/units.ts';
import { lengthDecimals, type LengthUnit } from '../format.ts';
import { withFieldNames } from './field-names.ts';
import { textInInches, textInMillimetres } from './lengths-in.ts';
import { isFromOutside, reasonIn, type ReasonWords } from './foreign-reasons.ts';

/**
 * The one place where issue codes become sentences. A sentence says what is wrong, where, and what to do. Each language
 * is one table per area; `{name}` stands for a fact of the issue, lengths being in millimetres and known by their unit (`lengths-in.ts`);
 * `{count|line is|lines are}` for the first words where the fact is 1, else for the others.
 */
export type MessageTable = Readonly<Record<string, string>>;

export interface Catalogue {
  /** Whether there are words for a code. */
  knows(code: string): boolean;
  /** With its lengths in `unit`, by default in millimetres. */
  sentence(issue: Issue, unit?: LengthUnit): string;
}

export interface CatalogueOptions {
  /** Answers for codes that no table has. */
  readonly otherwise?: Catalogue;
  /** Words that stand for facts of the same name. */
  readonly terms?: Readonly<Record<string, string>>;
  /** The same for facts that are made of several words: a place in a drawing, the reason of a schema. */
  readonly phrase?: (text: string) => string;
  /** For reasons that libraries give; they stand as they come where there are none. */
  readonly reasons?: ReasonWords;
  readonly decimalSign?: string;
}

export function createCatalogue(tables: readonly MessageTable[], { otherwise, terms = {}, phrase = (text) => text, reasons, decimalSign = '.' }: CatalogueOptions = {}): Catalogue {
  const messages = new Map<string, Readonly<Record<LengthUnit, string>>>();
  const inches = (mm: number) => figure(mm / MM_PER_INCH, lengthDecimals(mm, 'in'), decimalSign);
  for (const table of tables) {
    for (const [code, text] of Object.entries(table)) {
      if (messages.has(code)) throw new Error(`message ${code} is written twice`);
      messages.set(code, { mm: textInMillimetres(text), in: textInInches(text, inches) });
    }
  }
  const formatFact = (fact: string | number | undefined, unit: string | undefined): string => {
    if (fact === undefined) return '?';
    if (unit === 'in²') return figure(Number(fact) / MM_PER_INCH ** 2, DECIMALS, decimalSign);
    if (typeof fact === 'number') return unit === 'in' ? inches(fact) : figure(fact, DECIMALS, decimalSign);
    if (unit === 'in') return fact.replace(/\d+(?:\.\d+)?/g, (mm) => inches(Number(mm)));
    return terms[fact] ?? phrase(fact.split(', ').map((part) => terms[part] ?? part).join(', '));
  };
  const factOf = (issue: Issue, name: string, length: string | undefined): string => {
    const fact = name === 'where' ? issue.where : issue.facts?.[name];
    return reasons && typeof fact === 'string' && isFromOutside(issue.code, name) ? reasonIn(reasons, fact) : formatFact(fact, length);
  };
  return {
    knows: (code) => messages.has(code) || otherwise?.knows(code) === true,
    sentence(issue, unit = 'mm') {
      const text = messages.get(issue.code)?.[unit];
      if (text === undefined && otherwise) return otherwise.sentence(issue, unit);
      if (text === undefined) throw new Error(`no message for issue ${issue.code}`);
      const sentence = text.replace(/\{(\w+)(?::([^|}]+))?(?:\|([^|}]*)\|([^|}]*))?\}/g, (_, name: string, length?: string, one?: string, many = '') =>
        one === undefined ? factOf(issue, name, length) : issue.facts?.[name] === 1 ? one : many,
      );
      return issue.mendedBy === 'field' ? withFieldNames(sentence) : sentence;
    },
  };
}

const DECIMALS = 3;

/** At most so many decimals and no trailing zeros. */
function figure(value: number, decimals: number, decimalSign: string): string {
  const scale = 10 ** decimals;
  return String(Math.round(value * scale) / scale + 0).replace('.', decimalSign);
}
