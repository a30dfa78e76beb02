/**
 * The two hundred made-up jobs: what a careful worker counts with rows, what the rows search and all pattern searches
 * find, against tests/nesting/expected-patterns.json. Usage: tsx bench/patterns.ts [from] [to] [--write]
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { packRectangles } from '../src/nesting/patterns/rectangles/pack-rectangles.ts';
import { patternSearches } from '../src/nesting/searches/patterns.ts';
import { rowsSearch } from '../src/nesting/searches/rows.ts';
import { layoutIsValid } from '../src/nesting/valid.ts';
import { generatedJob } from '../tests/support/carton-generator.ts';
import { mostOf, runSearches } from '../tests/support/run-patterns.ts';
import { handCount } from '../tests/support/slow-rows.ts';
import { printMachine } from './harness.ts';

interface Expected {
  readonly name: string;
  readonly byHand: number;
  readonly rows: number;
  readonly ups: number;
}

const JOBS = 200;
const file = new URL('../tests/nesting/expected-patterns.json', import.meta.url);
const [from = 0, to = JOBS] = process.argv.slice(2).filter((word) => /^\d+$/.test(word)).map(Number);
const isWriting = process.argv.includes('--write');
const expected: Expected[] = JSON.parse(readFileSync(file, 'utf8'));

const seconds = (start: NodeJS.CpuUsage) => process.cpuUsage(start).user / 1e6;

printMachine();
let [worse, better, checksum, total] = [0, 0, 0, 0];
for (let seed = from; seed < to; seed++) {
  const { name, problem } = generatedJob(seed);
  const known = expected[seed];
  const byHand = known?.name === name ? known.byHand : handCount(problem);
  const startRows = process.cpuUsage();
  const rows = mostOf(runSearches([rowsSearch], { ...problem }).candidates);
  const rowsTime = seconds(startRows);
  const startAll = process.cpuUsage();
  const { candidates, work } = runSearches(patternSearches.filter((search) => search.name !== 'rectangles'), { ...problem });
  const allTime = seconds(startAll);
  const best = mostOf(candidates);
  const ups = best?.placements.length ?? 0;
  const invalid = candidates.filter(({ placements }) => !layoutIsValid(problem, placements)).length;
  const found = { name, byHand, rows: rows?.placements.length ?? 0, ups };
  const isWorse = invalid > 0 || ups < byHand || (known !== undefined && (found.rows < known.rows || ups < known.ups));
  const isBetter = known !== undefined && (found.rows > known.rows || ups > known.ups);
  worse += isWorse ? 1 : 0;
  better += isBetter ? 1 : 0;
  total += ups;
  checksum = (Math.imul(checksum, 31) + ups) >>> 0;
  console.log(
    `${String(seed).padStart(3)} ${name.padEnd(18)} hand ${String(byHand).padStart(3)} rows ${String(found.rows).padStart(3)} (${rowsTime.toFixed(2)} s) all ${String(ups).padStart(3)} (${allTime.toFixed(2)} s, ${(work / 1e6).toFixed(2)} M)  ${best?.source ?? ''}${isWorse ? '  WORSE' : isBetter ? '  better' : ''}${invalid > 0 ? `  ${invalid} INVALID` : ''}`,
  );
  expected[seed] = found;
}
console.log(`${total} ups, checksum ${checksum.toString(16)}; ${worse} worse, ${better} better than written down`);
if (isWriting) writeFileSync(file, `[\n${expected.map((row) => `  ${JSON.stringify(row)}`).join(',\n')}\n]\n`);

// The rectangle that takes longest to close.
const start = process.cpuUsage();
let hardest = 0;
for (const { boxes } of packRectangles(74, 46, 7, 5, 97)) hardest = boxes?.length ?? hardest;
console.log(`rectangles (74,46,7,5): ${hardest} of 97 in ${seconds(start).toFixed(2)} s`);
