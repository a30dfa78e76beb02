import { priceRun } from '../../../pipeline/gang/price-run.ts';
import { createFormat } from '../../../render/format.ts';
import { reportHtml } from '../../../render/report-html.ts';
import { runReport } from '../../../render/run-report.ts';
import type { Host } from '../host.ts';
import type { Ask, OutputFile, RunAnswer, RunAsk } from '../protocol.ts';
import { languageOf } from './language-of.ts';
import { quoteJobOf, pages } from './quote.ts';

type Asking = Pick<Host<'run'>, 'locale' | 'unit'>;

/** Versions on their stations in money. */
export async function run({ run: forms, quote }: RunAsk, { locale, unit }: Asking): Promise<RunAnswer> {
  const language = languageOf(locale);
  const facts = await priceRun(forms, quoteJobOf({ ...quote, job: { ...quote.job, quantities: forms.quantities } }));
  return { report: runReport(facts, language, createFormat(language.locale, unit)), ratesName: facts.ratesName === undefined ? undefined : language.quote(facts.product).named(facts.ratesName) };
}

/** The pages of a quote, and with versions the inside page of the run. */
export async function pagesOfAll({ run: forms, ...quote }: Ask<'pages'>, asking: Asking): Promise<OutputFile[]> {
  const ofQuote = pages(quote, asking);
  return forms ? [...ofQuote, { name: 'quote-versions.html', content: reportHtml((await run({ run: forms, quote }, asking)).report) }] : ofQuote;
}
