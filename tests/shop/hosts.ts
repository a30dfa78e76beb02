import { spawnSync } from 'node:child_process';
import { onTestFinished, test } from 'vitest';

/** Several hosts on one machine: each a network namespace of Linux with an address of its own, joined by a bridge in the first. */
export interface Hosts {
  readonly addressOf: (host: number) => string;
  /** What to write before a command so that it runs on that host. */
  readonly on: (host: number) => readonly string[];
  readonly unplug: (host: number) => void;
  readonly plugIn: (host: number) => void;
}

function ip(...args: string[]): boolean {
  return spawnSync('ip', args).status === 0;
}

const allowed = (() => {
  const name = `bw-try-${process.pid}`;
  return ip('netns', 'add', name) && ip('netns', 'del', name);
})();

/** Skipped loudly where the machine does not let us make hosts; no package would change that. */
export const withHosts: typeof test | typeof test.skip = allowed ? test : test.skip;
if (!allowed) process.stderr.write('\n!! network namespaces are not allowed here: the queue is not tested over several hosts\n\n');

/** Hosts 0 to count − 1, which reach each other and nothing else. Gone when the test that asked for them ends. */
export function makeHosts(count: number): Hosts {
  const name = (host: number) => `bw-${process.pid}-${host}`;
  const must = (...args: string[]) => {
    if (!ip(...args)) throw new Error(`ip ${args.join(' ')} failed`);
  };
  const addressOf = (host: number) => `10.77.0.${host + 1}`;
  onTestFinished(() => {
    for (let host = 0; host < count; host++) ip('netns', 'del', name(host));
  });
  for (let host = 0; host < count; host++) {
    must('netns', 'add', name(host));
    must('-n', name(host), 'link', 'set', 'lo', 'up');
  }
  must('-n', name(0), 'link', 'add', 'bridge', 'type', 'bridge');
  must('-n', name(0), 'addr', 'add', `${addressOf(0)}/24`, 'dev', 'bridge');
  must('-n', name(0), 'link', 'set', 'bridge', 'up');
  for (let host = 1; host < count; host++) {
    must('-n', name(0), 'link', 'add', `to${host}`, 'type', 'veth', 'peer', 'name', 'cable', 'netns', name(host));
    must('-n', name(0), 'link', 'set', `to${host}`, 'master', 'bridge', 'up');
    must('-n', name(host), 'addr', 'add', `${addressOf(host)}/24`, 'dev', 'cable');
    must('-n', name(host), 'link', 'set', 'cable', 'up');
  }
  return {
    addressOf,
    on: (host) => ['ip', 'netns', 'exec', name(host)],
    unplug: (host) => must('-n', name(0), 'link', 'set', `to${host}`, 'down'),
    plugIn: (host) => must('-n', name(0), 'link', 'set', `to${host}`, 'up'),
  };
}
