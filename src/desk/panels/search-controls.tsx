import { useDesk } from '../desk-context.ts';
import { faultsOnDesk } from '../faults-on-desk.ts';
import type { Effort } from '../../nesting/effort.ts';
import { useWords } from '../words/words.ts';
import { ChoiceField } from './fields.tsx';
import { IssueList } from './issue-list.tsx';
import { SearchChart } from './search-chart.tsx';
import { upsOf } from '../job/layouts.ts';

/** Start, pause, stop, how much effort, and how it goes. */
export function SearchControls() {
  const { desk, searching } = useDesk();
  const { say } = useWords();
  const { phase } = desk.search.value;
  const active = phase === 'running' || phase === 'paused';
  return (
    <>
      <ChoiceField label={say('field-effort')} value={desk.job.value.effort} onChange={(effort: Effort) => desk.change((job) => ({ ...job, effort }))}
        options={[['quick', say('effort-quick')], ['normal', say('effort-normal')], ['thorough', say('effort-thorough')]]} />
      <div class="buttons">
        {!active && <button type="button" class={desk.chosen.value ? '' : 'primary'} disabled={desk.inputs.value === undefined} onClick={searching.start}>{say('start')}</button>}
        {phase === 'running' && <button type="button" onClick={searching.pause}>{say('pause')}</button>}
        {phase === 'paused' && <button type="button" onClick={searching.resume}>{say('go-on')}</button>}
        {active && <button type="button" onClick={searching.stop}>{say('stop')}</button>}
      </div>
      {desk.searchIssues.value.length > 0 ? <IssueList issues={desk.searchIssues.value} /> : <SearchLine />}
      <SearchChart />
    </>
  );
}

/** How the search stands, in one line. */
export function SearchLine() {
  const { desk } = useDesk();
  const words = useWords();
  const { say, format, issue } = words;
  const { phase, seconds, inputs } = desk.search.value;
  const best = desk.layouts.value.find((layout) => layout.inputs === inputs);
  const facts = { ups: best ? upsOf(best) : 0, limit: best?.limit?.ups ?? '?', time: format.duration(seconds) };
  const [why] = desk.searchIssues.value;
  if (faultsOnDesk(desk, words).length > 0) return <p class="search-line">{say('search-waits')}</p>;
  if (phase === 'failed' && why) return <p class="search-line panel-fault">{issue(why)}</p>;
  // The search for what has just been changed begins in a moment.
  const behind = desk.inputs.value !== undefined && desk.inputs.value !== inputs;
  if (behind) return <p class="search-line">{say('search-begins')}</p>;
  // Inputs that came back have their layouts still.
  if (phase === 'idle' && best) return <p class="search-line">{say('search-known', facts)}</p>;
  // With nothing on the desk there is nothing to say of a search.
  if (phase === 'idle' && !desk.job.value.drawing) return null;
  if (phase === 'idle' || (phase === 'running' && !best)) return <p class="search-line">{say(phase === 'idle' ? 'search-idle' : 'search-begins')}</p>;
  return <p class="search-line">{say(`search-${phase}`, facts)}</p>;
}
