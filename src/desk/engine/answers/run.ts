import { priceRun } from '../../../pipeline/gang/price-run.ts';
import { reportHtml } from '../../../render/report-html.ts';
import { runReport } from '../../../render/run-report.ts';
import type { Ask, OutputFile, Person, RunAnswer, RunAsk } from '../protocol.ts';
import { wordsFor } from './language-of.ts';
import { quoteJobOf, pages } from './quote.ts';

/** Versions on their stations in money. */
export async function run({ run: forms, quote }: RunAsk, person: Person): Promise<RunAnswer> {
  const { language, format } = wordsFor(person);
  const facts = await priceRun(forms, quoteJobOf({ ...quote, job: { ...quote.job, quantities: forms.quantities } }));
  return { report: runReport(facts, language, format), ratesName: facts.ratesName === undefined ? undefined : language.quote(facts.product).named(facts.ratesName) };
}

/** The pages of a quote, and with versions the inside page of the run. */
export async function pagesOfAll({ run: forms, ...quote }: Ask<'pages'>, person: Person): Promise<OutputFile[]> {
  const ofQuote = pages(quote, person);
  return forms ? [...ofQuote, { name: 'quote-versions.html', content: reportHtml((await run({ run: forms, quote }, person)).report) }] : ofQuote;
}
