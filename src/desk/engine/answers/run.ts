import { priceRun } from '../../../pipeline/gang/price-run.ts';
import { reportHtml } from '../../../render/report-html.ts';
import { runReport } from '../../../render/run-report.ts';
import type { Ask, OutputFile, Person, RunAnswer, RunAsk } from '../protocol.ts';
import { wordsFor } from './language-of.ts';
import { quoteJobOf, pages } from './quote.ts';

/** Versions or outlines on their forms in money. */
export async function run({ run: forms, quote }: RunAsk, person: Person): Promise<RunAnswer> {
  const { language, format } = wordsFor(person);
  const priced = await priceRun(forms, quoteJobOf({ ...quote, job: { ...quote.job, quantities: forms.quantities } }));
  const facts = { ...priced, ...(quote.sources && { rateSources: quote.sources }) };
  const { named, rates } = language.quote(facts.product);
  return { report: runReport(facts, language, format), missing: facts.missing.map((figure) => ({ figure, text: named(figure) })), rates: rates(facts) };
}

export async function runPage(ask: RunAsk, person: Person): Promise<string> {
  return reportHtml((await run(ask, person)).report);
}

/** The pages of a quote, and with versions the inside page of the run. */
export async function pagesOfAll({ run: forms, ...quote }: Ask<'pages'>, person: Person): Promise<OutputFile[]> {
  const ofQuote = pages(quote, person);
  return forms ? [...ofQuote, { name: 'quote-versions.html', content: await runPage({ run: forms, quote }, person) }] : ofQuote;
}
