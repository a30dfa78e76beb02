import { useState } from 'preact/hooks';
import { NO_OVERS, type OversFields } from '../job/overs.ts';
import { useWords } from '../words/words.ts';

interface Props {
  /** How a row is called, and its own limits. */
  readonly rows: readonly { readonly name: string; readonly overs: OversFields | undefined }[];
  /** What holds where a row says nothing. */
  readonly all: OversFields;
  readonly faulty: readonly number[];
  readonly onInput: (row: number, overs: OversFields) => void;
}

/** Least and greatest overs of those that differ from the rest, row by row. */
export function OwnOvers({ rows, all, faulty, onInput }: Props) {
  const { say } = useWords();
  // Open from the start where something is typed; after that as the person leaves it.
  const [anyOwn] = useState(rows.some(({ overs }) => overs !== undefined && (overs.least !== '' || overs.greatest !== '')));
  const field = (row: number, which: keyof OversFields, usual: string) => {
    const { name, overs = NO_OVERS } = rows[row]!;
    return (
      <input class="number" aria-label={say(`own-${which}`, { name })} value={overs[which]} placeholder={all[which] || usual} autocomplete="off" aria-invalid={faulty.includes(row)}
        onInput={(event) => onInput(row, { ...overs, [which]: event.currentTarget.value })} />
    );
  };
  return (
    <details class="own-overs" open={anyOwn}>
      <summary>{say('own-overs')}</summary>
      <table>
        <thead><tr><td /><th scope="col">{say('column-least')}</th><th scope="col">{say('column-greatest')}</th></tr></thead>
        <tbody>
          {rows.map(({ name }, row) => (
            <tr key={row}>
              <th scope="row">{name}</th>
              <td>{field(row, 'least', '0')}</td>
              <td>{field(row, 'greatest', say('any-overs'))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {faulty.length > 0 && <p class="warning">{say('fault-overs')}</p>}
    </details>
  );
}
