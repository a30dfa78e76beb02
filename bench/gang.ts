/**
 * Versions on equal stations: the published lists with their optima, then invented lists of 30 and 50 designs. Usage:
 * tsx bench/gang.ts
 */
import { createRandom } from '../src/base/random.ts';
import { planVersions, type VersionsTask } from '../src/estimate/gang/plan-versions.ts';
import { printMachine } from './harness.ts';
import published from '../tests/reference/gang-run.json' with { type: 'json' };

printMachine();
for (const { name, slots, demands, optimum } of published.instances) {
  for (const [forms, best] of Object.entries(optimum)) if (/^\d+$/.test(forms)) show(name, { stations: slots, quantities: demands, forms: Number(forms) }, Number(best));
}
for (const [designs, seed] of [[30, 1], [50, 2]] as const) {
  const random = createRandom(seed);
  const rough = Array.from({ length: designs }, () => 10 * Math.round(5 + 25 * random.unit() ** 2));
  const exact = Array.from({ length: designs }, () => Math.round(1000 + 90_000 * random.unit() ** 3));
  for (const stations of [42, 60]) {
    for (const forms of [1, 2, 3]) {
      if (designs > stations * forms) continue;
      show(`${designs} designs in tens`, { stations, quantities: rough, forms });
      show(`${designs} designs to the piece`, { stations, quantities: exact, forms });
    }
  }
  show(`${designs} designs to the piece`, { stations: 24, quantities: exact, forms: 4 });
}

function show(name: string, task: VersionsTask, best?: number): void {
  const start = process.cpuUsage();
  const { pressings, lowerBound, optimal } = planVersions(task);
  const { user, system } = process.cpuUsage(start);
  const known = best === undefined ? '' : pressings === best ? ', as published' : `, PUBLISHED ${best}`;
  console.log(`${name.padEnd(26)} ${String(task.stations).padStart(2)} up, ${task.forms} forms: ${String(pressings).padStart(6)}, ${optimal ? 'proved' : `at least ${lowerBound}`}${known}  ${((user + system) / 1e6).toFixed(2)} s`);
}
