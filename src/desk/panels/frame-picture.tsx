import { useDesk } from '../desk-context.ts';
import { Picture } from '../picture/picture.tsx';
import { useWords } from '../words/words.ts';
import { IssueList } from './issue-list.tsx';

/** The empty sheet: where knives and ink may be. */
export function FramePicture() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const frame = desk.frame.value;
  if (frame.kind === 'issues') return <div class="empty"><IssueList issues={frame.issues} /></div>;
  if (frame.kind !== 'answer') return <p class="empty">{say('reading')}</p>;
  const { usable, printable, scene } = frame.answer;
  return (
    <div class="frame">
      <Picture scene={scene} name="frame" label={say('picture-of-sheet', { size: format.size(scene.sheet.width, scene.sheet.height) })} />
      {desk.faultyFields.value.length > 0 && <p class="warning">{say('sheet-of-before')}</p>}
      <p class="under">
        {say('knife-area', { size: format.size(usable.width, usable.height) })} {say('ink-area', { size: format.size(printable.width, printable.height) })}
      </p>
    </div>
  );
}
