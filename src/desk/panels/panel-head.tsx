import { FACES } from '../desk.ts';
import { useDesk } from '../desk-context.ts';
import { useWords } from '../words/words.ts';
import { NextStep } from './next-step.tsx';

/** What a panel is called, which of its faces is looked at, and where the job goes on. */
export function PanelHead() {
  const { desk } = useDesk();
  const { say } = useWords();
  const panel = desk.panel.value;
  return (
    <div class="panel-head">
      <h2>{say(`panel-${panel}`)}</h2>
      {panel === 'layouts' && <FaceChoice />}
      <NextStep />
    </div>
  );
}

/** The layouts themselves, what the stations of the chosen one print, or forms of several outlines. */
function FaceChoice() {
  const { desk } = useDesk();
  const { say } = useWords();
  return (
    <div class="faces" role="group" aria-label={say('face-of-layouts')}>
      {FACES.map((face) => (
        <button key={face} type="button" aria-pressed={desk.face.value === face} onClick={() => (desk.face.value = face)}>{say(`face-${face}`)}</button>
      ))}
    </div>
  );
}
