/**
 * What limits are worth: outlines by sheet by rotations; ups of a quick search, area, closed form, clique cover, how long it took; every cover is checked.
 * Usage: tsx bench/limits.ts [coarse|fine] [first job] [last job]; without jobs the outlines whose values are known.
 */
import { cpus } from 'node:os';
import type { Limit, Problem } from '../src/layout/problem.ts';
import { cliqueLimit, COARSE, FINE } from '../src/nesting/limits/clique-limit.ts';
import { closedFormLimits } from '../src/nesting/limits/closed-form.ts';
import { solve } from '../src/nesting/solve.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';
import { checkLimit } from '../src/proof/check.ts';
import { generatedJob } from '../tests/support/carton-generator.ts';
import { problemOf, type PointMm } from '../tests/support/problems.ts';
import { statedProblem } from '../tests/support/stated.ts';

/** Processor seconds after which the fine cover of one case is left. */
const PATIENCE_S = 60;

interface Case {
  readonly name: string;
  readonly problem: Problem;
}

const TEE: PointMm[] = [[40, 0], [80, 0], [80, 80], [120, 80], [120, 120], [0, 120], [0, 80], [40, 80]];
const CROSS: PointMm[] = [[40, 0], [80, 0], [80, 40], [120, 40], [120, 80], [80, 80], [80, 120], [40, 120], [40, 80], [0, 80], [0, 40], [40, 40]];
const PENTAGON = Array.from({ length: 5 }, (_, k): PointMm => [60 + 60 * Math.cos(((18 + 72 * k) * Math.PI) / 180), 60 + 60 * Math.sin(((18 + 72 * k) * Math.PI) / 180)]);
/** Glue flap 10, panels 60, 40, 60, 40 by 90, tucks 40 and dust flaps 25 deep. */
const TUCK: PointMm[] = [
  [0, 45], [10, 40], [70, 40], [70, 15], [110, 15], [110, 0], [170, 0], [170, 15], [210, 15], [210, 155],
  [170, 155], [170, 130], [110, 130], [110, 155], [70, 155], [70, 170], [10, 170], [10, 130], [0, 125],
];
const HALF_TURN = [0, 2] as const;
const ALL = [0, 1, 2, 3] as const;

const KNOWN: readonly Case[] = [
  { name: 'T 600x420', problem: problemOf(TEE, [600, 420], 4, HALF_TURN) },
  { name: 'T 600x420 all', problem: problemOf(TEE, [600, 420], 4, ALL) },
  { name: 'cross 600x420', problem: problemOf(CROSS, [600, 420], 4, HALF_TURN) },
  { name: 'pentagon 600x420', problem: problemOf(PENTAGON, [600, 420], 4, HALF_TURN) },
  { name: 'pentagon 600x420 all', problem: problemOf(PENTAGON, [600, 420], 4, ALL) },
  { name: 'reverse tuck 600x420', problem: problemOf(TUCK, [600, 420], 4, HALF_TURN) },
  { name: 'reverse tuck 600x420 all', problem: problemOf(TUCK, [600, 420], 4, ALL) },
  { name: 'reverse tuck 420x300', problem: problemOf(TUCK, [420, 300], 4, HALF_TURN) },
  { name: 'reverse tuck 1020x700', problem: problemOf(TUCK, [1020, 700], 6, HALF_TURN) },
];

const [depth = 'coarse', first, last = first] = process.argv.slice(2);
const totals = { cases: 0, gap: 0, closed: 0, few: 0, fewClosed: 0 };
console.log(`node ${process.version}, ${cpus()[0]?.model}, ${depth}`);
console.log('case                       ups limit by           area  closed form     cover rounds  work M   cpu s  checker s');
for (const one of first === undefined ? KNOWN : jobs(Number(first), Number(last))) await show(one);
console.log(
  `closed ${totals.closed} of ${totals.cases}, up to 15 ups ${totals.fewClosed} of ${totals.few}, mean (limit − ups)/ups ${((100 * totals.gap) / totals.cases).toFixed(2)} %`,
);

/** Made-up jobs. */
function jobs(from: number, to: number): Case[] {
  return Array.from({ length: to - from + 1 }, (_, k) => {
    const { name, problem } = generatedJob(from + k);
    return { name: `${from + k} ${name} ${problem.parts[0]!.turns.join('')}`, problem };
  });
}

async function show({ name, problem }: Case): Promise<void> {
  const { best } = await solve(problem, { effort: 'quick', seed: 1, runner: inlineRunner(), stop: () => undefined });
  if (!best) return;
  const { ups } = best.figures;
  const closedForms = closedFormLimits(problem);
  const area = closedForms.find((limit) => limit.by === 'area')!;
  const { limit, rounds, work, seconds } = await cover(problem, ups);
  const started = process.cpuUsage();
  const checked = limit && checkLimit(limit.certificate, statedProblem(problem));
  const checking = secondsSince(started);
  if (limit && !(checked?.ok && checked.ups === limit.ups)) throw new Error(`${name}: the checker does not agree`);
  const least = limit && limit.ups < closedForms[0]!.ups ? limit : closedForms[0]!;
  totals.cases++;
  totals.gap += (least.ups - ups) / ups;
  totals.closed += least.ups === ups ? 1 : 0;
  totals.few += ups <= 15 ? 1 : 0;
  totals.fewClosed += ups <= 15 && least.ups === ups ? 1 : 0;
  console.log(
    [
      name.padEnd(26), String(ups).padStart(3), String(least.ups).padStart(5), least.by.padEnd(10), area.value.toFixed(2).padStart(7),
      `${closedForms[0]!.value.toFixed(2)} ${closedForms[0]!.by}`.padStart(17), (limit?.value.toFixed(3) ?? '').padStart(9), String(rounds).padStart(6),
      (work / 1e6).toFixed(2).padStart(7), seconds.toFixed(1).padStart(7), checking.toFixed(2).padStart(7), least.ups < ups ? 'BEATEN' : '',
    ].join(' '),
  );
}

async function cover(problem: Problem, best: number): Promise<{ limit: Limit | undefined; rounds: number; work: number; seconds: number }> {
  const started = process.cpuUsage();
  let limit: Limit | undefined;
  let rounds = 0;
  let work = 0;
  for await (const step of cliqueLimit(problem, { best, seed: 1, depth: depth === 'fine' ? FINE : COARSE })) {
    rounds++;
    work += step.work;
    limit = step.limit ?? limit;
    if (secondsSince(started) > PATIENCE_S) break;
  }
  return { limit, rounds, work, seconds: secondsSince(started) };
}

function secondsSince(start: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}
