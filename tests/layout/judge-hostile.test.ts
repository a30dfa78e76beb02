import fc from 'fast-check';
import { expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { judge } from '../../src/layout/judge.ts';
import { readLayoutFile, writeLayoutFile } from '../../src/layout/layout-file.ts';
import { english } from '../../src/render/messages/english.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

const drawn = { ...rectangle('drawn', 40, 30), drawing: { outline: 'M0 0 H40 V30 H0 Z', paths: [{ role: 'Cutting', d: 'M0 0 H40 V30 H0 Z' }] } };
const sound = writeLayoutFile(
  layoutWith([rectangle('box', 100, 60), drawn], [at('box', 10, 10), at('drawn', 116, 10, 0)], { keepOut: [{ kind: 'colour-bar', ring: [[0, 600], [900, 600], [900, 606]] }] }),
);

/** Every place in a JSON value, as paths of keys. */
function places(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const keys = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [path, ...keys.flatMap((key) => places((value as Record<string, unknown>)[key], [...path, key]))];
}

function withChange(path: readonly (string | number)[], value: unknown): unknown {
  const file = JSON.parse(sound);
  if (path.length === 0) return value;
  const parent = path.slice(0, -1).reduce((at, key) => at[key], file);
  parent[path.at(-1)!] = value;
  return file;
}

const oddities = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom<unknown>(undefined, null, '', [], {}, -0, 1e-9, 1e308, -1e308, NaN, Infinity, 16_777.216, 'M', 'M0 0', 'M0 0 Z', 'M0 0 L0 0 Z', 'M0 0 A1 1 0 0 1 1e9 1', 'box', '__proto__', 45, 89.999_999, [[0, 0], [0, 0], [0, 0]], [[0, 0], [1, 1], [2, 2]], [[0, 0], [1, 0], [0, 1], [0, 0]]),
);

test('a file with any one thing changed is judged or refused in words, never with a crash', () => {
  let judged = 0;
  let refused = 0;
  fc.assert(
    fc.property(fc.constantFrom(...places(JSON.parse(sound))), oddities, (path, value) => {
      try {
        const { state, faults } = judge(readLayoutFile(withChange(path, value), 'a.json'));
        expect(state).toBe(faults.length === 0 ? 'sound' : 'faulty');
        for (const { byMm, place } of faults) expect([byMm, ...place].every(Number.isFinite)).toBe(true);
        judged++;
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        expect(error.issues.every((issue) => english.sentence(issue).length > 20)).toBe(true);
        refused++;
      }
    }),
    { seed: 97, numRuns: 5000 },
  );
  expect(Math.min(judged, refused)).toBeGreaterThan(200);
});
