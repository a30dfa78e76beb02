import { inputError } from '../../../base/issue.ts';
import type { Figure } from '../../../estimate/figure.ts';
import { makeQuote } from '../../../pipeline/quote.ts';
import { readQuoteJob } from '../../../pipeline/quote-job.ts';
import { DEMO_RATES, type Rates } from '../../../press/rates.ts';
import type { QuoteFacts } from '../../../render/quote-facts.ts';
import { customerReport, quoteReport } from '../../../render/quote-report.ts';
import { reportHtml } from '../../../render/report-html.ts';
import type { OutputFile, QuoteAnswer, QuoteAsk } from '../protocol.ts';

/** A page has no files beside the job: everything stands in it. */
function noFiles(path: string): never {
  throw inputError('file-not-found', { where: path });
}

/** Typed rates stand over invented ones; with invented ones among them the quote says so by its name. */
function factsOf({ job, inventedRates }: QuoteAsk): QuoteFacts {
  const given = (job['rates'] ?? {}) as Rates;
  const rates = inventedRates ? joined(DEMO_RATES, given) : given;
  return makeQuote(readQuoteJob({ ...job, rates }, 'quote', noFiles));
}

function joined(first: Rates, second: Rates): Rates {
  return { ...first, ...second, press: { ...first.press, ...second.press }, cutter: { ...first.cutter, ...second.cutter } };
}

export function quote(ask: QuoteAsk): QuoteAnswer {
  const facts = factsOf(ask);
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
  const facts = factsOf(ask);
  const priced = facts.quantities.every(({ pricePerThousand }) => pricePerThousand?.value != null);
  return [{ name: 'quote.html', content: reportHtml(quoteReport(facts)) }, ...(priced ? [{ name: 'quote-customer.html', content: reportHtml(customerReport(facts)) }] : [])];
}
