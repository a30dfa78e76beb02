// The whole check behind `npm test`: lint, types, then every test. Stops at the first that fails.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const require = createRequire(import.meta.url);
const packageFile = (name, file) => join(dirname(require.resolve(`${name}/package.json`)), file);

const steps = [
  ['lint', packageFile('oxlint', 'bin/oxlint'), ['--deny-warnings', 'src', 'tests', 'scripts', 'bench']],
  ['types', packageFile('typescript', 'bin/tsc'), ['--noEmit', '-p', 'tsconfig.tests.json']],
  ['tests', packageFile('vitest', 'vitest.mjs'), ['run', ...process.argv.slice(2)]],
];
for (const [name, script, args] of steps) {
  console.log(`== ${name}`);
  const { status } = spawnSync(process.execPath, [script, ...args], { cwd: root, stdio: 'inherit' });
  if (status !== 0) {
    console.error(`${name} failed`);
    process.exit(status ?? 1);
  }
}
