import type { QuoteAsk } from '../engine/protocol.ts';
import { useDesk } from '../desk-context.ts';
import type { KeptLayout } from '../job/job.ts';
import { upsOf } from '../job/layouts.ts';
import { keepTogether } from '../../render/no-break.ts';
import { runOf } from '../versions/run-of.ts';
import { useWords } from '../words/words.ts';
import { IssueList } from './issue-list.tsx';
import { ReportView, SectionView } from './report-view.tsx';
import { useAnswer } from './use-answer.ts';

/** Sections that stand open; the others hold the formulas. */
const OPEN = ['versions', 'forms', 'shared', 'missing'];

/** What versions on the stations of a layout come to, in money; nothing while there are none. */
export function RunMoney({ layout, quote }: { readonly layout: KeptLayout; readonly quote: QuoteAsk | undefined }) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { versions } = desk.job.value;
  const priced = runOf(versions, upsOf(layout));
  const open = 'open' in priced ? priced.open : undefined;
  const run = 'run' in priced ? priced.run : undefined;
  const answer = useAnswer(run && quote && (() => desk.engine.ask('run', { run, quote })), [JSON.stringify(run), JSON.stringify(quote), format]);
  if (versions.list.length === 0) return null;
  const toVersions = () => {
    desk.face.value = 'versions';
    desk.panel.value = 'layouts';
  };
  return (
    <section class="run-money" aria-label={say('run-in-money')}>
      <h3>{say('run-in-money')}</h3>
      {open && <p class="warning">{say(open)} <button type="button" class="small" onClick={toVersions}>{say('to-versions')}</button></p>}
      {!open && answer.kind === 'issues' && <IssueList issues={answer.issues} />}
      {!open && answer.kind === 'answer' && (
        <>
          <p class="answer" role="status">{keepTogether(answer.answer.report.answer)}</p>
          {answer.answer.ratesName !== undefined && <p class="invented">{say('rates-from', { name: answer.answer.ratesName })}</p>}
          {answer.answer.report.sections.filter(({ id }) => OPEN.includes(id)).map((section) => <SectionView key={section.id} section={section} />)}
          <details>
            <summary>{say('every-formula')}</summary>
            <ReportView report={{ ...answer.answer.report, sections: answer.answer.report.sections.filter(({ id }) => !OPEN.includes(id)) }} />
          </details>
        </>
      )}
    </section>
  );
}
