/**
 * How work, processor time and memory grow with the number of blanks: rounds of falling size on one sheet, 4 to 2 000 of them,
 * each in a process of its own. Writes docs/growth.svg. Usage: tsx bench/growth.ts [effort]
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { solve } from '../src/nesting/solve.ts';
import type { Effort } from '../src/nesting/effort.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';
import { problemOf, roundOutline } from '../tests/support/problems.ts';
import { printMachine } from './harness.ts';

interface Row {
  readonly ups: number;
  readonly limit: number;
  readonly work: number;
  readonly seconds: number;
  readonly megabytes: number;
}

const DIAMETERS = [330, 215, 150, 105, 72, 50, 36, 25.5, 18];
const [effort = 'quick', one] = process.argv.slice(2);

if (one) console.log(JSON.stringify(await measureOne(Number(one))));
else {
  printMachine();
  console.log(`rounds on 1000 × 700 mm, gap 2, effort ${effort}\n   ups limit    Mwork   cpu s     MB`);
  const rows = DIAMETERS.map((diameter) => {
    const { stdout, stderr, status } = spawnSync(process.execPath, ['--import', 'tsx', fileURLToPath(import.meta.url), effort, String(diameter)], { encoding: 'utf8' });
    if (status !== 0) throw new Error(stderr);
    const row = JSON.parse(stdout) as Row;
    console.log([String(row.ups).padStart(6), String(row.limit).padStart(5), row.work.toFixed(1).padStart(8), row.seconds.toFixed(2).padStart(7), row.megabytes.toFixed(0).padStart(6)].join(' '));
    return row;
  });
  writeFileSync(join(import.meta.dirname, '..', 'docs', 'growth.svg'), picture(rows));
}

async function measureOne(diameter: number): Promise<Row> {
  const problem = problemOf(roundOutline(diameter, 72), [1000, 700], 2, [0]);
  const started = process.cpuUsage();
  const { best, limit, work } = await solve(problem, { effort: effort as Effort, seed: 1, runner: inlineRunner(), stop: () => undefined });
  const { user, system } = process.cpuUsage(started);
  return { ups: best?.figures.ups ?? 0, limit: limit?.ups ?? 0, work: work / 1e6, seconds: (user + system) / 1e6, megabytes: process.resourceUsage().maxRSS / 1024 };
}

/** Both axes by powers of ten; seconds as a full line, memory in hundreds of megabytes as a broken one. */
function picture(rows: readonly Row[]): string {
  const [width, height, left, base] = [520, 260, 60, 220];
  const x = (ups: number) => left + (Math.log10(ups) * (width - left - 20)) / Math.log10(2500);
  const y = (value: number) => base - ((Math.log10(value) + 1) * (base - 20)) / 3;
  const line = (value: (row: Row) => number) => rows.map((row, k) => `${k === 0 ? 'M' : 'L'}${x(row.ups).toFixed(1)} ${y(Math.max(0.1, value(row))).toFixed(1)}`).join(' ');
  const dots = (value: (row: Row) => number) => rows.map((row) => `<circle cx="${x(row.ups).toFixed(1)}" cy="${y(Math.max(0.1, value(row))).toFixed(1)}" r="2.5"/>`).join('');
  const across = [1, 10, 100, 1000].map((ups) => `<path d="M${x(ups).toFixed(1)} 20V${base}" class="grid"/><text x="${x(ups).toFixed(1)}" y="${base + 16}" text-anchor="middle">${ups}</text>`);
  const up = [0.1, 1, 10, 100].map((value) => `<path d="M${left} ${y(value).toFixed(1)}H${width - 20}" class="grid"/><text x="${left - 6}" y="${(y(value) + 4).toFixed(1)}" text-anchor="end">${value}</text>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="11">
<style>.grid{stroke:#bbb;stroke-width:.5}.line{fill:none;stroke:#222;stroke-width:1.5}</style>
<rect width="${width}" height="${height}" fill="#fff"/>
${[...across, ...up].join('\n')}
<path class="line" d="${line(({ seconds }) => seconds)}"/>${dots(({ seconds }) => seconds)}
<path class="line" stroke-dasharray="5 3" d="${line(({ megabytes }) => megabytes / 100)}"/>${dots(({ megabytes }) => megabytes / 100)}
<path class="line" d="M${left + 14} 34h26"/><text x="${left + 48}" y="38">processor seconds, effort ${effort}</text>
<path class="line" stroke-dasharray="5 3" d="M${left + 14} 52h26"/><text x="${left + 48}" y="56">memory, hundreds of megabytes</text>
<text x="${(left + width - 20) / 2}" y="${base + 34}" text-anchor="middle">blanks on the sheet</text>
</svg>
`;
}
