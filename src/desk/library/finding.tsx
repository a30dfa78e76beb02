import { useState } from 'preact/hooks';
import { toMillimetres } from '../../base/units.ts';
import { flattenLoop } from '../../geometry/flatten.ts';
import type { EntriesReply, EntryLine } from '../../wire/library.ts';
import { useDesk } from '../desk-context.ts';
import type { Desk } from '../desk.ts';
import { lengthOf } from '../job/laying.ts';
import { typedExamples } from '../job/typed-length.ts';
import { ChoiceField, TextField } from '../panels/fields.tsx';
import { IssueList } from '../panels/issue-list.tsx';
import { LengthField } from '../panels/length-field.tsx';
import { useAnswer } from '../panels/use-answer.ts';
import { chosenBlank } from '../searching.ts';
import { useWords, type Words } from '../words/words.ts';
import { factName, factText } from './fact-names.ts';
import type { EntriesWanted, EntryKind, ServedLibrary } from './served-library.ts';
import { Thumbnail } from './thumbnail.tsx';

export interface Question extends EntriesWanted {
  /** Outline that is to be like, mm. */
  readonly like: readonly (readonly [number, number])[] | undefined;
}

interface Props {
  readonly library: ServedLibrary;
  readonly question: Question;
  readonly onAsk: (question: Question) => void;
  readonly onPick: (entry: { kind: EntryKind; id: string }) => void;
}

export const ENTRY_KINDS: readonly EntryKind[] = ['carton', 'die', 'layout', 'job', 'quote', 'batch', 'press', 'cutter', 'board', 'sheets', 'customer'];

/** Search by words, size or shape; what was found as cards with small pictures. */
export function Finding({ library, question, onAsk, onPick }: Props) {
  const { desk } = useDesk();
  const words = useWords();
  const { say } = words;
  const [typed, setTyped] = useState(question);
  const [withinText, setWithinText] = useState(String(question.within));
  const { kind } = typed;
  // What was asked stands with the answer: the last one stays in view until the next is there.
  const found = useAnswer(async () => ({ ...(await (question.like ? library.like(question.like, question) : library.entries(question))), asked: question }), [question]);
  const outline = outlineOnDesk(desk);
  const within = lengthOf(withinText);
  const isWithin = typeof within === 'number';
  const ask = (like: Question['like']) => isWithin && onAsk({ ...typed, within, page: 1, like });
  return (
    <>
      <form class="library-search" role="search" onSubmit={(event) => { event.preventDefault(); ask(undefined); }}>
        <TextField label={say('library-words')} hint={say('hint-library-words')} value={typed.text} onInput={(text) => setTyped({ ...typed, text })} />
        <ChoiceField label={say('library-kind')} value={kind} onChange={(chosen) => setTyped({ ...typed, kind: chosen })} options={[['', say('every-kind')], ...ENTRY_KINDS.map((one): [EntryKind, string] => [one, say(`kind-${one}`)])]} />
        <LengthField label={say('library-within')} value={withinText} fault={isWithin ? undefined : say('fault-length', typedExamples(words.format))} onInput={setWithinText} />
        <div class="buttons">
          <button type="submit" class="primary">{say('library-search')}</button>
          <button type="button" disabled={!outline} onClick={() => ask(outline)}>{say('library-like')}</button>
        </div>
      </form>
      {found.kind === 'issues' && <IssueList issues={found.issues} />}
      {found.kind === 'waiting' && <p>{say('reading')}</p>}
      {found.kind === 'answer' && (
        <>
          <p class="library-count" role="status">{say(found.answer.asked.like ? 'library-found-like' : 'library-found', { count: found.answer.total, within: found.answer.asked.within })}</p>
          <ul class="library-cards">
            {found.answer.entries.map((entry) => <Card key={`${entry.kind} ${entry.id}`} entry={entry} words={words} onPick={onPick} />)}
          </ul>
          <Pages answer={found.answer} onPage={(page) => onAsk({ ...found.answer.asked, page })} />
        </>
      )}
    </>
  );
}

function Card({ entry, words, onPick }: { readonly entry: EntryLine; readonly words: Words; readonly onPick: Props['onPick'] }) {
  const { say } = words;
  const { kind, id, told, picture } = entry;
  return (
    <li class="card">
      <button type="button" onClick={() => onPick({ kind, id })}>
        <Thumbnail picture={picture} />
        <span class="library-kind">{say(`kind-${kind}`)}</span>{' '}
        <strong>{id}</strong>{' '}
        <span class="card-facts">{told.map(([field, value]) => (field === 'name' ? String(value) : `${factName(field, words)} ${factText(field, value, words)}`)).join(' · ')}</span>{' '}
        <span class="card-facts">{why(entry, words)}</span>
      </button>
    </li>
  );
}

function why({ by }: EntryLine, { say, format }: Words): string {
  if (!by || by.how === 'words') return '';
  const off = format.length(by.offMm ?? 0);
  if (by.how !== 'shape') return say(`by-${by.how}`, { off });
  return [say('by-shape', { off }), by.rotation ? say('by-rotation', { degrees: by.rotation }) : '', by.mirrored ? say('by-mirrored') : ''].filter((part) => part !== '').join(', ');
}

export function Pages({ answer: { page, pages }, onPage }: { readonly answer: Pick<EntriesReply, 'page' | 'pages'>; readonly onPage: (page: number) => void }) {
  const { say } = useWords();
  if (pages <= 1) return null;
  return (
    <nav class="buttons" aria-label={say('pages')}>
      <button type="button" disabled={page <= 1} onClick={() => onPage(page - 1)}>{say('page-before')}</button>
      <span>{say('page-of', { page, pages })}</span>
      <button type="button" disabled={page >= pages} onClick={() => onPage(page + 1)}>{say('page-after')}</button>
    </nav>
  );
}

/** As fine as the library keeps its own, mm. */
const FLATTENING_MM = 0.02;

/** The outline of the blank that lies on the desk, mm. */
function outlineOnDesk(desk: Desk): Question['like'] {
  const blank = chosenBlank(desk);
  return blank && flattenLoop(blank.outline, { toleranceMm: FLATTENING_MM, side: 'near' }).ring.map(({ x, y }) => [toMillimetres(x), toMillimetres(y)] as const);
}
