import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { createCatalogue, type Catalogue } from '../../render/messages/catalogue.ts';
import type { Issue } from '../../base/issue.ts';
import type { KeptLayout } from '../job/job.ts';
import { createFormat, type Format, type LengthUnit } from '../../render/format.ts';
import { english } from '../../render/messages/english.ts';
import { englishDesk, type DeskWord } from '../../render/messages/english-desk.ts';
import { englishHand } from '../../render/messages/english-hand.ts';
import { englishNearMiss, type NearMissWords } from '../../render/messages/english-near-miss.ts';
import type { HandWords } from '../../render/messages/hand-words.ts';
import { germanDesk } from '../../render/messages/german-desk.ts';
import { keepTogether, keptTogether } from '../../render/no-break.ts';
import { german, germanFacts } from '../../render/messages/german-catalogue.ts';
import { germanNearMiss } from '../../render/messages/german-near-miss.ts';
import { germanReport } from '../../render/messages/german-report.ts';
import { germanStyles } from '../../render/messages/german-styles.ts';
import { sourceName } from '../../render/messages/source-name.ts';
import { germanHand } from '../../render/messages/german-hand.ts';

export const LOCALES = ['en', 'de'] as const;
export type Locale = (typeof LOCALES)[number];

/** Dates are read in Europe: day before month, twenty-four hours. */
export function dateLocale(locale: Locale): string {
  return locale === 'en' ? 'en-GB' : locale;
}

/** Everything the desk says in one language. */
export interface Words {
  readonly locale: Locale;
  readonly format: Format;
  /** `{name}` in the text is replaced by the fact of that name. */
  say(word: DeskWord, facts?: Readonly<Record<string, string | number>>): string;
  /** What is wrong or doubtful, in the desk's own terms: options of the command line become fields. */
  issue(issue: Issue): string;
  /** A word or sentence that stands with a style of blank. */
  styleText(text: string): string;
  /** How a layout came about, in the person's words. */
  foundBy(layout: Pick<KeptLayout, 'source' | 'byHand' | 'changed' | 'file'>): string;
  /** The single change that a layout shows. */
  changeOf(layout: Pick<KeptLayout, 'changed' | 'file'>): string;
  readonly nearMiss: NearMissWords;
  /** A role in the person's words; one without words keeps its ISO 19593-1 name. */
  roleName(role: string): string;
}

const TABLES: Readonly<Record<Locale, Readonly<Record<DeskWord, string>>>> = { en: englishDesk, de: germanDesk };

export function wordsIn(locale: Locale, unit: LengthUnit = 'mm'): Words {
  const table = TABLES[locale];
  const format = keptTogether(createFormat(locale, unit));
  const nearMiss = NEAR_MISSES[locale];
  const catalogue = createCatalogue([table], { decimalSign: locale === 'de' ? ',' : '.' });
  const changeOf: Words['changeOf'] = ({ changed, file }) => (changed ? nearMiss.change({ ...changed, layout: file }, format) : '');
  // Names that a person typed are said as they are; facts of issues are worded.
  const ownIssues = locale === 'de' ? createCatalogue([table], germanFacts) : catalogue;
  return {
    locale,
    format,
    nearMiss,
    changeOf,
    say: (word, facts) => keepTogether(catalogue.sentence({ code: word, severity: 'note', ...(facts && { facts }) }, unit)),
    styleText: (text) => (locale === 'de' ? (germanStyles[text] ?? text) : text),
    foundBy: ({ source, byHand, changed, file }) => {
      if (byHand) return table['by-hand'];
      if (changed) return changeOf({ changed, file });
      return locale === 'de' ? sourceName(germanReport.sources, source) : source;
    },
    roleName: (role) => (Object.hasOwn(table, `role-${role}`) ? table[`role-${role}` as DeskWord] : role),
    issue: (issue) => {
      const sentence = Object.hasOwn(table, `issue-${issue.code}`) ? ownIssues.sentence({ ...issue, code: `issue-${issue.code}` }, unit) : ISSUES[locale].sentence(issue, unit);
      return keepTogether(sentence.replace(/--([a-z-]+)/g, (option, name: string) => fieldOf(name, table) ?? option));
    },
  };
}

/** Options whose field on the desk has a name of its own. */
const FIELDS: Readonly<Record<string, DeskWord>> = {
  sheet: 'field-size', gripper: 'field-gripper', tail: 'field-tail', 'side-margins': 'field-sides', gap: 'field-gap', bleed: 'field-bleed', 'bleed-meeting': 'field-bleed-meeting',
  bar: 'field-bar', rotations: 'field-rotations', grain: 'field-grain', 'sheet-grain': 'field-sheet-grain', board: 'field-board', 'width-is': 'field-width-is', scale: 'field-width-is',
  blank: 'field-blank', role: 'field-role', 'close-gaps': 'field-close-gaps', page: 'field-page', effort: 'field-effort', 'ink-tail': 'field-inkTail',
};

function fieldOf(option: string, table: Readonly<Record<DeskWord, string>>): string | undefined {
  const word = FIELDS[option];
  return word && `“${table[word]}”`;
}

const NEAR_MISSES: Readonly<Record<Locale, NearMissWords>> = { en: englishNearMiss, de: germanNearMiss };
const ISSUES: Readonly<Record<Locale, Catalogue>> = { en: english, de: german };
const HAND: Readonly<Record<Locale, HandWords>> = { en: englishHand, de: germanHand };

/** Words of the hand. */
export function handWordsIn(locale: Locale): HandWords {
  return HAND[locale];
}

export const WordsContext = createContext<Words>(wordsIn('en'));

export function useWords(): Words {
  return useContext(WordsContext);
}
