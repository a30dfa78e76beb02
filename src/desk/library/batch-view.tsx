import { useState } from 'preact/hooks';
import type { BatchReply } from '../../wire/library.ts';
import { useDesk } from '../desk-context.ts';
import { Block } from '../panels/fields.tsx';
import { IssueList } from '../panels/issue-list.tsx';
import { useAnswer } from '../panels/use-answer.ts';
import { Picture } from '../picture/picture.tsx';
import { useWords, type Words } from '../words/words.ts';
import { Pages } from './finding.tsx';
import { putLayout } from './putting.ts';
import type { ServedLibrary } from './served-library.ts';

type Carton = BatchReply['cartons'][number];
type On = NonNullable<Carton['best']>;

/** Who saves what in a year: cartons, sheets, the total, and the layout behind each figure. */
export function BatchView({ library, id, onPut }: { readonly library: ServedLibrary; readonly id: string; readonly onPut: () => void }) {
  const words = useWords();
  const { say } = words;
  const [page, setPage] = useState(1);
  const [picked, setPicked] = useState<Carton>();
  const batch = useAnswer(() => library.batch(id, page), [id, page]);
  if (batch.kind === 'issues') return <IssueList issues={batch.issues} />;
  if (batch.kind !== 'answer') return <p>{say('reading')}</p>;
  const { answer } = batch;
  return (
    <>
      <p class="answer">{say('batch-total', { count: answer.cartonCount, worth: worth(answer.total, answer.currency, words) })}</p>
      {(!answer.complete || answer.refused > 0 || answer.doubtful > 0) && <p class="warning">{[answer.complete ? '' : say('batch-unfinished'), answer.refused > 0 ? say('batch-refused', { count: answer.refused }) : '', answer.doubtful > 0 ? say('batch-doubtful', { count: answer.doubtful }) : ''].filter((part) => part !== '').join(' ')}</p>}
      {picked?.best?.answer && <KeptLayout library={library} name={picked.id} answerKey={picked.best.answer} onPut={onPut} />}
      <CartonTable answer={answer} picked={picked} onPick={setPicked} words={words} />
      <Pages answer={answer} onPage={setPage} />
      <SheetTable answer={answer} words={words} />
      <p class="caution">{say('batch-caution')}</p>
    </>
  );
}

function worth({ boardM2, boardKg, money }: BatchReply['total'], currency: string, { format }: Words): string {
  return [format.board(boardM2, 0), boardKg === null ? '' : `${format.number(boardKg, 0)} kg`, money === null ? '' : format.money(money, currency)].filter((part) => part !== '').join(', ');
}

const OPEN = '–';

function CartonTable({ answer: { cartons, currency, total }, picked, onPick, words }: { readonly answer: BatchReply; readonly picked: Carton | undefined; readonly onPick: (carton: Carton) => void; readonly words: Words }) {
  const { say, format } = words;
  const whole = (value: number | null | undefined) => (value === null || value === undefined ? OPEN : format.number(value, 0));
  const board = (on: On | null) => (on?.boardM2PerThousand == null ? OPEN : format.bareBoard(on.boardM2PerThousand, 2));
  const size = (on: On | null) => (on ? format.size(on.sheet.width, on.sheet.height) : OPEN);
  const area = { area: format.boardUnit.name };
  const heads = ['batch-yearly', 'batch-ups-now', 'batch-ups', 'batch-most', 'batch-board-now', 'batch-board', 'batch-m2'] as const;
  return (
    <div class="scrolls" tabIndex={0} role="group" aria-label={say('batch-cartons')}>
      <table>
        <caption>{say('batch-cartons')}</caption>
        <thead>
          <tr>
            {(['kind-carton', 'batch-usual', 'batch-best'] as const).map((word) => <th key={word} scope="col">{say(word)}</th>)}
            {heads.map((word) => <th key={word} scope="col" class="number">{say(word, area)}</th>)}
            {total.money !== null && <th scope="col" class="number">{say('batch-money', { currency })}</th>}
          </tr>
        </thead>
        <tbody>
          {cartons.map((carton) => {
            const { id, name, yearly, usual, best, savingPerYear } = carton;
            return (
              <tr key={id}>
                <th scope="row">{best?.answer ? <button type="button" class="small" aria-pressed={carton === picked} onClick={() => onPick(carton)}>{name ?? id}</button> : (name ?? id)}</th>
                <td>{size(usual)}</td>
                <td>{size(best)}</td>
                {[whole(yearly), whole(usual?.ups), whole(best?.ups), whole(best?.upperBound), board(usual), board(best), savingPerYear ? format.bareBoard(savingPerYear.boardM2, 0) : OPEN].map((text, i) => <td key={i} class="number">{text}</td>)}
                {total.money !== null && <td class="number">{whole(savingPerYear?.money)}</td>}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function SheetTable({ answer: { sheets, currency, total }, words: { say, format } }: { readonly answer: BatchReply; readonly words: Words }) {
  return (
    <table>
      <caption>{say('batch-sheets')}</caption>
      <thead>
        <tr>
          <th scope="col">{say('batch-sheet')}</th>
          <th scope="col" class="number">{say('batch-best-for')}</th>
          <th scope="col" class="number">{say('batch-m2', { area: format.boardUnit.name })}</th>
          {total.money !== null && <th scope="col" class="number">{say('batch-money', { currency })}</th>}
        </tr>
      </thead>
      <tbody>
        {sheets.map(({ sheet, bestFor, savingPerYear: { boardM2, money } }, i) => (
          <tr key={i}>
            <th scope="row">{format.size(sheet.width, sheet.height)}</th>
            <td class="number">{format.number(bestFor, 0)}</td>
            <td class="number">{format.bareBoard(boardM2, 0)}</td>
            {total.money !== null && <td class="number">{money === null ? OPEN : format.number(money, 0)}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The layout that a figure rests on, from the answers that are kept. */
function KeptLayout({ library, name, answerKey, onPut }: { readonly library: ServedLibrary; readonly name: string; readonly answerKey: string; readonly onPut: () => void }) {
  const parts = useDesk();
  const { say, format } = useWords();
  const kept = useAnswer(async () => {
    const { layout, ups } = await library.answer(answerKey, name);
    const scene = await parts.desk.engine.ask('picture', { file: layout as never, grain: undefined, small: true });
    return { layout, ups, scene };
  }, [answerKey, name, format]);
  if (kept.kind === 'issues') return <IssueList issues={kept.issues} />;
  if (kept.kind !== 'answer') return <p>{say('drawing-picture')}</p>;
  const { layout, ups, scene } = kept.answer;
  const put = async () => {
    await putLayout(parts, name, layout);
    onPut();
  };
  return (
    <Block title={say('batch-layout', { name })}>
      <figure>
        <Picture still scene={scene} name="kept-layout" label={say('picture-of-layout', { ups, size: format.size(layout.sheet.width, layout.sheet.height) })} />
        <figcaption>{say('ups', { ups })} · {format.size(layout.sheet.width, layout.sheet.height)}</figcaption>
      </figure>
      <button type="button" class="primary" onClick={() => void put()}>{say('put-layout-on-desk')}</button>
    </Block>
  );
}
