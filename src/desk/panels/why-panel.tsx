import { useDesk } from '../desk-context.ts';
import type { ExplainAsk } from '../engine/protocol.ts';
import type { KeptLayout } from '../job/job.ts';
import { useWords } from '../words/words.ts';
import { IssueList } from './issue-list.tsx';
import { Layout } from './layout.tsx';
import { NearMisses } from './near-misses.tsx';
import { NothingYet } from './nothing-yet.tsx';
import { ReportView } from './report-view.tsx';
import { useAnswer } from './use-answer.ts';
import { WastePicture } from './waste-picture.tsx';

export function WhyPanel() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const chosen = desk.chosen.value;
  const answer = useAnswer(chosen && (() => desk.engine.ask('explain', explainAskOf(chosen))), [chosen, format]);
  if (!chosen) return <NothingYet />;
  if (answer.kind === 'issues') return <IssueList issues={answer.issues} />;
  if (answer.kind !== 'answer') return <p class="empty">{say('drawing-picture')}</p>;
  const { report, waste } = answer.answer;
  return (
    <Layout
      isReading
      controls={
        <>
          <ReportView report={report} />
          <NearMisses layout={chosen} />
        </>
      }
      picture={<WastePicture scene={waste} />}
    />
  );
}

export function explainAskOf(layout: KeptLayout): ExplainAsk {
  const { file, limit, stopped, seconds, notes, history, limits } = layout;
  return { file, name: file.designs.map(({ id }) => id).join(', '), limit, stopped, seconds, notes, history, limits };
}
