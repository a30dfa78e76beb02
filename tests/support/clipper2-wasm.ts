import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Ring } from '../../src/geometry/point.ts';

/** The C++ polygon library compiled to WebAssembly, loaded by its files: its package entry is made for browsers. */
const folder = join(dirname(createRequire(import.meta.url).resolve('clipper2-wasm/package.json')), 'dist', 'es');
const { default: load } = await import(pathToFileURL(join(folder, 'clipper2z.js')).href);
const library = await load({ wasmBinary: readFileSync(join(folder, 'clipper2z.wasm')) });

/** Area within the outline grown by round joins of the C++ library, inscribed by up to the tolerance. */
export function inflatedArea(ring: Ring, by: number, arcTolerance: number): number {
  const path = library.MakePath64(ring.flatMap(({ x, y }) => [BigInt(x), BigInt(y)]));
  const paths = new library.Paths64();
  paths.push_back(path);
  const grown = library.InflatePaths64(paths, by, library.JoinType.Round, library.EndType.Polygon, 2, arcTolerance);
  const area = library.AreaPaths64(grown);
  for (const object of [path, paths, grown]) object.delete();
  return area;
}
