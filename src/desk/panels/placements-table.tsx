import type { KeptLayout } from '../job/job.ts';
import { useWords } from '../words/words.ts';

/** The same as the picture, for people who do not see it and for those who want figures. */
export function PlacementsTable({ layout: { file } }: { readonly layout: KeptLayout }) {
  const { say, format } = useWords();
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
              <th scope="col">x, mm</th>
              <th scope="col">y, mm</th>
            </tr>
          </thead>
          <tbody>
            {file.placements.map(({ design, rotation, x, y }, i) => (
              <tr key={i}>
                <th scope="row">{i + 1}</th>
                <td>{design}</td>
                <td class="number">{rotation}°</td>
                <td class="number">{format.number(x, 3)}</td>
                <td class="number">{format.number(y, 3)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
