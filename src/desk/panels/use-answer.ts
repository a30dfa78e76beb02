import { useEffect, useRef, useState } from 'preact/hooks';
import type { Asked } from '../desk.ts';
import { useDesk } from '../desk-context.ts';
import { answered } from '../reading.ts';

const LEFT = -1;

/**
 * Asks again whenever one of `depends` changes; keeps the last answer in view until the next is there. One question at a time:
 * of those that come meanwhile (a slider moves) only the latest is asked.
 */
export function useAnswer<Answer>(ask: (() => Promise<Answer>) | undefined, depends: readonly unknown[]): Asked<Answer> {
  const again = useDesk().desk.again.value;
  const [state, setState] = useState<Asked<Answer>>({ kind: 'none' });
  const question = useRef(ask);
  const latest = useRef(0);
  const isAsking = useRef(false);
  const askAll = async () => {
    isAsking.current = true;
    try {
      for (let number = 0; number !== latest.current && latest.current !== LEFT; ) {
        number = latest.current;
        const result = question.current ? await answered(question.current) : ({ kind: 'none' } as const);
        if (number === latest.current) setState(result);
      }
    } finally {
      isAsking.current = false;
    }
  };
  useEffect(() => {
    question.current = ask;
    latest.current++;
    if (!isAsking.current) void askAll();
  }, [...depends, again]);
  useEffect(() => () => {
    latest.current = LEFT;
  }, []);
  return state;
}
