// Compiles src/ to dist/, bundles the desk's page into dist/desk, and makes the command executable.
import { execFileSync } from 'node:child_process';
import { chmodSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildDesk } from './build-desk.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const compiler = createRequire(import.meta.url).resolve('typescript/bin/tsc');
rmSync(join(root, 'dist'), { recursive: true, force: true });
execFileSync(process.execPath, [compiler, '-p', join(root, 'tsconfig.json')], { cwd: root, stdio: ['ignore', 2, 2] });
chmodSync(join(root, 'dist', 'cli', 'main.js'), 0o755);
await buildDesk(root, join(root, 'dist', 'desk'));
writeFileSync(join(root, 'dist', '.built'), '');
