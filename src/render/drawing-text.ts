import type { Issue } from '../base/issue.ts';
import type { Blank, Dieline, Role } from '../dieline/dieline.ts';
import type { ReadOptions } from '../dieline/options.ts';
import { ruleLengths } from '../dieline/rule-lengths.ts';
import { JOIN_TOLERANCE_MM } from '../dieline/tolerances.ts';
import { numberFaults } from './fault-numbers.ts';
import { createFormat, type Format } from './format.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';

/** The drawing as understood, for people: blanks with their figures, then what was assumed, then faults with places. */
export function drawingText(file: string, dieline: Dieline, options: ReadOptions, language: Language = englishLanguage): string {
  const { blanks, scale, grain, fingerprint, yAxis } = dieline;
  const { drawing: words, locale } = language;
  const { labels } = words;
  const format = createFormat(locale);
  const parts = [
    [words.title(file, blanks.length)],
    ...blanks.map((blank) => describeBlank(blank, blanks.length > 1, yAxis, language, format)),
    [
      row(labels.scale, words.scale(scale.mmPerUnit, scale.from, format)),
      row(labels.grain, words.grain(grain)),
      row(labels.tolerances, words.tolerances(JOIN_TOLERANCE_MM, options.closeGaps, format)),
      row(labels.fingerprint, fingerprint.slice(0, 16)),
    ],
    listIssues(dieline.issues, language, format),
  ];
  return `${parts.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function row(name: string, text: string): string {
  return `  ${name.padEnd(14)}${text}`;
}

function describeBlank(blank: Blank, numbered: boolean, yAxis: Dieline['yAxis'], { drawing: words, locale, picture }: Language, format: Format): string[] {
  const { box, areaMm2, openings } = blank;
  const { labels } = words;
  const corner = [format.bareLength(box.minX), format.bareLength(yAxis === 'up' ? box.minY : -box.maxY)] as const;
  const lengths = Object.entries(ruleLengths(blank)).sort(([, a], [, b]) => b - a);
  // English lists roles by the names that options and other programs use.
  const named = (role: string) => (locale === englishLanguage.locale ? role : (picture.roles[role as Role] ?? role));
  return [
    ...(numbered ? [words.blank(blank.number, yAxis, corner)] : []),
    row(labels.size, format.size(box.maxX - box.minX, box.maxY - box.minY)),
    row(labels.area, words.area(format.area(areaMm2), openings.length)),
    row(labels.openings, String(openings.length)),
    ...lengths.map(([role, length], i) => row(i === 0 ? labels.rules : '', `${named(role).padEnd(18)}${format.length(length).padStart(12)}`)),
  ];
}

function listIssues(issues: readonly Issue[], { drawing: words, issues: catalogue }: Language, format: Format): string[] {
  const numbers = numberFaults(issues);
  const width = Math.max(...Object.values(words.severity).map((name) => name.length)) + 1;
  const separator = format.number(0.5, 1).includes(',') ? '; ' : ', ';
  return issues.map((issue) => {
    const number = numbers.get(issue);
    const place = issue.place ? ` ${words.at(issue.place.map((value) => format.number(value, 2, true)).join(separator))}` : '';
    return `${number === undefined ? '    ' : String(number).padStart(3)} ${words.severity[issue.severity].padEnd(width)}${catalogue.sentence(issue)}${place}`;
  });
}
