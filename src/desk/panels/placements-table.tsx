import { MM_PER_INCH } from '../../base/units.ts';
import type { KeptLayout } from '../job/job.ts';
import { useWords } from '../words/words.ts';

/** The same as the picture, for people who do not see it and for those who want figures. */
export function PlacementsTable({ layout: { file } }: { readonly layout: KeptLayout }) {
  const { say, format } = useWords();
  /** As fine as the file holds it: a micrometre, or about as much. */
  const place = (mm: number) => (format.unit === 'mm' ? format.number(mm, 3) : format.number(mm / MM_PER_INCH, 5));
  return (
    <details class="table-view">
      <summary>{say('placements-table', { count: file.placements.length })}</summary>
      <div class="scrolls" tabIndex={0} role="region" aria-label={say('placements-table', { count: file.placements.length })}>
        <table>
          <caption>{say('placements-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('station')}</th>
              <th scope="col">{say('design')}</th>
              <th scope="col">{say('rotation')}</th>
              <th scope="col">x, {format.unit}</th>
              <th scope="col">y, {format.unit}</th>
            </tr>
          </thead>
          <tbody>
            {file.placements.map(({ design, rotation, x, y }, i) => (
              <tr key={i}>
                <th scope="row">{i + 1}</th>
                <td>{design}</td>
                <td class="number">{rotation}°</td>
                <td class="number">{place(x)}</td>
                <td class="number">{place(y)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
