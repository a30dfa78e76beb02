import { useState } from 'preact/hooks';
import { faultIssue } from '../../layout/fault-issue.ts';
import { useDesk } from '../desk-context.ts';
import type { KeptLayout } from '../job/job.ts';
import { claimOf, isShownOnly, upsOf, yieldOf } from '../job/layouts.ts';
import { HandSheet } from '../sheet/hand-sheet.tsx';
import { OutlinesFace } from '../outlines/outlines-face.tsx';
import { takeFile } from '../taking.ts';
import { VersionsFace } from '../versions/versions-face.tsx';
import { useWords } from '../words/words.ts';
import { Block } from './fields.tsx';
import { Comparison } from './comparison.tsx';
import { FilePicker } from './file-picker.tsx';
import { IssueList } from './issue-list.tsx';
import { Layout } from './layout.tsx';
import { NothingYet } from './nothing-yet.tsx';
import { PlacementsTable } from './placements-table.tsx';
import { SearchControls } from './search-controls.tsx';
import { StateMark } from './state-mark.tsx';
import { TakeChange } from './take-change.tsx';
import { useAnswer } from './use-answer.ts';

export function LayoutsPanel() {
  const { desk } = useDesk();
  const { say } = useWords();
  const layouts = desk.layouts.value;
  const chosen = desk.chosen.value;
  if (desk.face.value === 'versions') return <VersionsFace layout={chosen} />;
  if (desk.face.value === 'outlines') return <OutlinesFace />;
  return (
    <Layout
      controls={
        <>
          <Block isForDoing title={say('search')}>
            <SearchControls />
          </Block>
          <Block isForDoing title={say('found', { count: layouts.length })}>
            <ol class="cards">{layouts.map((layout) => <Card key={layout.id} layout={layout} />)}</ol>
            <FilePicker accept=".json" label={say('open-layout')} hint={say('hint-layout')} onFile={(name, content) => void takeFile(desk, name, content)} />
          </Block>
        </>
      }
      picture={
        chosen ? (
          <>
            <Comparison />
            <ChosenSheet layout={chosen} />
            <PlacementsTable layout={chosen} />
          </>
        ) : (
          <NothingFound />
        )
      }
    />
  );
}

/** Why there is no layout, as far as it is known. */
function NothingFound() {
  const { desk } = useDesk();
  const issues = desk.searchIssues.value;
  return issues.length > 0 ? <div class="empty"><IssueList issues={issues} /></div> : <NothingYet />;
}

function Card({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say, format, foundBy, changeOf } = useWords();
  const { job } = desk;
  const isChosen = desk.chosen.value?.id === layout.id;
  const isBeside = job.value.beside.includes(layout.id);
  const choose = () => desk.change((now) => ({ ...now, chosen: layout.id }));
  const compare = () => desk.change((now) => ({ ...now, beside: isBeside ? now.beside.filter((id) => id !== layout.id) : [...now.beside, layout.id].slice(-2) }));
  const claim = claimOf(layout);
  const size = format.size(layout.file.sheet.width, layout.file.sheet.height);
  return (
    <li class={isChosen ? 'card chosen' : 'card'}>
      <button type="button" class="card-main" aria-pressed={isChosen} onClick={choose}>
        <span class="card-ups">{say('ups', { ups: upsOf(layout) })}</span>
        <StateMark state={desk.stateOf(layout)} />
        <span class="card-facts">
          {[claim && say(claim.word, claim.facts), format.percent(yieldOf(layout))].filter(Boolean).join(' · ')}
        </span>
        <span class="card-facts">{say('found-by', { source: foundBy(layout) })} · {size}</span>
        {isShownOnly(layout) && <span class="card-facts">{say('shown-only', { change: changeOf(layout) })}</span>}
      </button>
      <TakeChange layout={layout} />
      {!isChosen && <button type="button" class="small" aria-pressed={isBeside} onClick={compare}>{say(isBeside ? 'compare-off' : 'compare')}</button>}
    </li>
  );
}

function ChosenSheet({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const { file, state } = layout;
  const [focus, setFocus] = useState<{ place: readonly [number, number] }>();
  const judged = useAnswer(state === 'faulty' ? () => desk.engine.ask('judge', file) : undefined, [file, state]);
  const issues = state === 'faulty' && judged.kind === 'answer' ? judged.answer.faults.slice(0, MOST_FAULTS_LISTED).map(faultIssue) : [];
  return (
    <>
      <HandSheet layout={layout} goTo={focus} />
      {issues.length > 0 && <h3>{say('faults-of-layout', { count: issues.length })}</h3>}
      <IssueList issues={issues} onGoTo={({ place }) => place && setFocus({ place: [place[0], place[1]] })} />
    </>
  );
}

/** More lines only scroll; the first ones are mended first. */
const MOST_FAULTS_LISTED = 50;
