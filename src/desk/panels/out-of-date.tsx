import { useDesk } from '../desk-context.ts';
import type { Panel } from '../desk.ts';
import { useWords } from '../words/words.ts';
import { faultsOnDesk } from '../faults-on-desk.ts';

/** Panels that speak of a layout as if it held; the others of these say by themselves that it does not. */
const SPEAKING: readonly Panel[] = ['why', 'money'];
const ABOUT_LAYOUTS: readonly Panel[] = [...SPEAKING, 'layouts', 'handover'];

/** Said wherever figures of a layout stand that no longer holds: why, and where it is mended. */
export function OutOfDate() {
  const { desk } = useDesk();
  const words = useWords();
  const faults = faultsOnDesk(desk, words);
  const panel = desk.panel.value;
  const says = SPEAKING.includes(panel) && desk.chosenState.value === 'out of date';
  if (!ABOUT_LAYOUTS.includes(panel) || (faults.length === 0 && !says)) return null;
  return (
    <div class="warning out-of-date">
      {says && <p>{words.say('layout-out-of-date')}</p>}
      {faults.map(({ panel: where, text }) => (
        <p key={text}>
          {text} <button type="button" class="small" onClick={() => (desk.panel.value = where)}>{words.say(`panel-${where}`)}</button>
        </p>
      ))}
    </div>
  );
}
