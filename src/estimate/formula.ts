/**
 * Formulas as people write them: names (words, small or large letters, spaces and hyphens allowed), numbers,
 * + − × ÷, brackets, and ⌈…⌉ for rounding up. The text that a report shows is the text that is computed.
 */
const TOKEN = /\s*(?:([+−×÷()⌈⌉])|(\d+(?:\.\d+)?)|([A-Za-z][A-Za-z0-9 -]*))/y;

/** The value of a formula. Throws where the formula is no formula or names an input that is not there: a flaw of ours. */
export function evaluate(formula: string, inputs: Readonly<Record<string, number>>): number {
  const tokens = tokensOf(formula);
  let at = 0;
  const sum = (): number => {
    let value = product();
    while (tokens[at] === '+' || tokens[at] === '−') value = tokens[at++] === '+' ? value + product() : value - product();
    return value;
  };
  const product = (): number => {
    let value = factor();
    while (tokens[at] === '×' || tokens[at] === '÷') value = tokens[at++] === '×' ? value * factor() : value / factor();
    return value;
  };
  const factor = (): number => {
    const token = tokens[at++];
    if (token === '(') return closed(sum(), ')');
    if (token === '⌈') return Math.ceil(closed(sum(), '⌉'));
    if (token !== undefined && /^\d/.test(token)) return Number(token);
    const value = token === undefined ? undefined : inputs[token];
    if (value === undefined) throw new Error(`formula ${formula}: no value for ${token}`);
    return value;
  };
  const closed = (value: number, bracket: string): number => {
    if (tokens[at++] !== bracket) throw new Error(`formula ${formula}: ${bracket} is missing`);
    return value;
  };
  const value = sum();
  if (at < tokens.length) throw new Error(`formula ${formula}: ${tokens[at]} is too much`);
  return value;
}

export function tokensOf(formula: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < formula.length) {
    const match = TOKEN.exec(formula);
    if (!match) throw new Error(`formula ${formula} cannot be read`);
    tokens.push((match[1] ?? match[2] ?? match[3])!.trim());
  }
  return tokens;
}
