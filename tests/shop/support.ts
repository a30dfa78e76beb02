import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll } from 'vitest';

export const root = join(import.meta.dirname, '..', '..');
export const binary = join(root, 'dist', 'cli', 'main.js');
export const sample = (...path: string[]) => join(root, 'samples', ...path);

/** A folder of its own for a test file, gone when it ends. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'blankwright-shop-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}

/** Real processes need compiled modules; `npm test` builds first. */
export const compiled = (...path: string[]) => pathToFileURL(join(root, 'dist', ...path)).href;

/** A process of its own that runs a module's text, with arguments. */
export function startModule(text: string, ...args: string[]): ChildProcess {
  return spawn(process.execPath, ['--input-type=module', '-e', text, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
}

/** Everything a process wrote, once it has ended. */
export async function ended(child: ChildProcess): Promise<{ readonly stdout: string; readonly stderr: string; readonly code: number | null }> {
  let [stdout, stderr] = ['', ''];
  child.stdout?.on('data', (part) => (stdout += part));
  child.stderr?.on('data', (part) => (stderr += part));
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  return { stdout, stderr, code };
}

/** A plain rectangle as a drawing, mm. */
export const rectangle = (width: number, height: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width + 20}mm" height="${height + 20}mm" viewBox="0 0 ${width + 20} ${height + 20}"><g id="cut" fill="none" stroke="#000"><rect x="10" y="10" width="${width}" height="${height}"/></g></svg>`;
