import type { Improvement } from '../nesting/incumbents.ts';

/** One line on stderr that tells how a search goes: time, best, limit, what found it. */
export interface Progress {
  show(event: Improvement): void;
  end(): void;
}

export function createProgress(wanted: boolean, elapsedMs: () => number): Progress {
  if (!wanted) return { show: () => {}, end: () => {} };
  const overwrite = process.stderr.isTTY === true;
  let ups = 0;
  let source = '';
  let limit = '';
  return {
    show(event) {
      if (event.kind === 'layout') [ups, source] = [event.ups, event.source];
      else limit = `, at most ${event.limit.ups} (${event.limit.by})`;
      const line = `${(elapsedMs() / 1000).toFixed(1)} s: ${ups} ups${limit}${source && `, ${source}`}`;
      process.stderr.write(overwrite ? `\r\u001b[K${line}` : `${line}\n`);
    },
    end() {
      if (overwrite) process.stderr.write('\n');
    },
  };
}
