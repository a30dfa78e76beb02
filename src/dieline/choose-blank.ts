import { InputError, inputError, type Issue } from '../base/issue.ts';
import type { Blank, Dieline } from './dieline.ts';

/**
 * The blank that is meant: the one with the number given, else the only one. Throws InputError with the drawing's own
 * errors where there is none, with the list where there are several and no number was given.
 */
export function chooseBlank({ blanks, issues }: Dieline, number: number | undefined): Blank {
  if (blanks.length === 0) throw new InputError(issues.filter(({ severity }) => severity === 'error'));
  const found = number === undefined && blanks.length === 1 ? blanks[0] : blanks.find((blank) => blank.number === number);
  if (found) return found;
  if (number !== undefined) throw inputError('no-such-blank', { facts: { number, count: blanks.length } });
  const list = blanks.map(({ number: own, box }): Issue => {
    const facts = { number: own, widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY };
    return { code: 'blank-to-choose', severity: 'note', facts };
  });
  throw new InputError([{ code: 'which-blank', severity: 'error', facts: { count: blanks.length } }, ...list]);
}
