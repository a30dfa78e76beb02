/**
 * Figures as they are typed. What is kept of one has a decimal point and nothing between its thousands, whatever the
 * language; one that could be read in two ways is kept with a mark before it, which no reader takes for a figure.
 */
const MARK = '?';

/** With a decimal sign of that language; spaces or apostrophes may stand between thousands. A text that is no figure is kept as it is. */
export function keptFigure(text: string, decimalSign: string): string {
  const joined = text.trim().replace(/^([-+]?\d{1,3}(?:[\s'’]\d{3})+)(?=$|[.,])/, (thousands) => thousands.replace(/[\s'’]/g, ''));
  const signs = joined.match(/[.,]/g) ?? [];
  if (!/^[-+]?[\d.,]+$/.test(joined) || signs.length === 0) return joined;
  const [first] = signs;
  const isDecimal = signs.length === 1 && (first === decimalSign || !/^[-+]?[1-9]\d{0,2}[.,]\d{3}$/.test(joined));
  return isDecimal ? joined.replace(first!, '.') : MARK + text;
}

/** The figure as it is shown: its decimal sign is that of the language. */
export function shownFigure(kept: string, decimalSign: string): string {
  return isDoubtful(kept) ? kept.slice(MARK.length) : kept.replace('.', decimalSign);
}

/** Whether what was typed could be read in two ways. */
export function isDoubtful(kept: string): boolean {
  return kept.startsWith(MARK);
}

export function doubtful(text: string): string {
  return MARK + text;
}
