import { useEffect, useState } from 'preact/hooks';
import type { Asked } from '../desk.ts';
import { answered } from '../reading.ts';

/** Asks again whenever one of `depends` changes; keeps the last answer in view until the next is there. */
export function useAnswer<Answer>(ask: (() => Promise<Answer>) | undefined, depends: readonly unknown[]): Asked<Answer> {
  const [state, setState] = useState<Asked<Answer>>({ kind: 'none' });
  useEffect(() => {
    if (!ask) {
      setState({ kind: 'none' });
      return undefined;
    }
    let stale = false;
    void answered(ask).then((result) => {
      if (!stale) setState(result);
    });
    return () => {
      stale = true;
    };
  }, depends);
  return state;
}
