/** What reading drawings costs: the samples, and cartons in loose shuffled segments. Usage: tsx bench/reading.ts */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createRandom } from '../src/base/random.ts';
import type { Dieline } from '../src/dieline/dieline.ts';
import { readSvgDrawing } from '../src/dieline/read-svg.ts';
import { ruleLengths } from '../src/dieline/rule-lengths.ts';
import { measure, printMachine } from './harness.ts';

printMachine();
const folder = join(import.meta.dirname, '..', 'samples', 'drawings');
for (const name of readdirSync(folder).filter((file) => file.endsWith('.svg'))) {
  const bytes = readFileSync(join(folder, name));
  measure(name, () => figures(readSvgDrawing(bytes)));
}
measure('10 000 loose segments, 25 blanks', ((bytes) => () => figures(readSvgDrawing(bytes)))(looseSegments(25)));
once('100 000 loose segments, 250 blanks', looseSegments(250));
once('100 000 loose segments, one blank', looseSegments(1, 100_000));

function figures({ blanks, issues }: Dieline): number[] {
  return [issues.length, ...blanks.flatMap((blank) => [blank.areaMm2, ...Object.values(ruleLengths(blank))])];
}

/** Flower-shaped outlines, each side a line of its own, in any order and direction. */
function looseSegments(blanks: number, sides = 400): Uint8Array {
  const random = createRandom(11);
  const size = 20 + sides / 8;
  const columns = Math.ceil(Math.sqrt(blanks));
  const lines: string[] = [];
  for (let blank = 0; blank < blanks; blank++) {
    const at = (side: number) => {
      const angle = (2 * Math.PI * side) / sides;
      const radius = size * (0.4 + 0.05 * Math.cos(9 * angle));
      const [x, y] = [((blank % columns) + 0.5) * size + radius * Math.cos(angle), (Math.floor(blank / columns) + 0.5) * size + radius * Math.sin(angle)];
      return [x.toFixed(3), y.toFixed(3)];
    };
    for (let side = 0; side < sides; side++) {
      const [[x1, y1], [x2, y2]] = random.below(2) === 0 ? [at(side), at((side + 1) % sides)] : [at((side + 1) % sides), at(side)];
      lines.push(`<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`);
    }
  }
  for (let i = lines.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    [lines[i], lines[j]] = [lines[j], lines[i]];
  }
  const extent = columns * size;
  return new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" width="${extent}mm" height="${extent}mm" viewBox="0 0 ${extent} ${extent}"><g id="cut" stroke="black">${lines.join('\n')}</g></svg>`);
}

/** Too long to be repeated: processor time of one call, and what it holds at most. */
function once(name: string, bytes: Uint8Array): void {
  const start = process.cpuUsage();
  const checksum = figures(readSvgDrawing(bytes)).reduce((sum, figure) => (Math.imul(sum, 31) + Math.round(figure)) >>> 0, 0);
  const { user, system } = process.cpuUsage(start);
  const megabytes = process.resourceUsage().maxRSS / 1024;
  console.log(`${name.padEnd(58)} ${((user + system) / 1e6).toFixed(2).padStart(9)} s, ${megabytes.toFixed(0)} MB at most  checksum ${checksum.toString(16)}`);
}
