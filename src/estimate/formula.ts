/**
 * Formulas as people write them: names (words, small or large letters, spaces and hyphens allowed), numbers,
 * + − × ÷, brackets, ⌈…⌉ for rounding up and ⌊…⌋ for rounding down. The text that a report shows is the text that is computed.
 */
const TOKEN = /\s*(?:([+−×÷()⌈⌉⌊⌋])|(\d+(?:\.\d+)?)|([A-Za-z][A-Za-z0-9 -]*))/y;

type Inputs = Readonly<Record<string, number>>;
type Compiled = (inputs: Inputs) => number;

/** A formula is read once and computed a thousand times, as when quantities are searched for a break-even. */
const compiled = new Map<string, Compiled>();

/** The value of a formula. Throws where the formula is no formula or names an input that is not there: a flaw of ours. */
export function evaluate(formula: string, inputs: Inputs): number {
  let known = compiled.get(formula);
  if (!known) compiled.set(formula, (known = compile(formula)));
  return known(inputs);
}

function compile(formula: string): Compiled {
  const tokens = tokensOf(formula);
  let at = 0;
  const chain = (operand: () => Compiled, operations: Readonly<Record<string, (a: number, b: number) => number>>): Compiled => {
    let value = operand();
    for (let operation = operations[tokens[at]]; operation; operation = operations[tokens[at]]) {
      at++;
      const [left, right, apply] = [value, operand(), operation];
      value = (inputs) => apply(left(inputs), right(inputs));
    }
    return value;
  };
  const sum = (): Compiled => chain(product, { '+': (a, b) => a + b, '−': (a, b) => a - b });
  const product = (): Compiled => chain(factor, { '×': (a, b) => a * b, '÷': (a, b) => a / b });
  const factor = (): Compiled => {
    const token = tokens[at++];
    if (token === '(') return closed(sum(), ')');
    if (token === '⌈') {
      const inner = closed(sum(), '⌉');
      return (inputs) => Math.ceil(inner(inputs));
    }
    if (token === '⌊') {
      const inner = closed(sum(), '⌋');
      return (inputs) => wholeBelow(inner(inputs));
    }
    if (token === undefined) throw new Error(`formula ${formula} ends too soon`);
    if (/^\d/.test(token)) return () => Number(token);
    return (inputs) => {
      const value = inputs[token];
      if (value === undefined) throw new Error(`formula ${formula}: no value for ${token}`);
      return value;
    };
  };
  const closed = (value: Compiled, bracket: string): Compiled => {
    if (tokens[at++] !== bracket) throw new Error(`formula ${formula}: ${bracket} is missing`);
    return value;
  };
  const value = sum();
  if (at < tokens.length) throw new Error(`formula ${formula}: ${tokens[at]} is too much`);
  return value;
}

/** Parts of a whole that are rounding dust of a double: a quotient of decimals that comes out even is not one too few. */
const DUST = 1e-12;

function wholeBelow(value: number): number {
  return Math.floor(value * (1 + DUST));
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
