/**
 * Forty sheets against one: the counted work of `compare` in parts of one `nest` at the same effort, on the usual sheet.
 * Usage: tsx bench/compare.ts [effort] [drawing …]
 */
import { budgetOf, type Effort } from '../src/nesting/effort.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';
import { compareSheets } from '../src/pipeline/compare.ts';
import { nest } from '../src/pipeline/nest.ts';
import { squareMetres, type SheetCandidate } from '../src/press/sheet-candidates.ts';
import { GERMAN_TABLE } from '../src/press/waste-table.ts';
import { DEMO_RATES } from '../src/press/rates.ts';
import { readSample } from '../tests/support/sample-figures.ts';
import { printMachine } from './harness.ts';

const SHEETS = 40;
const MOST = 4;
const [effort = 'quick', ...names] = process.argv.slice(2) as [Effort?, ...string[]];
const drawings = names.length > 0 ? names : ['reverse-tuck-small.svg', 'window-carton.svg', 'crash-lock.svg'];
const search = { effort, seed: 1, runner: inlineRunner(), stop: () => undefined };
const candidates = Array.from({ length: SHEETS }, (_, i): SheetCandidate => {
  const sheet = { width: 1020 - 9 * i, height: 720 - 6 * i };
  return { sheet, grain: undefined, origin: { kind: 'stock' }, boughtM2: squareMetres(sheet) };
});
const terms = { quantities: [5000, 20_000, 100_000], route: { colours: 4, varnishUnits: 0, stages: ['die-cutting' as const] }, grammage: 300, pricePerTonne: 900, currency: 'EUR', waste: GERMAN_TABLE, rates: DEMO_RATES };

printMachine();
const { patterns, free } = budgetOf(effort);
console.log(`effort ${effort}: one nest may count ${((patterns + free) / 1e6).toFixed(0)} M`);
for (const name of drawings) {
  const drawing = readSample(name);
  const job = { id: name, blank: drawing.blanks[0], drawing, settings: {}, machines: {} };
  const beforeNest = process.cpuUsage();
  const { solution } = await nest({ ...job, sheet: candidates[0].sheet, layouts: 1 }, search);
  const nestSeconds = process.cpuUsage(beforeNest).user / 1e6;
  const beforeAll = process.cpuUsage();
  const { work, compared, winners } = await compareSheets({ ...job, candidates, ranges: [], toleranceMm: 0, terms }, search);
  const seconds = process.cpuUsage(beforeAll).user / 1e6;
  const ratio = work / solution.work;
  const checksum = compared.reduce((sum, { ups }) => (Math.imul(sum, 31) + ups) >>> 0, 0).toString(16);
  console.log(`${name.padEnd(24)} nest ${(solution.work / 1e6).toFixed(1)} M in ${nestSeconds.toFixed(1)} s; compare ${(work / 1e6).toFixed(1)} M in ${seconds.toFixed(1)} s: ${ratio.toFixed(2)} of at most ${MOST}${ratio > MOST ? '  TOO MUCH' : ''}  winners ${winners.length}, checksum ${checksum}`);
}
