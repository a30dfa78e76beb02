import type { Issue } from '../base/issue.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import type { ReadOptions } from '../dieline/options.ts';
import { ruleLengths } from '../dieline/rule-lengths.ts';
import { JOIN_TOLERANCE_MM } from '../dieline/tolerances.ts';
import { numberFaults } from './fault-numbers.ts';
import { createFormat } from './format.ts';
import { english } from './messages/english.ts';

const format = createFormat('en');

/** The drawing as understood, for people: blanks with their figures, then what was assumed, then faults with places. */
export function drawingText(file: string, dieline: Dieline, options: ReadOptions): string {
  const { blanks, issues, scale, grain, fingerprint, yAxis } = dieline;
  const parts = [
    [`${file}: ${blanks.length === 1 ? 'one blank' : `${blanks.length} blanks`}`],
    ...blanks.map((blank) => describeBlank(blank, blanks.length > 1, yAxis)),
    [
      row('scale', `${format.number(scale.mmPerUnit, 6)} mm a user unit (${scale.from})`),
      row('grain', grain ? `along ${grain}` : 'not said'),
      row('tolerances', `ends within ${format.length(JOIN_TOLERANCE_MM)} are one; gaps up to ${format.length(options.closeGaps)} are closed and listed`),
      row('fingerprint', fingerprint.slice(0, 16)),
    ],
    listIssues(issues),
  ];
  return `${parts.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function row(name: string, text: string): string {
  return `  ${name.padEnd(14)}${text}`;
}

function describeBlank(blank: Blank, numbered: boolean, yAxis: Dieline['yAxis']): string[] {
  const { box, areaMm2, openings } = blank;
  const [corner, y] = yAxis === 'up' ? ['lower left', box.minY] : ['upper left', -box.maxY];
  const lengths = Object.entries(ruleLengths(blank)).sort(([, a], [, b]) => b - a);
  return [
    ...(numbered ? [`Blank ${blank.number}, ${corner} corner at ${format.bareLength(box.minX)}, ${format.bareLength(y)} mm`] : []),
    row('size', format.size(box.maxX - box.minX, box.maxY - box.minY)),
    row('area', `${format.area(areaMm2)}${openings.length > 0 ? ` (openings not taken off)` : ''}`),
    row('openings', String(openings.length)),
    ...lengths.map(([role, length], i) => row(i === 0 ? 'rules' : '', `${role.padEnd(18)}${format.length(length).padStart(12)}`)),
  ];
}

function listIssues(issues: readonly Issue[]): string[] {
  const numbers = numberFaults(issues);
  return issues.map((issue) => {
    const number = numbers.get(issue);
    const place = issue.place ? ` At ${issue.place.map((value) => value.toFixed(2)).join(', ')}.` : '';
    return `${number === undefined ? '    ' : String(number).padStart(3)} ${issue.severity.padEnd(8)}${english.sentence(issue)}${place}`;
  });
}
