import { keepTogether } from '../../render/no-break.ts';
import type { Figure, Report, ReportSection, Table } from '../../render/report.ts';

/** A report as the page shows it: the answer, then every figure with what it means and how it comes about. */
export function ReportView({ report: { title, answer, sections, caution, language } }: { readonly report: Report }) {
  return (
    <article class="report" lang={language}>
      <h3>{keepTogether(title)}</h3>
      <p class="answer">{keepTogether(answer)}</p>
      {sections.map((section) => <SectionView key={section.id} section={section} />)}
      <section>
        <h4>{keepTogether(caution.heading)}</h4>
        <p>{keepTogether(caution.text)}</p>
      </section>
    </article>
  );
}

export function SectionView({ section: { heading, sentences, figures, table } }: { readonly section: ReportSection }) {
  return (
    <section>
      <h4>{keepTogether(heading)}</h4>
      {sentences.map((sentence, i) => <p key={i}>{keepTogether(sentence)}</p>)}
      {figures.length > 0 && <dl class="facts">{figures.map((figure, i) => <FigureRow key={i} figure={figure} />)}</dl>}
      {table && <TableView table={table} name={heading} />}
    </section>
  );
}

function TableView({ table: { head, rows, wordColumns = 0, marked = [] }, name }: { readonly table: Table; readonly name: string }) {
  const look = (column: number) => (column < wordColumns ? '' : 'number');
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label={name}>
      <table>
        <thead><tr>{head.map((title, column) => <th key={column} scope="col" class={look(column)}>{keepTogether(title)}</th>)}</tr></thead>
        <tbody>{rows.map((cells, row) => <tr key={row} class={marked.includes(row) ? 'marked' : ''}>{cells.map((cell, column) => <td key={column} class={look(column)}>{keepTogether(cell)}</td>)}</tr>)}</tbody>
      </table>
    </div>
  );
}

function FigureRow({ figure: { label, value, share, formula, note } }: { readonly figure: Figure }) {
  return (
    <>
      <dt>{keepTogether(label)}</dt>
      <dd class={share === undefined ? undefined : 'with-share'}>
        {keepTogether(value)}
        {share !== undefined && <meter class="share" min={0} max={1} value={share} aria-label={label} />}
        {formula !== undefined && <span class="formula">= {keepTogether(formula)}</span>}
        {note !== undefined && <span class="note">{keepTogether(note)}</span>}
      </dd>
    </>
  );
}
