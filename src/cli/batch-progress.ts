import { createFormat } from '../render/format.ts';
import type { BatchProgress } from '../shop/batch/run-batch.ts';
import { createTimeKeeper } from '../shop/batch/time-left.ts';

/** Lines on stderr that are no terminal come no oftener than this, milliseconds. */
const QUIET_MS = 10_000;
const LIVELY_MS = 200;

/** How far a batch is and how long it will still take. */
export function createBatchProgress(wanted: boolean): { show(progress: BatchProgress): void; end(): void } {
  const overwrite = process.stderr.isTTY === true;
  if (!wanted && !overwrite) return { show: () => {}, end: () => {} };
  const keeper = createTimeKeeper();
  const format = createFormat('en');
  const start = performance.now();
  let shownAt = -Infinity;
  return {
    show(progress) {
      const { tasks, done, kept, refusedCartons, work } = progress;
      if (work !== undefined) keeper.computed(work);
      const now = performance.now();
      if (now - shownAt < (overwrite ? LIVELY_MS : QUIET_MS) && done < tasks) return;
      shownAt = now;
      // As many of the rest are there already as of those met so far.
      const open = (tasks - done) * (done === 0 ? 1 : 1 - kept / done);
      const left = keeper.left(open, (now - start) / 1000);
      const time = left && done < tasks ? `; about ${format.duration(left.seconds)} left, ± ${format.duration(left.error)}` : '';
      const line = `${format.number(done, 0)} of ${format.number(tasks, 0)} tasks done, ${format.number(kept, 0)} of them known before${refusedCartons > 0 ? `, ${format.number(refusedCartons, 0)} cartons refused` : ''}${time}`;
      process.stderr.write(overwrite ? `\r\u001b[K${line}` : `${line}\n`);
    },
    end() {
      if (overwrite) process.stderr.write('\n');
    },
  };
}
