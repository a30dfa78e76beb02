// The main job on the samples: a carton on board, then a label on light stock. Prints both reports and names the pictures.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const sample = (...path) => join(root, 'samples', ...path);
const folder = join(root, 'out', 'demo');
mkdirSync(folder, { recursive: true });

const jobs = [
  {
    title: 'Fernhollow Darjeeling, reverse tuck carton on 300 g/m² board',
    name: 'carton',
    args: [sample('drawings', 'reverse-tuck-small.svg'), '--sheet', '1020x720', '--press', sample('presses', 'b1-six-colours.json'), '--cutter', sample('cutters', 'b1-blanking.json'), '--board', sample('boards', 'folding-300.json')],
  },
  {
    title: 'Fernhollow ginger, oval jar label on 80 g/m² label stock',
    name: 'label',
    args: [sample('drawings', 'label-oval.svg'), '--sheet', '740x520', '--gap', '4', '--bleed', '2', '--press', sample('presses', 'b2-five-colours.json'), '--board', sample('boards', 'label-80.json')],
  },
];

const written = [];
for (const { title, name, args } of jobs) {
  const output = (ending) => {
    const path = join(folder, `${name}.${ending}`);
    written.push(relative(process.cwd(), path));
    return path;
  };
  console.log(`\n=== ${title}\n`);
  const outputs = ['svg', 'pdf', 'html', 'json'].flatMap((ending) => [`--${ending}`, output(ending)]);
  const { status } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'nest', ...args, ...outputs, '--effort', 'quick'], { stdio: 'inherit' });
  // 1 is "done, but something asks for a decision": the drawings are as an office writes them.
  if (status !== 0 && status !== 1) process.exit(status ?? 2);
}
console.log(`\nWritten:\n${written.map((path) => `  ${path}`).join('\n')}`);
