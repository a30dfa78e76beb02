import { useDesk } from '../desk-context.ts';
import { useWords } from '../words/words.ts';

/** On to the panel where the job goes on. */
export function NextStep({ panel }: { readonly panel: 'sheet' | 'layouts' | 'money' }) {
  const { desk } = useDesk();
  const { say } = useWords();
  return (
    <p>
      <button type="button" class="primary" onClick={() => (desk.panel.value = panel)}>{say(`step-${panel}`)}</button>
    </p>
  );
}
