/**
 * Forty sheets against one: what `compare` costs in parts of one `nest` at the same effort, in counted work and in processor
 * time. Some sheets are closed by a limit at once and cost a `nest` next to nothing, so one `nest` is the mean over a few of
 * the forty sheets; each runs on a drawing read afresh, so that nothing is remembered from the one before.
 * Usage: tsx bench/compare.ts [effort] [drawing …]
 */
import type { Effort } from '../src/nesting/effort.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';
import { compareSheets } from '../src/pipeline/compare.ts';
import { nest } from '../src/pipeline/nest.ts';
import { squareMetres, type SheetCandidate } from '../src/press/sheet-candidates.ts';
import { GERMAN_TABLE } from '../src/press/waste-table.ts';
import { DEMO_RATES } from '../src/press/demo-rates.ts';
import { readSample } from '../tests/support/sample-figures.ts';
import { printMachine } from './harness.ts';

const SHEETS = 40;
const MOST = 4;
/** Sheets whose `nest` is measured. */
const NESTED = [0, 13, 26, 39];
const SHORT = ['reverse-tuck-small.svg', 'window-carton.svg', 'crash-lock.svg', 'hanging-card.svg', 'label-rounded.svg'];

const [effort = 'quick', ...names] = process.argv.slice(2) as [Effort?, ...string[]];
const drawings = names.length > 0 ? names : SHORT;
const candidates = Array.from({ length: SHEETS }, (_, i): SheetCandidate => {
  const sheet = { width: 1020 - 9 * i, height: 720 - 6 * i };
  return { sheet, grain: undefined, origin: { kind: 'stock' }, boughtM2: squareMetres(sheet) };
});
const terms = { quantities: [5000, 20_000, 100_000], route: { colours: 4, varnishUnits: 0, stages: ['die-cutting' as const] }, grammage: 300, pricePerTonne: 900, currency: 'EUR', waste: GERMAN_TABLE, rates: DEMO_RATES };

interface Spent {
  readonly work: number;
  readonly seconds: number;
}

const freshSearch = () => ({ effort, seed: 1, runner: inlineRunner(), stop: () => undefined });

function freshJob(name: string) {
  const drawing = readSample(name);
  return { id: name, blank: drawing.blanks[0], drawing, settings: {}, machines: {} };
}

async function timed<T>(run: () => Promise<T>): Promise<{ answer: T; seconds: number }> {
  const before = process.cpuUsage();
  const answer = await run();
  const { user, system } = process.cpuUsage(before);
  return { answer, seconds: (user + system) / 1e6 };
}

async function oneNest(name: string): Promise<Spent> {
  const spent: Spent[] = [];
  for (const index of NESTED) {
    const { answer, seconds } = await timed(() => nest({ ...freshJob(name), sheet: candidates[index].sheet, layouts: 1 }, freshSearch()));
    spent.push({ work: answer.solution.work, seconds });
  }
  const mean = (of: (one: Spent) => number) => spent.reduce((sum, one) => sum + of(one), 0) / spent.length;
  return { work: mean(({ work }) => work), seconds: mean(({ seconds }) => seconds) };
}

const million = (work: number) => `${(work / 1e6).toFixed(1)} M`;
const ratio = (all: number, one: number) => `${(all / one).toFixed(2)}${all > MOST * one ? ' TOO MUCH' : ''}`;

printMachine();
// Warmed up, so that the first drawing does not pay for compiling the code.
await nest({ ...freshJob(drawings[0]), sheet: candidates[0].sheet, layouts: 1 }, { ...freshSearch(), effort: 'quick' });
console.log(`effort ${effort}; ${SHEETS} sheets in parts of one nest, at most ${MOST}`);
for (const name of drawings) {
  const one = await oneNest(name);
  const { answer, seconds } = await timed(() => compareSheets({ ...freshJob(name), candidates, ranges: [], toleranceMm: 0, terms }, freshSearch()));
  const { work, compared, winners } = answer;
  const checksum = compared.reduce((sum, { ups }) => (Math.imul(sum, 31) + ups) >>> 0, 0).toString(16);
  console.log(
    `${name.padEnd(24)} nest ${million(one.work)}, ${one.seconds.toFixed(2)} s; compare ${million(work)}, ${seconds.toFixed(2)} s: work ${ratio(work, one.work)}, time ${ratio(seconds, one.seconds)}  winners ${winners.length}, checksum ${checksum}`,
  );
}
