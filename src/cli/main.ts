#!/usr/bin/env node
import { createRequire } from 'node:module';
import { Command, CommanderError, type Option } from 'commander';
import { REFUSED, type RegisterCommand } from './command.ts';

const { version } = createRequire(import.meta.url)('../../package.json') as { version: string };

/** One entry a command, in the order in which a job goes through them; each is loaded only when it is called. */
const commands: Readonly<Record<string, () => Promise<RegisterCommand>>> = {
  read: async () => (await import('./commands/read.ts')).registerRead,
  blank: async () => (await import('./commands/blank.ts')).registerBlank,
  nest: async () => (await import('./commands/nest.ts')).registerNest,
  compare: async () => (await import('./commands/compare.ts')).registerCompare,
  gang: async () => (await import('./commands/gang.ts')).registerGang,
  reel: async () => (await import('./commands/reel.ts')).registerReel,
  quote: async () => (await import('./commands/quote.ts')).registerQuote,
  day: async () => (await import('./commands/day.ts')).registerDay,
  records: async () => (await import('./commands/records.ts')).registerRecords,
  judge: async () => (await import('./commands/judge.ts')).registerJudge,
  handover: async () => (await import('./commands/handover.ts')).registerHandover,
  batch: async () => (await import('./commands/batch.ts')).registerBatch,
  work: async () => (await import('./commands/work.ts')).registerWork,
  library: async () => (await import('./commands/library.ts')).registerLibrary,
  open: async () => (await import('./commands/open.ts')).registerOpen,
};

/** The command called; none for the version; for the list of commands, or a word that is none, all. */
function needed(called: string): readonly string[] {
  if (called === '--version' || called === '-V') return [];
  return Object.hasOwn(commands, called) ? [called] : Object.keys(commands);
}

/** An option with its default as one would type it; where there is none but an empty list, nothing is said. */
function described({ description, defaultValue }: Option): string {
  return typeof defaultValue === 'string' ? `${description} (default ${defaultValue})` : description;
}

const program = new Command('blankwright')
  .description('Lays out die-cut cartons and labels on press sheets: reads the dieline, finds the best layout, says how good it is.')
  .version(version)
  .configureHelp({ optionDescription: described })
  .showHelpAfterError('(--help shows what the command takes)')
  .exitOverride();
for (const name of needed(process.argv[2] ?? '')) (await commands[name]!())(program);
for (const command of program.commands) command.exitOverride();

// A closed pipe (`| head`) is no failure: the command goes on, writes its files and ends with its own exit code.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE' && error.code !== 'ERR_STREAM_DESTROYED') throw error;
  });
}

try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  process.exitCode = error.exitCode === 0 ? 0 : REFUSED;
}
