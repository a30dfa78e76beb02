import type { Point, Ring } from '../geometry/point.ts';
import type { Turn } from '../geometry/turn.ts';

/** count + 1 lines from −span to span, and on beyond them at the same distance. Half micrometres. */
export interface Lines {
  readonly span: number;
  readonly count: number;
}

export interface SheetMap {
  readonly swap: boolean;
  readonly flipX: boolean;
  readonly flipY: boolean;
  readonly turns: readonly number[];
}

/** Three numbers a cell: index into the turns of all blanks in order, column, row. */
export type Cells = Int32Array;

/** What is said of one design. */
export interface ReadBlank {
  readonly parts: readonly Ring[];
  readonly symmetry: 1 | 2 | 4;
  readonly turns: readonly Turn[];
  /** Every placement is to be covered with so much weight. */
  readonly worth: number;
}

/** A clique cover as it was read: every number whole and in range; nothing is believed beyond that. */
export interface ReadCertificate {
  readonly blanks: readonly ReadBlank[];
  readonly keepOuts: readonly (readonly Ring[])[];
  readonly x: Lines;
  readonly y: Lines;
  readonly maps: readonly SheetMap[];
  readonly cliques: readonly { readonly weight: number; readonly cells: Cells }[];
}

/** Most lines of a grid, so that numbers stay far below 2⁵³. */
const MOST_LINES = 2 ** 14;
const MOST_SPAN = 2 ** 26;
/** Weights and their sum stay whole doubles. */
const MOST_WEIGHT = 2 ** 40;

/** What stands for each piece of a sheet that bands cut apart; undefined when the certificate covers the sheet as one. */
export function readPieces(given: unknown): unknown[] | undefined {
  const root = record(given, 'certificate');
  if (root['kind'] !== 'pieces') return undefined;
  if (root['version'] !== 1) throw new SyntaxError('kind or version is not known');
  return list(root['pieces'], 'pieces');
}

/** Reads a certificate from parsed JSON. Throws a SyntaxError that names the first field that is not as it should be. */
export function readCertificate(given: unknown): ReadCertificate {
  const root = record(given, 'certificate');
  if (root['kind'] !== 'clique-cover' || root['version'] !== 1) throw new SyntaxError('kind or version is not known');
  return cover(root, [blank(root, whole(root['scale'], 1, MOST_WEIGHT, 'scale'))]);
}

/** The same of a certificate for several designs. */
export function readMixture(given: unknown): ReadCertificate {
  const root = record(given, 'certificate');
  if (root['kind'] !== 'mixture-cover' || root['version'] !== 1) throw new SyntaxError('kind or version is not known');
  const designs = list(root['designs'], 'designs').map((design) => record(design, 'designs'));
  return cover(root, designs.map((design) => blank(design, whole(design['worth'], 0, MOST_WEIGHT, 'worth'))));
}

function blank(fields: Record<string, unknown>, worth: number): ReadBlank {
  const turns = list(fields['turns'], 'turns').map((turn) => whole(turn, 0, 3, 'turns') as Turn);
  const symmetry = whole(fields['symmetry'], 1, 4, 'symmetry');
  if (symmetry === 3) throw new SyntaxError('symmetry');
  return { parts: rings(fields['parts'], 'parts'), symmetry: symmetry as 1 | 2 | 4, turns, worth };
}

function cover(root: Record<string, unknown>, blanks: readonly ReadBlank[]): ReadCertificate {
  const turns = blanks.reduce((sum, one) => sum + one.turns.length, 0);
  return {
    blanks,
    keepOuts: list(root['keepOuts'], 'keepOuts').map((parts) => rings(parts, 'keepOuts')),
    x: lines(root['x'], 'x'),
    y: lines(root['y'], 'y'),
    maps: list(root['maps'], 'maps').map((map) => sheetMap(map, turns)),
    cliques: list(root['cliques'], 'cliques').map((clique) => {
      const { weight, cells } = record(clique, 'cliques');
      return { weight: whole(weight, 0, MOST_WEIGHT, 'weight'), cells: runs(cells, turns) };
    }),
  };
}

function record(value: unknown, name: string): Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new SyntaxError(name);
  return value as Record<string, unknown>;
}

function list(value: unknown, name: string): unknown[] {
  if (!Array.isArray(value)) throw new SyntaxError(name);
  return value;
}

function whole(value: unknown, least: number, most: number, name: string): number {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < least || value > most) throw new SyntaxError(name);
  return value;
}

function flag(value: unknown, name: string): boolean {
  if (typeof value !== 'boolean') throw new SyntaxError(name);
  return value;
}

function rings(value: unknown, name: string): Ring[] {
  return list(value, name).map((ring) => {
    const numbers = list(ring, name).map((coordinate) => whole(coordinate, -MOST_SPAN, MOST_SPAN, name));
    if (numbers.length % 2 !== 0) throw new SyntaxError(name);
    return Array.from({ length: numbers.length / 2 }, (_, k): Point => ({ x: numbers[2 * k]!, y: numbers[2 * k + 1]! }));
  });
}

function lines(value: unknown, name: string): Lines {
  const { span, count } = record(value, name);
  return { span: whole(span, 1, MOST_SPAN, name), count: whole(count, 1, MOST_LINES, name) };
}

function sheetMap(value: unknown, turns: number): SheetMap {
  const { swap, flipX, flipY, turns: images } = record(value, 'maps');
  const read = list(images, 'maps').map((turn) => whole(turn, 0, turns - 1, 'maps'));
  if (read.length !== turns) throw new SyntaxError('maps');
  return { swap: flag(swap, 'maps'), flipX: flag(flipX, 'maps'), flipY: flag(flipY, 'maps'), turns: read };
}

function runs(value: unknown, turns: number): Cells {
  const numbers = list(value, 'cells');
  if (numbers.length % 4 !== 0) throw new SyntaxError('cells');
  const cells: number[] = [];
  for (let k = 0; k < numbers.length; k += 4) {
    const turn = whole(numbers[k], 0, turns - 1, 'cells');
    const column = whole(numbers[k + 1], -MOST_LINES, MOST_LINES, 'cells');
    const first = whole(numbers[k + 2], -MOST_LINES, MOST_LINES, 'cells');
    const count = whole(numbers[k + 3], 1, MOST_LINES, 'cells');
    for (let row = first; row < first + count; row++) cells.push(turn, column, row);
  }
  return Int32Array.from(cells);
}
