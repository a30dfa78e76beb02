import type { Issue } from '../../base/issue.ts';
import type { RunToPrice } from '../../pipeline/gang/price-run.ts';
import { keepTogether } from '../../render/no-break.ts';
import { useDesk } from '../desk-context.ts';
import type { Face } from '../desk.ts';
import { download } from '../files/files.ts';
import type { KeptLayout } from '../job/job.ts';
import { upsOf } from '../job/layouts.ts';
import { quotedOf, quoteOf, type Quoted } from '../job/quote-of.ts';
import { runOfPlan } from '../outlines/run-of-plan.ts';
import { runOf } from '../versions/run-of.ts';
import { useWords } from '../words/words.ts';
import { IssueList } from './issue-list.tsx';
import { MissingRates } from './missing-rates.tsx';
import { ReportView, SectionView } from './report-view.tsx';
import { useAnswer } from './use-answer.ts';

/** What versions on the stations of a layout come to, in money. */
export function VersionsMoney({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const priced = runOf(desk.job.value.versions, upsOf(layout));
  return <RunMoney heading={say('run-in-money')} quoted={quotedOf(layout)} file="quote-versions.html" {...('run' in priced ? priced : { open: say(priced.open), to: say('to-versions'), face: 'versions' })} />;
}

/** What outlines on the forms found for them come to; nothing while there are no outlines. */
export function OutlinesMoney() {
  const { desk } = useDesk();
  const { say } = useWords();
  const { list, plan } = desk.job.value.outlines;
  if (list.length === 0 && !plan) return null;
  const priced = runOfPlan(desk);
  const sheet = plan?.forms[0]?.file.sheet;
  return <RunMoney heading={say('outlines-in-money')} quoted={sheet && { ups: 1, sheet }} file="quote-outlines.html" {...('run' in priced ? priced : { open: say(priced.open), to: say('to-outlines'), face: 'outlines' })} />;
}

type Run = { readonly run: RunToPrice } | { readonly open: string; readonly to: string; readonly face: Face };

/** Sections that stand open; the others hold the formulas. */
const OPEN = ['versions', 'forms', 'shared'];

/** A run as it is priced, or what keeps it from being priced with the way there. `file`: name of its page. */
function RunMoney(props: { readonly heading: string; readonly quoted: Quoted | undefined; readonly file: string } & Run) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const { heading, quoted, file } = props;
  const { value: job } = desk.job;
  // The run brings quantities of its own: the field does not matter to it.
  const terms = quoted && quoteOf({ ...job, money: { ...job.money, quantities: '1' } }, desk.records.value, quoted);
  const ask = 'run' in props && terms && 'job' in terms ? { run: props.run, quote: terms } : undefined;
  const answer = useAnswer(ask && (() => desk.engine.ask('run', ask)), [JSON.stringify(ask), format]);
  const lead = (face: Face) => {
    desk.face.value = face;
    desk.panel.value = 'layouts';
  };
  return (
    <section class="run-money" aria-label={heading}>
      <h3>{heading}</h3>
      {'open' in props && <p class="warning">{props.open} <button type="button" class="small" onClick={() => lead(props.face)}>{props.to}</button></p>}
      {'run' in props && terms && 'faults' in terms && <p class="warning">{say('money-has-faults')}</p>}
      {ask && answer.kind === 'issues' && (answer.issues.every(isOpen) ? <MissingRates missing={[{ figure: 'grammage', text: say('field-grammage') }]} /> : <IssueList issues={answer.issues} />)}
      {ask && answer.kind === 'answer' && (
        <>
          <p class="answer" role="status">{keepTogether(answer.answer.report.answer)}</p>
          {answer.answer.missing.length > 0 && <MissingRates missing={answer.answer.missing} />}
          {answer.answer.report.sections.filter(({ id }) => OPEN.includes(id)).map((section) => <SectionView key={section.id} section={section} />)}
          <p class="hint holds">{keepTogether(answer.answer.rates)}</p>
          <details>
            <summary>{say('every-formula')}</summary>
            <ReportView report={{ ...answer.answer.report, sections: answer.answer.report.sections.filter(({ id }) => !OPEN.includes(id)) }} />
          </details>
          <div class="buttons"><button type="button" class="small" onClick={() => void desk.engine.ask('runPage', ask).then((page) => download(file, page))}>{say('save-run')}</button></div>
        </>
      )}
    </section>
  );
}

/** Something that nobody has said yet is no error. */
export function isOpen({ code }: Issue): boolean {
  return code === 'grammage-missing';
}
