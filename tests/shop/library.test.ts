import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { backUp } from '../../src/shop/library/backup.ts';
import { openStore } from '../../src/shop/library/database.ts';
import { drawingNamed, keepDrawing } from '../../src/shop/library/drawings.ts';
import { migrate, NEWEST_VERSION, versionOf } from '../../src/shop/library/migrations.ts';
import { libraryError, openLibrary } from '../../src/shop/library/open-library.ts';
import { entriesOf, entryNamed, historyOf, keepEntry, removeEntry } from '../../src/shop/library/records.ts';
import { compiled, ended, root, scratchFolder, startModule } from './support.ts';

const folder = scratchFolder();
let made = 0;
const freshPath = () => join(folder, `${made++}.blankwright`);
const fresh = () => openLibrary(freshPath(), { create: true });

describe('records', () => {
  test('nothing is overwritten: revisions, removal and return', () => {
    const library = fresh();
    expect(keepEntry(library, 'die', '4711', { ups: 12 })).toBe('new');
    expect(keepEntry(library, 'die', '4711', { ups: 12 })).toBe('unchanged');
    expect(keepEntry(library, 'die', '4711', { ups: 12, rack: 'C4' })).toBe('changed');
    expect(removeEntry(library, 'die', '4711')).toBe(true);
    expect(removeEntry(library, 'die', '4711')).toBe(false);
    expect(entriesOf(library)).toEqual([]);
    expect(keepEntry(library, 'die', '4711', { ups: 12, rack: 'C4' })).toBe('changed');
    expect(historyOf(library, 'die', '4711').map(({ revision, removed, content }) => [revision, removed, content])).toEqual([
      [4, false, { ups: 12, rack: 'C4' }],
      [3, true, { ups: 12, rack: 'C4' }],
      [2, false, { ups: 12, rack: 'C4' }],
      [1, false, { ups: 12 }],
    ]);
    expect(entryNamed(library, 'die', '4711')).toMatchObject({ revision: 4 });
    expect(entryNamed(library, 'carton', '4711')).toBeUndefined();
    library.close();
  });

  test('drawings come back to the byte and are kept once', () => {
    const library = fresh();
    const bytes = Uint8Array.from({ length: 300 }, (_, i) => i % 256);
    const fingerprint = keepDrawing(library, bytes);
    expect(keepDrawing(library, bytes)).toBe(fingerprint);
    expect(drawingNamed(library, fingerprint)).toEqual(bytes);
    expect(drawingNamed(library, 'none')).toBeUndefined();
    library.close();
  });

  test('a failure within a whole leaves nothing of it', () => {
    const library = fresh();
    expect(() =>
      library.whole(() => {
        keepEntry(library, 'job', 'a', {});
        throw new Error('in the middle');
      }),
    ).toThrow('in the middle');
    expect(entriesOf(library)).toEqual([]);
    expect(keepEntry(library, 'job', 'a', {})).toBe('new');
    library.close();
  });
});

describe('versions', () => {
  test.each(Array.from({ length: NEWEST_VERSION + 1 }, (_, version) => version))('a library of version %i is brought up with all it holds', (version) => {
    const path = freshPath();
    const old = openStore(path);
    migrate(old, version);
    expect(versionOf(old)).toBe(version);
    if (version >= 1) {
      old.run(`INSERT INTO record VALUES ('die', '7', 1, '2026-01-01T00:00:00.000Z', 0, '{"ups":9}')`);
      old.run('INSERT INTO drawing VALUES (?, ?)', 'abc', Buffer.from('<svg/>'));
    }
    old.close();
    const library = openLibrary(path, { create: false });
    expect(versionOf(library)).toBe(NEWEST_VERSION);
    expect(entriesOf(library, 'die').map(({ content }) => content)).toEqual(version >= 1 ? [{ ups: 9 }] : []);
    expect(keepEntry(library, 'die', '8', { ups: 4 })).toBe('new');
    library.close();
  });

  test('a newer library is refused and its bytes stay', () => {
    const path = freshPath();
    const newer = openLibrary(path, { create: true });
    newer.script(`PRAGMA user_version = ${NEWEST_VERSION + 1}; PRAGMA wal_checkpoint(TRUNCATE);`);
    newer.close();
    const before = readFileSync(path);
    expect(() => openLibrary(path, { create: true })).toThrow('library-newer');
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  test('a newer library whose last writer was killed is refused as well', () => {
    const [path, copy] = [freshPath(), freshPath()];
    const newer = openLibrary(path, { create: true });
    newer.script(`PRAGMA wal_checkpoint(TRUNCATE); PRAGMA user_version = ${NEWEST_VERSION + 1};`);
    for (const ending of ['', '-wal']) copyFileSync(path + ending, copy + ending);
    newer.close();
    const before = readFileSync(copy);
    expect(() => openLibrary(copy, { create: true })).toThrow('library-newer');
    expect(versionOf(openStore(copy))).toBe(NEWEST_VERSION + 1);
    expect(before.length).toBeGreaterThan(0);
  });

  test.each([
    ['a text', Buffer.from('number,rack\n4711,C4\n'.repeat(20))],
    ['a short text', Buffer.from('hello')],
  ])('%s is no library and stays as it is', (_, content) => {
    const path = freshPath();
    writeFileSync(path, content);
    expect(() => openLibrary(path, { create: true })).toThrow('library-not-ours');
    expect(readFileSync(path).equals(content)).toBe(true);
  });

  test('a database of somebody else is refused', () => {
    const path = freshPath();
    const other = openStore(path);
    other.script('CREATE TABLE theirs (x); PRAGMA user_version = 7;');
    other.close();
    expect(() => openLibrary(path, { create: true })).toThrow('library-not-ours');
  });

  test('a library that is not there is made only where that is wanted; a folder cannot be one', () => {
    expect(() => openLibrary(join(folder, 'none'), { create: false })).toThrow('library-not-found');
    mkdirSync(join(folder, 'a-folder'));
    expect(() => openLibrary(join(folder, 'a-folder'), { create: true })).toThrow('file-not-readable');
    expect(() => openLibrary(join(folder, 'no-folder', 'x'), { create: true })).toThrow('library-not-writable');
  });
});

test('a backup is whole while another process writes, and never written over', async () => {
  const path = freshPath();
  const library = openLibrary(path, { create: true });
  keepEntry(library, 'press', 'one', { gripper: 12 });
  const writer = startModule(pairsWriter, path);
  const done = ended(writer);
  await new Promise((resolve) => writer.stdout!.once('data', resolve));
  const copy = join(folder, 'backup');
  backUp(library, copy);
  expect(() => backUp(library, copy)).toThrow('backup-exists');
  writer.kill('SIGKILL');
  await done;
  const restored = openLibrary(copy, { create: false });
  expect(entryNamed(restored, 'press', 'one')).toMatchObject({ content: { gripper: 12 } });
  expect(entryNamed(restored, 'job', 'left')!.content).toEqual(entryNamed(restored, 'job', 'right')!.content);
  restored.close();
  library.close();
});

/** Writes pairs that must never be seen apart, and says each number once it is safe. */
const pairsWriter = `
  const { openLibrary } = await import(${JSON.stringify(compiled('shop', 'library', 'open-library.js'))});
  const { keepEntry } = await import(${JSON.stringify(compiled('shop', 'library', 'records.js'))});
  const library = openLibrary(process.argv[1], { create: true });
  for (let n = 1; ; n++) {
    library.whole(() => {
      keepEntry(library, 'job', 'left', { n });
      keepEntry(library, 'job', 'right', { n });
    });
    process.stdout.write(n + '\\n');
  }`;

test('killed at any moment the library holds the old or the new, and nothing that was acknowledged is lost', async () => {
  const path = freshPath();
  for (let round = 0; round < 6; round++) {
    const writer = startModule(pairsWriter, path);
    const done = ended(writer);
    // Sometimes in the making of the file, sometimes deep in the writing.
    if (round >= 2) await new Promise((resolve) => writer.stdout!.once('data', resolve));
    await new Promise((resolve) => setTimeout(resolve, round < 2 ? 60 + 30 * round : 37 * (round - 2)));
    writer.kill('SIGKILL');
    const { stdout, stderr } = await done;
    expect(stderr).toBe('');
    const library = openLibrary(path, { create: true });
    const [left, right] = ['left', 'right'].map((id) => historyOf(library, 'job', id));
    expect(left.map(({ content }) => content)).toEqual(right.map(({ content }) => content));
    // A last line that was cut short is a smaller number.
    const acknowledged = Number(stdout.trimEnd().split('\n').at(-1));
    if (round >= 2) expect(acknowledged).toBeGreaterThan(0);
    if (acknowledged > 0) expect(left[0].content['n']).toBeGreaterThanOrEqual(acknowledged);
    expect(library.rows('PRAGMA integrity_check')).toMatchObject([{ integrity_check: 'ok' }]);
    library.close();
  }
});

test('two processes make one library and write into it at once', async () => {
  const path = freshPath();
  const writer = `
    const { openLibrary } = await import(${JSON.stringify(compiled('shop', 'library', 'open-library.js'))});
    const { keepEntry } = await import(${JSON.stringify(compiled('shop', 'library', 'records.js'))});
    const library = openLibrary(process.argv[1], { create: true });
    for (let n = 0; n < 100; n++) keepEntry(library, 'job', 'shared', { n, by: process.argv[2] });
    library.close();`;
  const results = await Promise.all(['one', 'two', 'three'].map((name) => ended(startModule(writer, path, name))));
  expect(results.map(({ code, stderr }) => [code, stderr])).toEqual([[0, ''], [0, ''], [0, '']]);
  const library = openLibrary(path, { create: false });
  expect(historyOf(library, 'job', 'shared').map(({ revision }) => revision)).toEqual(Array.from({ length: 300 }, (_, i) => 300 - i));
  library.close();
});

const tiny = mkdtempSync(join(tmpdir(), 'blankwright-tiny-'));
const mounted = process.platform === 'linux' && spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=600k', 'tmpfs', tiny]).status === 0;
afterAll(() => {
  // Lazily: the database lets its file go when it is collected.
  if (mounted) spawnSync('umount', ['-l', tiny]);
  rmdirSync(tiny);
});
if (!mounted) process.stderr.write('\n!! no small disk could be mounted (it wants root): a full disk is not tested here\n\n');
test.runIf(mounted)('a full disk says so and keeps what was there', () => {
  const path = join(tiny, 'library');
  const library = openLibrary(path, { create: true });
  keepEntry(library, 'press', 'one', { gripper: 12 });
  let full: unknown;
  try {
    for (let i = 0; ; i++) keepEntry(library, 'job', String(i), { text: 'x'.repeat(10_000) });
  } catch (error) {
    full = libraryError(error, path);
  }
  expect(full).toMatchObject({ message: 'library-disk-full' });
  expect(entryNamed(library, 'press', 'one')).toMatchObject({ content: { gripper: 12 } });
  expect(library.rows('PRAGMA integrity_check')).toMatchObject([{ integrity_check: 'ok' }]);
  library.close();
});

test('the database comes ready-made: nothing is compiled when it is installed', () => {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  const parts = Object.keys(packages).filter((path) => /node_modules\/(libsql|@libsql\/|@neon-rs\/|detect-libc)/.test(path));
  expect(parts.length).toBeGreaterThan(5);
  expect(parts.filter((path) => packages[path].hasInstallScript)).toEqual([]);
});
