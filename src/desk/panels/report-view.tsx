import type { Figure, Report } from '../../render/report.ts';

/** A report as the page shows it: the answer, then every figure with what it means and how it comes about. */
export function ReportView({ report: { title, answer, sections, caution, language } }: { readonly report: Report }) {
  return (
    <article class="report" lang={language}>
      <h3>{title}</h3>
      <p class="answer">{answer}</p>
      {sections.map(({ id, heading, sentences, figures }) => (
        <section key={id}>
          <h4>{heading}</h4>
          {sentences.map((sentence, i) => <p key={i}>{sentence}</p>)}
          {figures.length > 0 && <dl class="facts">{figures.map((figure, i) => <FigureRow key={i} figure={figure} />)}</dl>}
        </section>
      ))}
      <section>
        <h4>{caution.heading}</h4>
        <p>{caution.text}</p>
      </section>
    </article>
  );
}

function FigureRow({ figure: { label, value, share, formula, note } }: { readonly figure: Figure }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>
        {value}
        {share !== undefined && <meter class="share" min={0} max={1} value={share} aria-label={label} />}
        {formula !== undefined && <span class="formula">= {formula}</span>}
        {note !== undefined && <span class="note">{note}</span>}
      </dd>
    </>
  );
}
