import type { Command } from 'commander';
import { readInput } from './files.ts';

/** Variables of the environment, so that no secret need stand on a command line that others can list. */
const ADDRESS_VARIABLE = 'BLANKWRIGHT_QUEUE';
const PASSWORD_VARIABLE = 'BLANKWRIGHT_QUEUE_PASSWORD';

export interface QueueOptions {
  readonly queue?: string;
  readonly queueCa?: string;
  readonly queueCert?: string;
  readonly queueKey?: string;
}

export function addQueueOptions(command: Command): Command {
  return command
    .option('--queue <address>', `a Redis server: redis://host:6379, rediss:// for TLS (or the variable ${ADDRESS_VARIABLE}; a password in ${PASSWORD_VARIABLE})`)
    .option('--queue-ca <file>', 'certificate of the authority that the server’s certificate is checked against (PEM)')
    .option('--queue-cert <file>', 'own certificate, where the server asks for one (PEM)')
    .option('--queue-key <file>', 'its private key (PEM)');
}

/** The address given, or that of the environment; undefined where there is none. */
export function queueAddress({ queue }: QueueOptions): string | undefined {
  return queue ?? (process.env[ADDRESS_VARIABLE] || undefined);
}

/** Loads the queue's packages only now; tries the connection before any work is done. */
export async function openQueue(address: string, { queueCa, queueCert, queueKey }: QueueOptions) {
  const { readQueueAddress, tryQueue } = await import('../shop/queue/connection.ts');
  const file = (path: string | undefined) => (path === undefined ? undefined : readInput(path));
  const connection = readQueueAddress(address, { password: process.env[PASSWORD_VARIABLE], ca: file(queueCa), cert: file(queueCert), key: file(queueKey) });
  const { keepsTasks } = await tryQueue(connection);
  return { connection, keepsTasks };
}
