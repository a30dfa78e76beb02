import { inputError } from '../../base/issue.ts';
import { english } from '../../render/messages/english.ts';
import { action, DONE, type RegisterCommand } from '../command.ts';
import { createOptionReader, wholeNumber } from '../option-reader.ts';
import { addQueueOptions, openQueue, queueAddress, type QueueOptions } from '../queue-option.ts';

/** A machine that has gone silent for so long loses its tasks to others, seconds. */
const USUAL_LEASE = 30;

export const registerWork: RegisterCommand = (program) => {
  addQueueOptions(program.command('work').description('One machine’s share of the batches on a queue. Start it on as many machines as you like, end it whenever you like.'))
    .option('--workers <n>', 'threads on this machine (default: one per core)')
    .option('--lease <seconds>', `a machine silent for so long loses its tasks to others (default ${USUAL_LEASE})`)
    .addHelpText('after', '\nCtrl-C ends it after the tasks in hand; a second Ctrl-C ends it at once, and others do them.\nA machine takes tasks of batches started by the same version of Blankwright only.')
    .action(action(work));
};

interface Options extends QueueOptions, Readonly<Record<string, unknown>> {}

function say(code: string, where: string, facts: Readonly<Record<string, string | number>> = {}): void {
  process.stderr.write(`${english.sentence({ code, severity: 'note', where, facts })}\n`);
}

async function work(raw: Options): Promise<number> {
  const reader = createOptionReader(raw);
  const workers = reader.read('--workers', wholeNumber(1, 256), 'a whole number from 1 to 256 is wanted');
  const leaseSeconds = reader.read('--lease', wholeNumber(1, 3600), 'whole seconds from 1 to 3600 are wanted') ?? USUAL_LEASE;
  reader.finish();
  const address = queueAddress(raw);
  if (address === undefined) throw inputError('option-missing', { where: '--queue', facts: { expected: 'the address of a Redis server, such as redis://host:6379' } });
  const { connection } = await openQueue(address, raw);
  const [{ workAtQueue }, { startThreads }, { engineVersion }] = await Promise.all([import('../../shop/queue/queue-worker.ts'), import('../../shop/batch/threads.ts'), import('../../shop/answers/engine.ts')]);
  const threads = startThreads(workers);
  let done = 0;
  let out = false;
  const worker = workAtQueue(connection, threads, {
    leaseSeconds,
    onDone: () => done++,
    onFailed: (message) => say('work-task-failed', connection.name, { message }),
    onTrouble: () => {
      if (!out) say('queue-lost', connection.name);
      out = true;
    },
    onBack: () => {
      if (out) say('queue-back', connection.name);
      out = false;
    },
  });
  say('work-started', connection.name, { threads: threads.count, engine: engineVersion() });
  await stopAsked();
  say('work-ending', connection.name);
  await Promise.race([worker.close(false), stopAsked().then(() => worker.close(true))]);
  await threads.close();
  say('work-ended', connection.name, { done });
  // A connection that is out of reach would keep the process waiting for it.
  setTimeout(() => process.exit(), 2_000).unref();
  return DONE;
}

/** Ctrl-C or a polite kill. */
function stopAsked(): Promise<void> {
  return new Promise((resolve) => {
    const hear = () => {
      process.off('SIGINT', hear);
      process.off('SIGTERM', hear);
      resolve();
    };
    process.on('SIGINT', hear);
    process.on('SIGTERM', hear);
  });
}
