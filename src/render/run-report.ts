import { createFormat, type Format } from './format.ts';
import type { Language } from './messages/language.ts';
import { assumedIn, shownFigure } from './quote-report.ts';
import type { Figure, Report, ReportSection } from './report.ts';
import { isOfOutlines, platesOf, type RunFacts } from './run-facts.ts';

/** The money of versions or outlines on common forms: what each costs, the forms with their sheets, how it is shared, every formula. */
export function runReport(facts: RunFacts, language: Language, format: Format = createFormat(language.locale)): Report {
  const words = language.run;
  const quote = language.quote(facts.product);
  const { cost, currency, numbers } = facts;
  const section = (id: string, heading: string, more: Partial<ReportSection>): ReportSection => ({ id, heading, sentences: [], figures: [], ...more });
  const shown = (figures: readonly (Parameters<typeof shownFigure>[0] | undefined)[]): Figure[] => figures.flatMap((one) => (one ? [shownFigure(one, currency, quote, format)] : []));
  const sections = [
    section('versions', isOfOutlines(facts) ? words.headings.designs : words.headings.versions, { table: versionTable(facts, language, format) }),
    section('forms', words.headings.forms, { table: formTable(facts, language, format) }),
    section('shared', words.headings.shared, { sentences: words.shared(facts, format) }),
    section('missing', quote.headings.missing, { sentences: facts.missing.map(quote.missing) }),
    ...cost.forms.map((form, i) => section(`form-${numbers[i]}`, words.form(numbers[i]!), {
      sentences: [words.goodSheets(facts.pressings[i]!, facts.planned[i]!, format)],
      figures: [
        ...form.needed.chain.toReversed().map((need): Figure => ({ label: quote.stage(need), value: format.number(need.into, 0), formula: quote.stageFormula(need, format) })),
        ...shown([form.boardWeight, ...form.hours, ...form.costs, form.cost]),
      ],
    })),
    section('whole', words.headings.whole, { figures: shown([...cost.rest, cost.cost, cost.costPerThousand, cost.pricePerThousand]) }),
    ...cost.versions.map((version, v) => section(`version-${v + 1}`, facts.ids[v]!, { figures: shown([version.cost, version.costPerThousand, version.pricePerThousand]) })),
    section('assumed', quote.headings.assumed, { sentences: assumedIn(facts, quote, language, format) }),
  ];
  return {
    language: language.locale,
    title: words.title(facts),
    answer: words.answer(facts, quote, format),
    sections: sections.filter(({ sentences, figures, table }) => table !== undefined || sentences.length + figures.length > 0),
    caution: { heading: quote.headings.caution, text: quote.caution },
  };
}

/** The report of a gang run with the money behind it, where the job says on what terms. */
export function withRun(report: Report, facts: RunFacts | undefined, language: Language): Report {
  if (!facts) return report;
  const money = runReport(facts, language);
  return { ...report, answer: `${report.answer} ${money.answer}`, sections: [...report.sections, ...money.sections.map((section) => ({ ...section, id: `money-${section.id}` }))] };
}

function versionTable({ stations, ids, quantities, made, cost, currency }: RunFacts, { run: { head, open } }: Language, format: Format) {
  const withPrice = cost.pricePerThousand !== undefined;
  const money = (value: number | null | undefined) => (value == null ? open : bare(value, currency, format));
  return {
    head: [isOfOutlines({ stations }) ? head.design : head.version, head.ordered, head.made, `${head.cost}, ${currency}`, head.costPerThousand, ...(withPrice ? [head.pricePerThousand] : [])],
    rows: ids.map((id, v) => {
      const { cost: own, costPerThousand, pricePerThousand } = cost.versions[v]!;
      return [id, format.number(quantities[v]!, 0), format.number(made[v]!, 0), money(own.value), money(costPerThousand.value), ...(withPrice ? [money(pricePerThousand?.value)] : [])];
    }).concat([[head.all, total(quantities, format), total(made, format), money(cost.cost.value), money(cost.costPerThousand.value), ...(withPrice ? [money(cost.pricePerThousand?.value)] : [])]]),
    wordColumns: 1,
    marked: [ids.length],
  };
}

function formTable({ numbers, planned, pressings, cost, currency }: RunFacts, { run: { head, open } }: Language, format: Format) {
  const plates = platesOf({ cost });
  const hours = (value: number | null | undefined) => (value == null ? open : format.number(value, 2, true));
  const money = (value: number | null) => (value === null ? open : bare(value, currency, format));
  return {
    head: [head.form, head.planned, head.good, head.sheets, head.plates, head.board, head.hours, `${head.cost}, ${currency}`],
    rows: cost.forms.map((form, i) => [String(numbers[i]), format.number(planned[i]!, 0), format.number(pressings[i]!, 0), format.number(form.needed.sheets, 0), format.number(plates[i]!, 0), format.number(form.boardWeight.value ?? 0, 1, true), hours(form.pressHours?.value), money(form.cost.value)]),
    wordColumns: 1,
  };
}

function total(values: readonly number[], format: Format): string {
  return format.number(values.reduce((sum, value) => sum + value, 0), 0);
}

/** The currency stands in the head of the column. */
function bare(amount: number, currency: string, format: Format): string {
  return format.money(amount, currency).slice(0, -currency.length).trim();
}
