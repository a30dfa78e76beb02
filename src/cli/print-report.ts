import type { Report } from '../render/report.ts';
import { reportText } from '../render/report-text.ts';
import { terminalStyle } from './terminal-style.ts';

export function printReport(report: Report): void {
  process.stdout.write(`${reportText(report, terminalStyle()).join('\n')}\n`);
}
