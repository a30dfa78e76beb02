import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const source = join(dirname(fileURLToPath(import.meta.url)), '..', 'src');

/** Which folders each folder of src/ may import. The table of DEVELOPERS.md, held here. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  base: [],
  geometry: ['base'],
  dieline: ['base', 'geometry'],
  press: ['base', 'geometry'],
  layout: ['base', 'geometry', 'dieline', 'press'],
  nesting: ['base', 'geometry', 'press', 'layout'],
  estimate: ['base', 'geometry', 'press', 'layout'],
  proof: ['base', 'geometry'],
  render: ['base', 'geometry', 'dieline', 'press', 'layout', 'estimate', 'proof'],
  pipeline: ['base', 'geometry', 'dieline', 'press', 'layout', 'nesting', 'estimate', 'proof', 'render'],
  api: ['base', 'geometry', 'dieline', 'press', 'layout', 'nesting', 'estimate', 'proof', 'render', 'pipeline'],
  wire: ['base', 'press', 'layout'],
  desk: ['base', 'geometry', 'dieline', 'press', 'layout', 'nesting', 'estimate', 'proof', 'render', 'pipeline', 'wire'],
  shop: ['base', 'geometry', 'dieline', 'press', 'layout', 'nesting', 'estimate', 'proof', 'render', 'pipeline'],
  cli: ['base', 'geometry', 'dieline', 'press', 'layout', 'nesting', 'estimate', 'proof', 'render', 'pipeline', 'api', 'wire', 'desk', 'shop'],
};

/** Folders that may use Node, clocks, the console. */
const AT_THE_EDGE = new Set(['cli', 'shop', 'desk']);

interface Module {
  readonly path: string;
  readonly folder: string;
  readonly text: string;
  /** Paths within src/ of relative imports. */
  readonly imports: readonly string[];
  /** Package or `node:` imports. */
  readonly packages: readonly string[];
}

function listFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? listFiles(path) : path.endsWith('.ts') || path.endsWith('.tsx') ? [path] : [];
  });
}

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
}

const modules: Module[] = listFiles(source).map((file) => {
  const text = withoutComments(readFileSync(file, 'utf8'));
  const targets = [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((match) => match[1]!);
  const path = relative(source, file);
  return {
    path,
    folder: path.split('/')[0]!,
    text,
    imports: targets.filter((target) => target.startsWith('.')).map((target) => relative(source, resolve(dirname(file), target))),
    packages: targets.filter((target) => !target.startsWith('.')),
  };
});
const byPath = new Map(modules.map((module) => [module.path, module]));

function reach(start: string): Set<string> {
  const seen = new Set<string>();
  const open = [start];
  while (open.length > 0) {
    const path = open.pop()!;
    if (seen.has(path)) continue;
    seen.add(path);
    open.push(...(byPath.get(path)?.imports ?? []));
  }
  return seen;
}

describe('the import table', () => {
  test('finds the modules it is about', () => {
    expect(modules.length).toBeGreaterThan(5);
    expect(modules.some((module) => module.imports.length > 0)).toBe(true);
  });

  test('every import goes to a folder that the table allows', () => {
    const wrong = modules.flatMap((module) =>
      module.imports
        .filter((target) => {
          const folder = target.split('/')[0]!;
          return folder !== module.folder && !MAY_IMPORT[module.folder]?.includes(folder);
        })
        .map((target) => `${module.path} → ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  test('every import exists and there are no cycles', () => {
    const missing = modules.flatMap((module) => module.imports.filter((target) => target.endsWith('.ts') && !byPath.has(target)).map((target) => `${module.path} → ${target}`));
    expect(missing).toEqual([]);
    const cycles = modules.filter((module) => module.imports.some((target) => reach(target).has(module.path))).map((module) => module.path);
    expect(cycles).toEqual([]);
  });

  test('below the edge nothing touches Node, a clock, chance or the console', () => {
    const banned = /\bDate\.now\b|\bnew Date\(\)|\bperformance\.now\b|\bMath\.random\b|\bconsole\.|\bprocess\./;
    const wrong = modules
      .filter((module) => !AT_THE_EDGE.has(module.folder))
      .filter((module) => banned.test(module.text) || module.packages.some((name) => name.startsWith('node:')))
      .map((module) => module.path);
    expect(wrong).toEqual([]);
  });

  test('the judge shares no offset and no no-fit code with the search', () => {
    const judge = modules.filter((module) => module.path.startsWith('layout/judge'));
    const shared = judge.flatMap((module) => [...reach(module.path)].filter((path) => /offset|no-fit|nofit|minkowski|convex-parts|boolean/.test(path)).map((path) => `${module.path} ⇒ ${path}`));
    expect(shared).toEqual([]);
  });

  test('the proof checker knows only points and predicates', () => {
    const shared = modules.filter((module) => module.folder === 'proof').flatMap((module) => [...reach(module.path)].filter((path) => /offset|no-fit|nofit|minkowski|convex-parts|boolean/.test(path)).map((path) => `${module.path} ⇒ ${path}`));
    expect(shared).toEqual([]);
  });
});
