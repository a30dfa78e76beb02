import type { Command } from 'commander';
import { InputError, type Issue } from '../base/issue.ts';
import { english } from '../render/messages/english.ts';

/** Exit codes, product-wide. */
export const DONE = 0;
/** Done, but something asks for a decision. */
export const ASKS = 1;
/** Bad usage, bad input or nothing possible; nothing was written. */
export const REFUSED = 2;

/** A command is one file in `commands/`: it adds itself to the program. */
export type RegisterCommand = (program: Command) => void;

/**
 * Wraps a command's work: the returned number is the exit code; an InputError becomes one line per reason on stderr and
 * exit code 2.
 */
export function action<Arguments extends unknown[]>(work: (...args: Arguments) => number | Promise<number>): (...args: Arguments) => Promise<void> {
  return async (...args) => {
    try {
      process.exitCode = await work(...args);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      for (const issue of error.issues) process.stderr.write(`${placed(issue)}\n`);
      process.exitCode = REFUSED;
    }
  };
}

/** Sentences about a field of a job need not name the job; then it stands before them. */
function placed(issue: Issue): string {
  const told = sentence(issue);
  return issue.mendedBy !== 'field' || issue.where === undefined || told.includes(issue.where) ? told : told.replace(': ', `: ${issue.where}: `);
}

/** `error: knife.svg: …`, with the place where there is one. */
export function sentence(issue: Issue): string {
  const place = issue.place ? ` (at ${issue.place[0].toFixed(2)}, ${issue.place[1].toFixed(2)} mm)` : '';
  return `${issue.severity}: ${english.sentence(issue)}${place}`;
}
