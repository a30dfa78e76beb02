// Bundles the page, its workers and what they load into one folder of static files that any web server can hand out.
import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, extname, join, relative } from 'node:path';
import { build } from 'esbuild';

const require = createRequire(import.meta.url);

const COMMON = {
  bundle: true,
  format: 'esm',
  platform: 'browser',
  target: ['es2022'],
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
  // The solver looks for Node only when it runs there.
  external: ['node:module'],
  jsx: 'automatic',
  jsxImportSource: 'preact',
};

export async function buildDesk(root, target) {
  const source = join(root, 'src', 'desk');
  mkdirSync(target, { recursive: true });
  await build({
    ...COMMON,
    entryPoints: [join(source, 'page.tsx'), join(source, 'engine', 'engine-worker.ts'), join(source, 'engine', 'lane-worker.ts')],
    outdir: target,
    entryNames: '[name]',
    chunkNames: 'parts/[name]-[hash]',
    splitting: true,
  });
  await build({ ...COMMON, entryPoints: [join(source, 'desk.css')], outdir: target });
  for (const name of readdirSync(join(source, 'static'))) copyFileSync(join(source, 'static', name), join(target, name));
  copyFileSync(require.resolve('highs/runtime'), join(target, 'highs.wasm'));
  copySamples(join(root, 'samples'), target);
  await buildServiceWorker(source, target);
}

/** The invented records, in one file, and the drawings to try the desk with. */
function copySamples(samples, target) {
  const records = (folder) => readdirSync(join(samples, folder)).map((name) => ({ id: basename(name, '.json'), record: JSON.parse(readFileSync(join(samples, folder, name), 'utf8')) }));
  const content = { presses: records('presses'), cutters: records('cutters'), boards: records('boards'), sheets: records('sheets') };
  writeFileSync(join(target, 'records.json'), `${JSON.stringify(content)}\n`);
  mkdirSync(join(target, 'samples'), { recursive: true });
  for (const name of readdirSync(join(samples, 'drawings'))) copyFileSync(join(samples, 'drawings', name), join(target, 'samples', name));
}

/** Knows every file by its digest and all of them by one fingerprint, so that a new build is taken up whole. */
async function buildServiceWorker(source, target) {
  const files = filesOf(target).filter((path) => extname(path) !== '.map').sort();
  const digests = Object.fromEntries(files.map((path) => [path, createHash('sha256').update(readFileSync(join(target, path))).digest('hex')]));
  const fingerprint = createHash('sha256').update(JSON.stringify(digests)).digest('hex').slice(0, 16);
  await build({
    ...COMMON,
    entryPoints: [join(source, 'offline', 'service-worker.ts')],
    outdir: target,
    define: { DESK_FILES: JSON.stringify(digests), DESK_BUILD: JSON.stringify(fingerprint) },
  });
}

function filesOf(folder, from = folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesOf(path, from) : [relative(from, path).replaceAll('\\', '/')];
  });
}
