import { useDesk } from '../desk-context.ts';
import { takeFile } from '../taking.ts';
import { useWords } from '../words/words.ts';
import { useAnswer } from './use-answer.ts';

/** The drawings that the desk was opened with. */
export function OpenedDrawings() {
  const { desk, files } = useDesk();
  const { say } = useWords();
  const names = useAnswer(files.list, [files]);
  if (names.kind !== 'answer') return null;
  const drawings = names.answer.filter((name) => /\.(svg|dxf|pdf)$/i.test(name));
  if (drawings.length < 2) return null;
  return (
    <details class="opened" open>
      <summary>{say('opened-drawings', { count: drawings.length })}</summary>
      <ul class="opened-list">
        {drawings.map((name) => (
          <li key={name}><button type="button" class="small" onClick={() => void takeFile(desk, name, files.read(name))}>{name}</button></li>
        ))}
      </ul>
    </details>
  );
}
