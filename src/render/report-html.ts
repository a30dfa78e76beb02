import { keepTogether } from './no-break.ts';
import { element, escapeXml } from './xml.ts';
import type { Figure, Report, ReportSection, Table } from './report.ts';
import { REPORT_CSS } from './report-css.ts';

/** A picture within a page. */
export interface ReportPicture {
  /** Id of the section it belongs to; `answer` puts it under the first sentence. */
  readonly section: string;
  /** SVG markup of our own writers. */
  readonly svg: string;
  /** On white paper whatever the page's colours; otherwise in the colours of the text. */
  readonly onPaper: boolean;
}

/** The report as one HTML file: no scripts, nothing loaded from anywhere, light and dark, ready for print. */
export function reportHtml(report: Report, pictures: readonly ReportPicture[] = []): string {
  const pictureOf = (section: string) => pictures.filter((picture) => picture.section === section).map(pictureHtml).join('');
  const head = [
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    // Even a page from a hostile drawing can load and run nothing.
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">`,
    `<title>${prose(report.title)}</title>`,
    `<style>${REPORT_CSS}</style>`,
  ];
  const body = [
    `<header><p class="name">${prose(report.title)}</p><h1>${prose(report.answer)}</h1></header>`,
    pictureOf('answer'),
    ...report.sections.map((section) => sectionHtml(section, pictureOf(section.id))),
    `<footer><h2>${prose(report.caution.heading)}</h2><p>${prose(report.caution.text)}</p></footer>`,
  ];
  return `<!doctype html>\n<html lang="${escapeXml(report.language)}">\n<head>\n${head.join('\n')}\n</head>\n<body>\n<main>\n${body.filter(Boolean).join('\n')}\n</main>\n</body>\n</html>\n`;
}

function pictureHtml({ svg, onPaper }: ReportPicture): string {
  return element('figure', { class: onPaper ? 'paper' : 'chart' }, `\n${svg}`);
}

function sectionHtml({ id, heading, sentences, figures, table, ownPage }: ReportSection, pictures: string): string {
  const parts = [
    `<h2>${prose(heading)}</h2>`,
    pictures,
    sentences.length > 0 ? `<ul>\n${sentences.map((sentence) => `<li>${prose(sentence)}</li>`).join('\n')}\n</ul>` : '',
    figures.length > 0 ? figuresHtml(figures) : '',
    table ? tableHtml(table) : '',
  ];
  return element('section', { id, class: ownPage ? 'own-page' : undefined }, `\n${parts.filter(Boolean).join('\n')}\n`);
}

function tableHtml({ head, rows, wordColumns, marked = [] }: Table): string {
  const kind = (column: number) => (column < wordColumns ? '' : ' class="number"');
  const titles = head.map((title, column) => `<th scope="col"${kind(column)}>${prose(title)}</th>`).join('');
  const body = rows.map((row, i) => `<tr${marked.includes(i) ? ' class="marked"' : ''}>${row.map((cell, column) => `<td${kind(column)}>${prose(cell)}</td>`).join('')}</tr>`);
  return `<div class="wide"><table class="columns">\n<thead><tr>${titles}</tr></thead>\n<tbody>\n${body.join('\n')}\n</tbody>\n</table></div>`;
}

function figuresHtml(figures: readonly Figure[]): string {
  const isTable = figures.some(({ share }) => share !== undefined);
  return element('table', { class: isTable ? 'parts' : 'figures' }, `\n${figures.map(isTable ? partRow : figureRow).join('\n')}\n`);
}

function partRow({ label, value, share, note = '' }: Figure): string {
  const bar = share === undefined ? '' : `<span class="bar" style="width:${(share * 100).toFixed(1)}%"></span>`;
  return `<tr><th scope="row">${prose(label)}</th><td class="number">${prose(value)}</td><td class="number">${prose(note)}</td><td class="share">${bar}</td></tr>`;
}

function figureRow({ label, value, formula, note }: Figure): string {
  const shown = formula === undefined ? '' : ` <span class="formula">= ${prose(formula)}</span>`;
  const meaning = note === undefined ? '' : `<span class="note">${prose(note)}</span>`;
  return `<tr><th scope="row">${prose(label)}</th><td><b>${prose(value)}</b>${shown}${meaning}</td></tr>`;
}

/** Text for the page. */
function prose(text: string): string {
  return escapeXml(keepTogether(text));
}
