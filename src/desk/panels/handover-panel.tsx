import { useDesk } from '../desk-context.ts';
import type { OutputFile } from '../engine/protocol.ts';
import { download } from '../files/files.ts';
import type { HandoverFields, Job } from '../job/job.ts';
import { boardOf, type Records } from '../job/records.ts';
import { quotedOf, quoteOf } from '../job/quote-of.ts';
import { versionsOnForms } from '../job/versions.ts';
import { useWords } from '../words/words.ts';
import type { HandoverDetails } from '../../render/handover-facts.ts';
import { Block, TextField } from './fields.tsx';
import { IssueList } from './issue-list.tsx';
import { Layout } from './layout.tsx';
import { StateMark } from './state-mark.tsx';
import { useAnswer } from './use-answer.ts';
import { explainAskOf } from './why-panel.tsx';

export function HandoverPanel() {
  const { desk } = useDesk();
  const { say, sourceName } = useWords();
  const { handover } = desk.job.value;
  const chosen = desk.chosen.value;
  const state = desk.chosenState.value;
  const set = (field: keyof HandoverFields, text: string) => desk.change((job) => ({ ...job, handover: { ...job.handover, [field]: text } }), field);
  const field = (name: keyof HandoverFields) => <TextField key={name} label={say(`field-${name}`)} value={handover[name]} onInput={(text) => set(name, text)} />;
  return (
    <Layout
      controls={<Block title={say('on-every-page')}>{(['layoutNumber', 'revision', 'product', 'quantity', 'approvedBy', 'date'] as const).map(field)}</Block>}
      picture={
        <div class="handover">
          {chosen && state ? (
            <p>
              {say('handed-over', { ups: chosen.file.placements.length, source: sourceName(chosen.source) })} <StateMark state={state} />
            </p>
          ) : (
            <p class="empty">{say('nothing-found-yet')}</p>
          )}
          {chosen && state !== 'sound' && <p class="warning">{say(`not-handed-over-${state === 'out of date' ? 'out-of-date' : state === 'faulty' ? 'faulty' : 'not-judged'}`)}</p>}
          {chosen && state === 'sound' && <FileList />}
          <p class="caution">{say('caution')}</p>
        </div>
      }
    />
  );
}

function FileList() {
  const { desk, files: place } = useDesk();
  const { say, locale, format } = useWords();
  const job = desk.job.value;
  const chosen = desk.chosen.value!;
  const details = detailsOf(job, desk.records.value);
  const versions = versionsOnForms(job.versions, chosen.file.placements.length, say('prints-nothing'));
  const answer = useAnswer(() => desk.engine.ask('handover', { file: chosen.file, details, versions }), [chosen.file, JSON.stringify([details, versions]), locale]);
  const pages = useAnswer(reportPages, [chosen, JSON.stringify(job.money), format]);
  if (answer.kind === 'issues') return <IssueList issues={answer.issues} />;
  if (pages.kind === 'issues') return <IssueList issues={pages.issues} />;
  // Nothing is offered before all of it is there, or a folder would lack its report.
  if (answer.kind !== 'answer' || pages.kind !== 'answer') return <p>{say('making-files')}</p>;
  const files = [...answer.answer.files, ...pages.answer];
  const saveAll = async () => {
    const saved = await place.save(files);
    desk.notice.value = say(saved ? 'files-saved' : 'files-not-saved', { count: files.length, folder: place.folder ?? '' });
  };
  return (
    <>
      <IssueList issues={answer.answer.waiting} />
      {job.versions.plan && !versions && <p class="warning">{say('versions-not-handed-over')}</p>}
      <p>
        <button type="button" class="primary" onClick={() => void saveAll()}>
          {place.folder === undefined ? say('save-all') : say('save-into', { folder: place.folder })}
        </button>
      </p>
      <ul class="files">
        {files.map(({ name, content }) => (
          <li key={name}>
            <button type="button" onClick={() => download(name, content)}>{say('download', { name })}</button>
            <span class="note">{say(`file-${endingOf(name)}` as 'file-svg')}</span>
          </li>
        ))}
      </ul>
    </>
  );

  async function reportPages(): Promise<readonly OutputFile[]> {
    const { html } = await desk.engine.ask('explain', explainAskOf(chosen));
    const quote = quoteOf(job, desk.records.value, quotedOf(chosen));
    const report = { name: 'report.html', content: html };
    if ('faults' in quote) return [report];
    try {
      return [report, ...(await desk.engine.ask('pages', { job: quote.job, inventedRates: job.money.inventedRates }))];
    } catch {
      // What a quote still lacks stands in the money panel; the layout does not wait for it.
      return [report];
    }
  }
}

function endingOf(name: string): string {
  return name.slice(name.lastIndexOf('.') + 1);
}

function detailsOf({ handover, sheet }: Job, records: Records): HandoverDetails {
  const board = boardOf(records, sheet.board);
  const { sheetGrain } = sheet;
  const quantity = Number(handover.quantity.replace(/\s/g, ''));
  const filled = Object.fromEntries(Object.entries(handover).filter(([name, text]) => name !== 'quantity' && text !== ''));
  return {
    ...filled,
    ...(Number.isInteger(quantity) && quantity > 0 && { quantity }),
    ...(board && { board: board as HandoverDetails['board'] }),
    ...((sheetGrain === 'x' || sheetGrain === 'y') && { grain: sheetGrain }),
  };
}
