import { useDesk } from '../desk-context.ts';
import type { Desk, Panel } from '../desk.ts';
import { useWords } from '../words/words.ts';

/** On to the panel where the job goes on, always at the same place. */
export function NextStep() {
  const { desk } = useDesk();
  const { say } = useWords();
  const panel = nextOf(desk);
  return panel ? <button type="button" class="primary" onClick={() => (desk.panel.value = panel)}>{say(`step-${panel}`)}</button> : null;
}

type Next = Panel & ('sheet' | 'layouts' | 'money' | 'handover');

function nextOf({ panel, face, reading, chosen }: Desk): Next | undefined {
  if (reading.value.kind !== 'answer' || reading.value.answer.dieline.blanks.length === 0) return undefined;
  switch (panel.value) {
    case 'drawing': return 'sheet';
    case 'sheet': case 'limits': return 'layouts';
    case 'layouts': return chosen.value && face.value === 'layouts' ? 'money' : undefined;
    case 'why': return chosen.value && 'money';
    case 'money': return chosen.value && 'handover';
    case 'handover': return undefined;
  }
}
