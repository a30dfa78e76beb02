import { useState } from 'preact/hooks';
import { useDesk } from '../desk-context.ts';
import type { KeptLayout } from '../job/job.ts';
import { letterOf, nameOf } from '../job/versions.ts';
import { upsOf } from '../job/layouts.ts';
import { useAnswer } from '../panels/use-answer.ts';
import { useWords } from '../words/words.ts';
import { StationPicture } from './station-picture.tsx';
import { Swatch } from './version-looks.tsx';
import { copyForm, giveStation, removeForm } from './versions-work.ts';

interface Props {
  readonly layout: KeptLayout;
  /** `[form][station]`: row of the version. */
  readonly printed: readonly (readonly (number | undefined)[])[];
  /** Of each form, once known. */
  readonly pressings: readonly number[] | undefined;
}

/** What a click gives a station: the version after its own, none, or the one of a row. */
type Brush = 'next' | 'nothing' | number;

/** One form at a time, to be looked at and changed station by station. */
export function FormView({ layout, printed, pressings }: Props) {
  const { desk } = useDesk();
  const { say, format, locale } = useWords();
  const [at, setAt] = useState(0);
  const [chosen, setChosen] = useState<Brush>('next');
  const { list } = desk.job.value.versions;
  const sheet = useAnswer(() => desk.engine.ask('stationSheet', layout.file), [layout.file, locale]);
  const stations = upsOf(layout);
  const form = Math.min(at, printed.length - 1);
  if (sheet.kind !== 'answer' || sheet.answer.stations.length !== stations) return <p class="empty">{say('drawing-picture')}</p>;
  const hasPlan = form >= 0;
  const onForm = hasPlan ? printed[form]! : new Array<number | undefined>(stations).fill(undefined);
  const brush = typeof chosen === 'number' && chosen >= list.length ? 'next' : chosen;
  const versionName = (row: number) => nameOf(list[row]!.name, row);
  const nameOfStation = (station: number) => {
    const row = onForm[station];
    return row === undefined ? say('station-empty', { station: station + 1 }) : say('station-prints', { station: station + 1, letter: letterOf(row), name: versionName(row) });
  };
  const give = (station: number, row: number | undefined) => hasPlan && giveStation(desk, stations, form, station, row === undefined ? '' : list[row]!.id);
  const shareOutFirst = () => (desk.notice.value = say('share-out-first', { button: say('share-out', { stations }) }));
  const press = (station: number) => (hasPlan ? give(station, brush === 'nothing' ? undefined : brush === 'next' ? (list.length === 0 ? undefined : ((onForm[station] ?? -1) + 1) % list.length) : brush) : shareOutFirst());
  const count = printed.length;
  const run = pressings?.[form];
  return (
    <div class="form-view">
      {hasPlan && (
        <div class="form-head">
          <button type="button" disabled={form === 0} onClick={() => setAt(form - 1)} aria-label={say('previous-form')}>‹</button>
          <h3 aria-live="polite">{run === undefined ? say('form-of-waiting', { number: form + 1, count }) : say('form-of', { number: form + 1, count, pressings: format.number(run, 0) })}</h3>
          <button type="button" disabled={form === count - 1} onClick={() => setAt(form + 1)} aria-label={say('next-form')}>›</button>
          <span class="buttons">
            <button type="button" class="small" onClick={() => { copyForm(desk, form); setAt(form + 1); }}>{say('add-form')}</button>
            <button type="button" class="small" onClick={() => removeForm(desk, form)}>{say('remove-form')}</button>
          </span>
        </div>
      )}
      {run === 0 && <p class="hint">{say('form-idle')}</p>}
      {hasPlan && (
        <fieldset class="brushes">
          <legend>{say('station-gets')}</legend>
          {(['next', 'nothing'] as const).map((kind) => (
            <label key={kind} class="check">
              <input type="radio" name="brush" checked={brush === kind} onChange={() => setChosen(kind)} />
              {say(kind === 'next' ? 'next-version' : 'prints-nothing')}
            </label>
          ))}
          {list.map(({ id }, row) => (
            <label key={id} class="check">
              <input type="radio" name="brush" checked={brush === row} onChange={() => setChosen(row)} />
              <Swatch row={row} prefix="brush" /> {versionName(row)}
            </label>
          ))}
        </fieldset>
      )}
      <StationPicture sheet={sheet.answer} printed={onForm} versions={list.length} nameOf={nameOfStation}
        label={say('picture-of-form', { number: form + 1, stations, size: format.size(layout.file.sheet.width, layout.file.sheet.height) })}
        onGive={give} onPress={press} />
      {hasPlan && <p class="hint">{say('hint-stations')}</p>}
    </div>
  );
}
