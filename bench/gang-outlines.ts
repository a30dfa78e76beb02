/**
 * Different outlines on one form: pressings found, the least that is proved, and processor time; three designs of the
 * samples and six. Usage: tsx bench/gang-outlines.ts [effort]
 */
import type { Effort } from '../src/nesting/effort.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';
import { gangOutlines } from '../src/pipeline/gang/outlines.ts';
import { readOutlinesJob } from '../src/pipeline/gang/outlines-job.ts';
import { readSample } from '../tests/support/sample-figures.ts';
import { printMachine } from './harness.ts';

const [effort = 'quick'] = process.argv.slice(2) as [Effort?];
const QUANTITIES = { 'reverse-tuck-small': 12_000, 'straight-tuck-small': 20_000, sleeve: 8000, 'reverse-tuck-medium': 9000, 'straight-tuck-medium': 6000, tray: 5000 };

printMachine();
for (const count of [3, 6]) {
  const designs = Object.entries(QUANTITIES).slice(0, count).map(([id, quantity]) => ({ file: `${id}.svg`, id, quantity, rotations: [0, 180] }));
  const files = { json: () => undefined, drawing: async (file: string) => readSample(file), nameOf: (file: string) => file };
  const job = await readOutlinesJob({ sheet: '1020x720', gap: 5, forms: 2, designs }, 'bench', files);
  const before = process.cpuUsage();
  const { pressings, lowerBound, separate } = await gangOutlines(job, { effort, seed: 1, runner: inlineRunner(), stop: () => undefined });
  const { user, system } = process.cpuUsage(before);
  const open = ((100 * (pressings - lowerBound)) / lowerBound).toFixed(0);
  console.log(`${count} designs, 2 forms, ${effort}: ${pressings} pressings, at least ${lowerBound} (${open} % open); each by itself ${separate?.pressings ?? '?'}  ${((user + system) / 1e6).toFixed(1)} s`);
}
