import { inputError } from '../../../base/issue.ts';
import type { Figure } from '../../../estimate/figure.ts';
import { makeQuote } from '../../../pipeline/quote.ts';
import { readQuoteJob, type QuoteJob } from '../../../pipeline/quote-job.ts';
import type { QuoteFacts } from '../../../render/quote-facts.ts';
import { customerReport, quoteReport } from '../../../render/quote-report.ts';
import { reportHtml } from '../../../render/report-html.ts';
import type { OutputFile, Person, QuoteAnswer, QuoteAsk } from '../protocol.ts';
import { wordsFor } from './language-of.ts';

/** A page has no files beside the job: everything stands in it. */
function noFiles(path: string): never {
  throw inputError('file-not-found', { where: path });
}

/** Throws an InputError that names the field. */
export function quoteJobOf({ job }: QuoteAsk): QuoteJob {
  return readQuoteJob(job, 'quote', noFiles);
}

function factsOf(ask: QuoteAsk): QuoteFacts {
  return { ...makeQuote(quoteJobOf(ask)), ...(ask.sources && { rateSources: ask.sources }) };
}

export function quote(ask: QuoteAsk, person: Person): QuoteAnswer {
  const facts = factsOf(ask);
  const { language, format } = wordsFor(person);
  const { named, rates } = language.quote(facts.product);
  const valueOf = (figure: Figure | undefined) => figure?.value ?? null;
  return {
    rows: facts.quantities.map(({ quantity, needed, boardWeight, boardCostPerThousand, pressHours, costPerThousand, pricePerThousand }) => ({
      quantity,
      sheets: needed.sheets,
      boardKg: valueOf(boardWeight),
      boardCostPerThousand: valueOf(boardCostPerThousand),
      pressHours: valueOf(pressHours),
      costPerThousand: valueOf(costPerThousand),
      pricePerThousand: valueOf(pricePerThousand),
    })),
    currency: facts.currency,
    missing: facts.missing.map((figure) => ({ figure, text: named(figure) })),
    rates: rates(facts),
    report: quoteReport(facts, language, format),
  };
}

/** The inside page, and the customer's where every price is known. */
export function pages(ask: QuoteAsk, person: Person): OutputFile[] {
  const facts = factsOf(ask);
  const { language, format } = wordsFor(person);
  const priced = facts.quantities.every(({ pricePerThousand }) => pricePerThousand?.value != null);
  return [{ name: 'quote.html', content: reportHtml(quoteReport(facts, language, format)) }, ...(priced ? [{ name: 'quote-customer.html', content: reportHtml(customerReport(facts, language, format)) }] : [])];
}
