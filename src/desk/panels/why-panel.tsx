import { useDesk } from '../desk-context.ts';
import { explainAskOf } from '../job/explain-ask.ts';
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
