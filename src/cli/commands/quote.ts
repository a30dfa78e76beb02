import { resolve } from 'node:path';
import { inputError } from '../../base/issue.ts';
import { makeQuote } from '../../pipeline/quote.ts';
import { readQuoteDesign } from '../../pipeline/quote-design.ts';
import { readQuoteJob, type QuoteJob } from '../../pipeline/quote-job.ts';
import { createFormat, type Format } from '../../render/format.ts';
import type { Language } from '../../render/messages/language.ts';
import { quoteJson } from '../../render/quote-json.ts';
import { customerReport, inkPicture, quoteReport } from '../../render/quote-report.ts';
import { reportHtml, type ReportPicture } from '../../render/report-html.ts';
import { sheetScene } from '../../render/sheet-scene.ts';
import { sceneToSvg } from '../../render/svg.ts';
import { viewOfLayout } from '../../render/view-of-layout.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { refuseOverwrite, writeAll, type Output } from '../files.ts';
import { openJob } from '../job-files.ts';
import { figuresLocale, LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { printReport } from '../print-report.ts';
import { layoutOfQuote } from '../quote-layout.ts';

interface Options {
  readonly json?: string;
  readonly html?: string;
  readonly customer?: string;
  readonly rates?: string;
  readonly language?: string;
}

/** The sheet that the quote counts with, where its layout is known. */
function quotePictures({ layout }: QuoteJob, grain: 'x' | 'y' | undefined, { picture }: Language, format: Format): ReportPicture[] {
  return layout ? [{ section: 'answer', svg: sceneToSvg(sheetScene(viewOfLayout(layout, { grain, figures: [] }), { words: picture, format })), onPaper: true }] : [];
}

export const registerQuote: RegisterCommand = (program) => {
  program
    .command('quote')
    .description('Quantities to sheets, weight, hours and cost per thousand, every figure with its formula.')
    .argument('<job>', 'a job file (JSON) with ups and sheet, a layout, a drawing or a blank from dimensions; paths in it are relative to it')
    .option('--rates <file>', 'the shop’s rates (JSON or CSV), or demo for invented ones, named so')
    .option('--json <file>', 'write the quote as JSON; - is standard output')
    .option('--html <file>', 'write the inside page, with formulas')
    .option('--customer <file>', 'write the customer’s page, without rates')
    .option('--language <tag>', `language of report, pages and charts: ${LANGUAGE_TAGS} (default en)`)
    .addHelpText('after', '\nExit code 0: done; 1: done, but a rate is missing or something is in doubt; 2: the job cannot be used.')
    .action(
      action(async (path: string, { json, html, customer, rates, language: tag }: Options) => {
        const language = languageValue(tag ?? 'en');
        const files = openJob(path);
        const ratesFile = rates === undefined || rates === 'demo' ? rates : resolve(rates);
        const design = readQuoteDesign(files.json, path, files.load);
        // Everything that is wrong is said before a search is begun: one up stands for the layout to come.
        if (design) readQuoteJob({ ...(files.json as object), drawing: undefined, blank: undefined, ups: 1 }, path, files.load, ratesFile);
        const laidOut = design && (await layoutOfQuote(design, path, files.resolve));
        for (const issue of laidOut?.issues ?? []) process.stderr.write(`${sentence(issue)}\n`);
        const job = readQuoteJob(files.json, path, files.load, ratesFile, laidOut?.layout);
        refuseOverwrite(files.read, [json, html, customer]);
        const quote = makeQuote(job);
        if (customer !== undefined && quote.quantities.some(({ pricePerThousand }) => pricePerThousand?.value == null)) {
          throw inputError('customer-page-without-price', { where: '--customer', facts: { missing: [...quote.missing, ...(job.terms.rates.marginPercent === undefined ? ['margin'] : [])].join(', ') } });
        }
        const format = createFormat(tag === undefined ? quote.locale : figuresLocale(language, quote.locale));
        const inside = quoteReport(quote, language, format);
        const outputs: Output[] = [];
        if (json !== undefined) outputs.push({ path: json, content: quoteJson(quote) });
        if (html !== undefined) outputs.push({ path: html, content: reportHtml(inside, [...quotePictures(job, quote.purchases[0]?.sheet.grain, language, format), ...inkPicture(quote, language, format)]) });
        if (customer !== undefined) outputs.push({ path: customer, content: reportHtml(customerReport(quote, language, format)) });
        writeAll(outputs);
        if (json !== '-') printReport(inside);
        return quote.missing.length > 0 || quote.notes.some(({ severity }) => severity === 'warning') ? ASKS : DONE;
      }),
    );
};
