import { keepTogether } from '../../render/no-break.ts';
import { useDesk } from '../desk-context.ts';
import { PANELS, type Desk, type Panel } from '../desk.ts';
import { faultsOnDesk } from '../faults-on-desk.ts';
import { claimOf, upsOf } from '../job/layouts.ts';
import { moneyFaults } from '../job/quote-of.ts';
import { nameOfRecord } from '../job/records.ts';
import { shownSize } from '../job/typed-length.ts';
import { StateMark } from '../panels/state-mark.tsx';
import { SearchLine } from '../panels/search-controls.tsx';
import { useWords, type Words } from '../words/words.ts';

/** The job's ticket: one line a panel with what is settled there. */
export function Ticket() {
  const { desk } = useDesk();
  const words = useWords();
  const panel = desk.panel.value;
  const state = desk.chosenState.value;
  return (
    <nav class="ticket" aria-label={words.say('panels')}>
      <ol>
        {PANELS.map((name) => (
          <li key={name}>
            <button type="button" aria-current={panel === name ? 'page' : undefined} onClick={() => (desk.panel.value = name)}>
              <span class="panel-name">{words.say(`panel-${name}`)}</span>
              <Summary panel={name} />
              {name === 'layouts' && state && <StateMark state={state} />}
            </button>
          </li>
        ))}
      </ol>
      <SearchLine />
    </nav>
  );
}

/** What is settled in a panel, or what is wrong there. */
function Summary({ panel }: { readonly panel: Panel }) {
  const { desk } = useDesk();
  const words = useWords();
  const faults = faultsOnDesk(desk, words).filter((fault) => fault.panel === panel);
  const texts = panel === 'money' && moneyFaults(desk.job.value, desk.records.value).length > 0 ? [words.say('money-unusable')] : faults.map(({ text }) => text);
  if (texts.length === 0) return <span class="panel-summary">{summaryOf(panel, desk, words)}</span>;
  return <span class="panel-summary panel-fault"><span aria-hidden="true">!</span> {texts.join(' ')}</span>;
}

function summaryOf(panel: Panel, desk: Desk, { say, format }: Words): string {
  const { job, records, reading, frame, chosen } = desk;
  const layout = chosen.value;
  switch (panel) {
    case 'drawing': {
      const { value } = reading;
      if (value.kind !== 'answer') return value.kind === 'issues' ? say('not-readable') : say('no-drawing-yet');
      const { name, dieline: { blanks } } = value.answer;
      const [blank] = blanks;
      return blank ? `${name}, ${format.size(blank.box.maxX - blank.box.minX, blank.box.maxY - blank.box.minY)}` : say('no-blank-found');
    }
    case 'sheet': {
      const { size, press } = job.value.sheet;
      const record = records.value.presses.find(({ id }) => id === press);
      return [keepTogether(`${shownSize(size, format)} ${format.unit}`), record && nameOfRecord(record)].filter(Boolean).join(', ');
    }
    case 'limits':
      return frame.value.kind === 'answer' ? say('limits-summary', { gap: format.length(frame.value.answer.gap), bleed: format.length(frame.value.answer.bleed) }) : '';
    case 'layouts':
      return layout ? say(job.value.versions.list.length > 1 ? 'versions-summary' : 'ups', { ups: upsOf(layout), count: job.value.versions.list.length }) : '';
    case 'why': {
      // What is out of date claims nothing.
      const claim = layout && desk.chosenState.value !== 'out of date' && claimOf(layout);
      return claim && claim.word !== 'not-proved' ? say(claim.word, claim.facts) : '';
    }
    case 'money': {
      const { versions: { list }, money } = job.value;
      return list.length > 0 ? list.map(({ quantity }) => quantity).join(', ') : money.quantities;
    }
    case 'handover':
      return job.value.handover.layoutNumber;
  }
}
