import { inputError } from '../../../base/issue.ts';
import type { Figure } from '../../../estimate/figure.ts';
import { makeQuote } from '../../../pipeline/quote.ts';
import { readQuoteJob, type QuoteJob } from '../../../pipeline/quote-job.ts';
import { DEMO_RATES, type Rates } from '../../../press/rates.ts';
import { customerReport, quoteReport } from '../../../render/quote-report.ts';
import { reportHtml } from '../../../render/report-html.ts';
import type { OutputFile, QuoteAnswer, QuoteAsk } from '../protocol.ts';

/** A page has no files beside the job: everything stands in it. */
function noFiles(path: string): never {
  throw inputError('file-not-found', { where: path });
}

/** Throws an InputError that names the field. */
export function quoteJobOf({ job, inventedRates }: QuoteAsk): QuoteJob {
  const given = (job['rates'] ?? {}) as Rates;
  return readQuoteJob({ ...job, rates: inventedRates ? joined(DEMO_RATES, given) : given }, 'quote', noFiles);
}

/** Typed rates stand over invented ones; with invented ones among them the quote says so by its name. */
function joined(first: Rates, second: Rates): Rates {
  return { ...first, ...second, press: { ...first.press, ...second.press }, cutter: { ...first.cutter, ...second.cutter } };
}

export function quote(ask: QuoteAsk): QuoteAnswer {
  const facts = makeQuote(quoteJobOf(ask));
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
    missing: facts.missing,
    notes: facts.notes,
    ratesName: facts.ratesName,
    report: quoteReport(facts),
  };
}

/** The inside page, and the customer's where every price is known. */
export function pages(ask: QuoteAsk): OutputFile[] {
  const facts = makeQuote(quoteJobOf(ask));
  const priced = facts.quantities.every(({ pricePerThousand }) => pricePerThousand?.value != null);
  return [{ name: 'quote.html', content: reportHtml(quoteReport(facts)) }, ...(priced ? [{ name: 'quote-customer.html', content: reportHtml(customerReport(facts)) }] : [])];
}
