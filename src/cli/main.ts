#!/usr/bin/env node
import { createRequire } from 'node:module';
import { Command, CommanderError } from 'commander';
import { REFUSED, type RegisterCommand } from './command.ts';
import { registerBlank } from './commands/blank.ts';
import { registerCompare } from './commands/compare.ts';
import { registerHandover } from './commands/handover.ts';
import { registerGang } from './commands/gang.ts';
import { registerJudge } from './commands/judge.ts';
import { registerNest } from './commands/nest.ts';
import { registerQuote } from './commands/quote.ts';
import { registerReel } from './commands/reel.ts';
import { registerRead } from './commands/read.ts';

const { version } = createRequire(import.meta.url)('../../package.json') as { version: string };

/** One entry a command, in the order in which a job goes through them. */
const commands: readonly RegisterCommand[] = [
  registerRead,
  registerBlank,
  registerNest,
  registerCompare,
  registerGang,
  registerReel,
  registerQuote,
  registerJudge,
  registerHandover,
];

const program = new Command('blankwright')
  .description('Lays out die-cut cartons and labels on press sheets: reads the dieline, finds the best layout, says how good it is.')
  .version(version)
  .showHelpAfterError('(--help shows what the command takes)')
  .exitOverride();
for (const register of commands) register(program);
for (const command of program.commands) command.exitOverride();

// A closed pipe (`| head`) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  process.exitCode = error.exitCode === 0 ? 0 : REFUSED;
}
