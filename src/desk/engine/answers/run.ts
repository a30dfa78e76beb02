import { priceRun } from '../../../pipeline/gang/price-run.ts';
import { createFormat } from '../../../render/format.ts';
import { runReport } from '../../../render/run-report.ts';
import type { Host } from '../host.ts';
import type { RunAnswer, RunAsk } from '../protocol.ts';
import { languageOf } from './language-of.ts';
import { quoteJobOf } from './quote.ts';

/** Versions on their stations in money. */
export async function run({ run: forms, quote }: RunAsk, { locale, unit }: Pick<Host<'run'>, 'locale' | 'unit'>): Promise<RunAnswer> {
  const language = languageOf(locale);
  const facts = await priceRun(forms, quoteJobOf({ ...quote, job: { ...quote.job, quantities: forms.quantities } }));
  return { report: runReport(facts, language, createFormat(language.locale, unit)), ratesName: facts.ratesName === undefined ? undefined : language.quote(facts.product).named(facts.ratesName) };
}
