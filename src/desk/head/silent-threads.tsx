import { useDesk } from '../desk-context.ts';
import { PATIENCE_MS } from '../engine/watch.ts';
import { useWords } from '../words/words.ts';

const THREADS = ['engine', 'searcher', 'helper', 'planner'] as const;

/** Threads that have shown no sign of life for long: the person waits on, or has them started anew. */
export function SilentThreads() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  return (
    <>
      {THREADS.filter((name) => desk[name].silent.value).map((name) => (
        <div key={name} class="conflict" role="alert">
          <p>{say(`silent-${name}`, { time: format.duration(PATIENCE_MS / 1000) })} {say('silent-thread')}</p>
          <button type="button" onClick={desk[name].startAnew}>{say('start-anew')}</button>
          <button type="button" onClick={desk[name].wait}>{say('wait-on')}</button>
        </div>
      ))}
    </>
  );
}
