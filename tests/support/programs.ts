import { spawnSync } from 'node:child_process';

/** True where a program of the machine can be called; on the build server its absence is a failure, elsewhere a loud skip. */
export function hasProgram(name: string, ...probe: string[]): boolean {
  const found = spawnSync(name, probe).status === 0;
  if (!found && process.env['CI']) throw new Error(`${[name, ...probe].join(' ')} is needed for this test`);
  if (!found) console.warn(`SKIPPED: ${[name, ...probe].join(' ')} does not run here`);
  return found;
}
