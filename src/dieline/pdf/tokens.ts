/** What an operator of a content stream is given. Dictionaries are passed over. */
export type Operand = number | PdfNameToken | PdfTextToken | readonly Operand[] | undefined;

export interface PdfNameToken {
  readonly name: string;
}

/** Bytes of a string, one a character. */
export interface PdfTextToken {
  readonly text: string;
}

export interface Operation {
  readonly operator: string;
  readonly operands: readonly Operand[];
}

/** Operands kept for one operator; more are no valid content. */
const MOST_OPERANDS = 64;

/**
 * Operators of a content stream with what stands before them (ISO 32000-1, 7.8.2). Forgiving: what cannot be read is passed
 * over, images within the content too.
 */
export function* operations(bytes: Uint8Array): Generator<Operation> {
  const scanner = createScanner(bytes);
  let operands: Operand[] = [];
  for (;;) {
    const token = scanner.next();
    if (token === END) return;
    if (typeof token === 'string') {
      if (token === 'ID') scanner.skipImage();
      else yield { operator: token, operands };
      operands = [];
    } else if (operands.push(token.operand) > MOST_OPERANDS) operands = [];
  }
}

const END = Symbol('end');

/** An operator is a string; anything else is an operand. */
type Token = string | { readonly operand: Operand } | typeof END;

const DELIMITERS = new Set(Array.from('()<>[]{}/%', (character) => character.charCodeAt(0)));
const isBlank = (byte: number) => byte === 0x20 || (byte >= 0x09 && byte <= 0x0d) || byte === 0;
const isRegular = (byte: number) => !isBlank(byte) && !DELIMITERS.has(byte);

function createScanner(bytes: Uint8Array) {
  let at = 0;

  const skipBlanks = () => {
    while (at < bytes.length) {
      if (bytes[at] === 0x25) while (at < bytes.length && bytes[at] !== 0x0a && bytes[at] !== 0x0d) at++;
      else if (isBlank(bytes[at]!)) at++;
      else return;
    }
  };

  const word = (): string => {
    const start = at;
    while (at < bytes.length && isRegular(bytes[at]!)) at++;
    return String.fromCharCode(...bytes.subarray(start, Math.min(at, start + LONGEST_WORD)));
  };

  const literal = (): PdfTextToken => {
    const characters: string[] = [];
    at++;
    for (let depth = 1; at < bytes.length; at++) {
      const byte = bytes[at]!;
      if (byte === 0x5c) {
        characters.push(escaped());
        continue;
      }
      if (byte === 0x28) depth++;
      if (byte === 0x29 && --depth === 0) break;
      characters.push(String.fromCharCode(byte));
    }
    at++;
    return { text: characters.join('') };
  };

  /** Leaves `at` on the last byte of the escape. */
  const escaped = (): string => {
    const octal = /^[0-7]{1,3}/.exec(String.fromCharCode(...bytes.subarray(at + 1, at + 4)))?.[0];
    if (octal !== undefined) {
      at += octal.length;
      return String.fromCharCode(parseInt(octal, 8) & 255);
    }
    const next = String.fromCharCode(bytes[++at] ?? 0x5c);
    if (next === '\r' && bytes[at + 1] === 0x0a) at++;
    return ({ n: '\n', r: '\r', t: '\t', b: '\b', f: '\f', '\n': '', '\r': '' } as Record<string, string>)[next] ?? next;
  };

  const hexadecimal = (): PdfTextToken => {
    const start = ++at;
    while (at < bytes.length && bytes[at] !== 0x3e) at++;
    const digits = new TextDecoder('latin1').decode(bytes.subarray(start, at++)).replace(/[^0-9a-f]/gi, '');
    // A digit without its second stands for a pair with 0.
    return { text: digits.replace(/..?/g, (pair) => String.fromCharCode(parseInt(pair.padEnd(2, '0'), 16))) };
  };

  /** After `[` or `<<`: operands up to the closing sign; an operator within is passed over. */
  const list = (close: ']' | '>>', depth: number): Operand[] => {
    const held: Operand[] = [];
    for (;;) {
      const token = next(depth + 1);
      if (token === END || token === close) return held;
      if (typeof token !== 'string') held.push(token.operand);
    }
  };

  const next = (depth = 0): Token => {
    skipBlanks();
    if (at >= bytes.length) return END;
    const byte = bytes[at]!;
    switch (byte) {
      case 0x2f: // name
        at++;
        return { operand: { name: word() } };
      case 0x28: // string
        return { operand: literal() };
      case 0x5b: // array
        at++;
        return depth > DEEPEST ? '[' : { operand: list(']', depth) };
      case 0x5d:
        at++;
        return ']';
      case 0x3c: // dictionary or string
        if (bytes[at + 1] !== 0x3c) return { operand: hexadecimal() };
        at += 2;
        if (depth <= DEEPEST) list('>>', depth);
        return { operand: undefined };
      case 0x3e:
        at += bytes[at + 1] === 0x3e ? 2 : 1;
        return '>>';
    }
    if (DELIMITERS.has(byte)) {
      at++;
      return next(depth);
    }
    const text = word();
    const value = numberOf(text);
    return value === undefined ? text : { operand: value };
  };

  /** Image data end at EI between blanks. */
  const skipImage = () => {
    for (at++; at < bytes.length; at++) {
      const isEnd = bytes[at] === 0x45 && bytes[at + 1] === 0x49 && isBlank(bytes[at - 1]!) && (at + 2 >= bytes.length || isBlank(bytes[at + 2]!));
      if (!isEnd) continue;
      at += 2;
      return;
    }
  };

  return { next: () => next(), skipImage };
}

/** Longer ones are no operator, name or number of any use. */
const LONGEST_WORD = 256;
/** Arrays and dictionaries within one another. */
const DEEPEST = 32;

function numberOf(text: string): number | undefined {
  if (!/^[-+.\d]/.test(text)) return undefined;
  const value = Number(text);
  return Number.isFinite(value) ? value : undefined;
}
