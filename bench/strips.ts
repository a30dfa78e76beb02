/**
 * Published strip-packing instances (ESICUP data sets, CC0-1.0) against published densities and lengths. The instances are
 * not part of the repository: give their folder. Usage: tsx bench/strips.ts FOLDER [effort] [names …]
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { toMicrons } from '../src/base/units.ts';
import { turnOfDegrees } from '../src/geometry/turn.ts';
import type { Problem } from '../src/layout/problem.ts';
import type { Effort } from '../src/nesting/effort.ts';
import { solveStrip } from '../src/nesting/strip.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';

interface Instance {
  readonly stripHeight: number;
  readonly items: readonly { readonly id: string | number; readonly quantity: number; readonly allowedRotationsDeg: readonly number[]; readonly area: number; readonly polygon: readonly (readonly [number, number])[] }[];
}

/** Best and mean density of 2025 and the mean of 2013 in %, where there are; else the proved or known length in the instance's units. */
const KNOWN: Readonly<Record<string, string>> = {
  albano: '2025: 89.82 / 89.47 %, 2013: 87.47 %, 2006: 10074',
  dagli: '2025: 90.17 / 89.26 %, 2013: 87.06 %, 2006: 59.32',
  dighe1: 'jigsaw: 100',
  dighe2: 'jigsaw: 100',
  fu: '2025: 92.41 / 92.24 %, 2013: 90.68 %, 2006: 32.54',
  jakobs1: '2025: 89.26 / 89.09 %, 2013: 88.90 %',
  mao: '2025: 86.87 / 86.14 %, 2013: 82.93 %, 2006: 1819',
  marques: '2025: 92.02 / 90.93 %, 2013: 89.40 %, 2006: 80.49',
  shapes0: '2025: 69.98 / 68.60 %, 2013: 67.26 %, 2006: 62',
  three: 'proved, quarter turns: 5.4',
  threep2: 'proved, quarter turns: 9.1111',
  threep2w9: 'proved, quarter turns: 7.0833',
};

/** Millimetres a unit is drawn as. */
const SCALE = 100;

const [folder, effort = 'quick', ...names] = process.argv.slice(2);
for (const name of names.length > 0 ? names : Object.keys(KNOWN)) {
  const instance = JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8')) as Instance;
  const started = process.cpuUsage();
  const solution = await solveStrip(problemOf(instance), { effort: effort as Effort, seed: 1, runner: inlineRunner(), stop: () => undefined });
  const { user, system } = process.cpuUsage(started);
  const length = solution.length / 1000 / scaleOf(instance);
  const area = instance.items.reduce((sum, item) => sum + item.area * item.quantity, 0);
  const density = (100 * area) / (length * instance.stripHeight);
  console.log(`${name.padEnd(10)} length ${length.toFixed(4)} density ${density.toFixed(2)} % bound ${(solution.lowerBound / 1000 / scaleOf(instance)).toFixed(3)} ${((user + system) / 1e6).toFixed(1)} s, ${(solution.work / 1e6).toFixed(0)} M  [${KNOWN[name] ?? ''}]`);
}

/** Large drawings keep their unit: the strip shall be at most some metres wide. */
function scaleOf({ stripHeight }: Instance): number {
  return stripHeight * SCALE > 6000 ? 1 : SCALE;
}

function problemOf(instance: Instance): Problem {
  const scale = scaleOf(instance);
  const parts = instance.items.map(({ id, polygon, allowedRotationsDeg }) => {
    const ring = polygon.map(([x, y]) => ({ x: toMicrons(x * scale), y: toMicrons(y * scale) }));
    const [left, low] = [Math.min(...ring.map((p) => p.x)), Math.min(...ring.map((p) => p.y))];
    return { id: String(id), outline: ring.map((p) => ({ x: p.x - left, y: p.y - low })), openings: [], turns: allowedRotationsDeg.map((degrees) => turnOfDegrees(degrees)!) };
  });
  const longest = parts.reduce((sum, { outline }, k) => sum + Math.max(...outline.map((p) => Math.max(p.x, p.y))) * instance.items[k].quantity, 0);
  const area = { minX: 0, minY: 0, maxX: Math.min(longest, 16_000_000), maxY: toMicrons(instance.stripHeight * scale) };
  return {
    sheet: { width: area.maxX, height: area.maxY },
    usable: area,
    printable: area,
    lay: 'left',
    keepOuts: [],
    rules: { gap: 0, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    parts,
    demand: { kind: 'counts', counts: instance.items.map(({ quantity }) => quantity) },
    locked: [],
    symmetry: 'none',
  };
}
