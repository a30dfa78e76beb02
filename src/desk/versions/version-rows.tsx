import { useDesk } from '../desk-context.ts';
import { letterOf, MOST_VERSIONS, pastedRows, type VersionFault, type VersionFields } from '../job/versions.ts';
import { useWords } from '../words/words.ts';
import { changeVersions } from './versions-work.ts';
import { Swatch } from './version-looks.tsx';
import { newId } from '../new-id.ts';

/** The versions with their quantities, one row each; a list can be pasted. */
export function VersionRows({ faults }: { readonly faults: readonly VersionFault[] }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const { list } = desk.job.value.versions;
  const isFaulty = (field: 'name' | 'quantity', row: number) => faults.some((fault) => fault.field === field && fault.row === row);
  const set = (row: number, fields: Partial<VersionFields>) =>
    changeVersions(desk, (versions) => ({ ...versions, list: versions.list.with(row, { ...versions.list[row]!, ...fields }) }), `version ${row} ${Object.keys(fields).join()}`);
  const remove = (row: number) => changeVersions(desk, (versions) => ({ ...versions, list: versions.list.toSpliced(row, 1) }));
  const add = () => changeVersions(desk, (versions) => ({ ...versions, list: [...versions.list, newRow('', '')].slice(0, MOST_VERSIONS) }));
  const paste = (event: ClipboardEvent, row: number) => {
    const rows = pastedRows(event.clipboardData?.getData('text/plain') ?? '');
    if (rows.length < 2 && rows[0]?.quantity === '') return;
    if (rows.length === 0) return;
    event.preventDefault();
    const fresh = rows.map(({ name, quantity }) => newRow(name, quantity));
    changeVersions(desk, (versions) => ({ ...versions, list: versions.list.toSpliced(row, 1, { ...fresh[0]!, id: versions.list[row]!.id }, ...fresh.slice(1)).slice(0, MOST_VERSIONS) }));
  };
  return (
    <>
      <ul class="gang-rows">
        {list.map(({ id, name, quantity }, row) => (
          <li key={id}>
            <Swatch row={row} prefix="row" />
            <input aria-label={say('version-name', { letter: letterOf(row) })} value={name} placeholder={say('version-name', { letter: letterOf(row) })} autocomplete="off" spellcheck={false} aria-invalid={isFaulty('name', row)}
              onInput={(event) => set(row, { name: event.currentTarget.value })} onPaste={(event) => paste(event, row)} />
            <input class="number" aria-label={say('version-quantity', { letter: letterOf(row) })} value={quantity} placeholder={say('quantity-short')} inputMode="numeric" autocomplete="off" aria-invalid={quantity !== '' && isFaulty('quantity', row)}
              onInput={(event) => set(row, { quantity: event.currentTarget.value })} />
            <button type="button" class="small" aria-label={say('remove-version', { letter: letterOf(row) })} onClick={() => remove(row)}>×</button>
          </li>
        ))}
      </ul>
      <div class="buttons">
        <button type="button" disabled={list.length >= MOST_VERSIONS} onClick={add}>{say('add-version')}</button>
      </div>
    </>
  );
}

function newRow(name: string, quantity: string): VersionFields {
  return { id: newId(), name, quantity };
}
