import { useState } from 'preact/hooks';
import { useDesk } from '../desk-context.ts';
import type { Desk } from '../desk.ts';
import type { OutputFile } from '../engine/protocol.ts';
import { download } from '../files/files.ts';
import { downloadZip } from '../files/zip.ts';
import { currencyOf, type KeptLayout } from '../job/job.ts';
import { quotedOf, quoteOf } from '../job/quote-of.ts';
import { versionsOnForms } from '../job/versions.ts';
import { runOf } from '../versions/run-of.ts';
import { useWords } from '../words/words.ts';
import type { HandoverDetails } from '../../render/handover-facts.ts';
import { IssueList } from './issue-list.tsx';
import { useAnswer } from './use-answer.ts';
import { explainAskOf } from '../job/explain-ask.ts';

interface Props {
  readonly layout: KeptLayout;
  readonly details: HandoverDetails;
}

/** Files that are not among those to be saved, and why. */
interface Missing {
  readonly files: readonly string[];
  readonly why: 'missing-production' | 'missing-quote' | 'missing-customer-quote';
}

/** Everything that is handed over of a sound layout, and plainly what is not there. */
export function HandoverFiles({ layout, details }: Props) {
  const { desk } = useDesk();
  const { say, locale, format } = useWords();
  const { versions, money } = desk.job.value;
  const onForms = versionsOnForms(versions, layout.file.placements.length, say('prints-nothing'), currencyOf(money));
  const from = JSON.stringify([layout.file.sheet, layout.file.placements, details, onForms, money, locale, format.unit]);
  // Nothing is offered before all of it is there, or a folder would lack its report.
  const answer = useAnswer(async () => {
    const pages = await pagesOf(desk, layout);
    const made = await desk.engine.ask('handover', { file: layout.file, details, versions: onForms, besides: pages.files });
    const missing: readonly Missing[] = [...(made.missing.length > 0 ? [{ files: made.missing, why: 'missing-production' } as const] : []), ...pages.missing];
    return { ...made, missing, from };
    // At its end a search knows more of the same layout: the report says so, and meanwhile what was made stays good.
  }, [from, layout.id]);
  if (answer.kind === 'issues') return <IssueList issues={answer.issues} />;
  if (answer.kind !== 'answer') return <p>{say('making-files')}</p>;
  const { files, missing, waiting } = answer.answer;
  // What was typed since is not in the files yet.
  const isCurrent = answer.answer.from === from;
  const lacking = missing.flatMap(({ files: names, why }) => (why === 'missing-production' ? names : []));
  return (
    <>
      <IssueList issues={waiting} />
      {missing.map(({ files: names, why }) => <p key={why} class={why === 'missing-production' ? 'warning' : 'note'}>{say(why, { files: names.join(', ') })}</p>)}
      {versions.plan && !onForms && <p class="warning">{say('versions-not-handed-over')}</p>}
      <SaveAll files={files} lacking={lacking} isCurrent={isCurrent} />
      <ul class="files">
        {files.map(({ name, content }) => (
          <li key={name} data-name={name}>
            <button type="button" disabled={!isCurrent} onClick={() => download(name, content)}>{say('download', { name })}</button>
            <span class="note">{say(`file-${name.slice(name.lastIndexOf('.') + 1)}` as 'file-svg')}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** One button for all of it, as one file or into a folder. Files of somebody else are not replaced before the person has said so. */
function SaveAll({ files, lacking, isCurrent }: { readonly files: readonly OutputFile[]; readonly lacking: readonly string[]; readonly isCurrent: boolean }) {
  const { desk, files: place } = useDesk();
  const { say } = useWords();
  const [standing, setStanding] = useState<{ readonly names: readonly string[]; readonly decide: (replace: boolean) => void }>();
  const { folder, save } = place;
  const count = { count: files.length, files: lacking.join(', ') };
  const without = lacking.length > 0;
  const ask = (names: readonly string[]) => new Promise<boolean>((decide) => setStanding({ names, decide })).finally(() => setStanding(undefined));
  const into = async (write: NonNullable<typeof save>) => {
    const saved = await write(files, ask);
    const older = saved === 'saved' && folder !== undefined ? (await place.list()).filter((name) => lacking.includes(name)) : [];
    const outcome = say(saved === 'saved' ? (without ? 'files-saved-without' : 'files-saved') : saved === 'called off' ? 'files-called-off' : 'files-not-saved', count);
    desk.notice.value = older.length > 0 ? `${outcome} ${say('files-of-earlier', { files: older.join(', ') })}` : outcome;
  };
  const asOne = async () => {
    await downloadZip([desk.job.value.name || say('unnamed'), desk.job.value.handover.layoutNumber].filter(Boolean).join(' '), files);
    desk.notice.value = say(without ? 'files-packed-without' : 'files-packed', count);
  };
  const idle = isCurrent && standing === undefined;
  return (
    <>
      <p class="buttons">
        {folder === undefined && <button type="button" class="primary" disabled={!idle} onClick={() => void asOne()}>{say(without ? 'pack-those-there' : 'pack-all', count)}</button>}
        {save && (
          <button type="button" class={folder === undefined ? undefined : 'primary'} disabled={!idle} onClick={() => void into(save)}>
            {folder === undefined ? say('save-into-chosen') : say(without ? 'save-those-there-into' : 'save-into', { count: files.length, folder })}
          </button>
        )}
      </p>
      {standing && (
        <div class="warning" role="alert">
          <p>{say('files-standing', { files: standing.names.join(', ') })}</p>
          <div class="buttons">
            <button type="button" onClick={() => standing.decide(true)}>{say('replace-files')}</button>
            <button type="button" onClick={() => standing.decide(false)}>{say('leave-files')}</button>
          </div>
        </div>
      )}
    </>
  );
}

/** Report and quote. What a quote still lacks stands in the money panel; the layout does not wait for it. */
async function pagesOf(desk: Desk, layout: KeptLayout): Promise<{ readonly files: readonly OutputFile[]; readonly missing: readonly Missing[] }> {
  const { html } = await desk.engine.ask('explain', explainAskOf(layout));
  const { value: job } = desk.job;
  const report = { name: 'report.html', content: html };
  const quote = quoteOf(job, desk.records.value, quotedOf(layout));
  const versions = job.versions.list.length === 0 ? undefined : runOf(job.versions, layout.file.placements.length);
  const run = versions && 'run' in versions ? { run: versions.run } : {};
  const pages = 'faults' in quote ? [] : await desk.engine.ask('pages', { ...quote, ...run }).catch(() => []);
  const files = QUOTE_PAGES.filter((name) => !pages.some((page) => page.name === name));
  return { files: [report, ...pages], missing: files.length === 0 ? [] : [{ files, why: pages.length === 0 ? 'missing-quote' : 'missing-customer-quote' }] };
}

const QUOTE_PAGES = ['quote.html', 'quote-customer.html'];
