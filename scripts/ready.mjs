// Makes a fresh clone ready: installs by the lock file when something is missing, builds when a source is newer than the build.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, statSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const run = (command, args) => execFileSync(command, args, { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });

/** True when every package of the lock file stands in node_modules with the locked version. */
function installed() {
  const mark = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(mark)) return false;
  const have = JSON.parse(readFileSync(mark, 'utf8')).packages;
  const want = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  return Object.entries(want).every(([path, entry]) => path === '' || entry.optional || have[path]?.version === entry.version);
}

function newestTime(folder) {
  let newest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    newest = Math.max(newest, entry.isDirectory() ? newestTime(path) : statSync(path).mtimeMs);
  }
  return newest;
}

if (!installed()) run(npm, ['ci', '--ignore-scripts', '--no-fund', '--no-audit']);
const stamp = join(root, 'dist', '.built');
if (!existsSync(stamp) || statSync(stamp).mtimeMs < Math.max(...['src', 'scripts', join('samples', 'presses')].map((folder) => newestTime(join(root, folder))), statSync(join(root, 'package.json')).mtimeMs)) {
  run(process.execPath, [join(root, 'scripts', 'build.mjs')]);
}
