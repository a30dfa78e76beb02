import type { Frame } from './frame.ts';
import type { Row } from './rows.ts';
import type { StackedRow } from './row-stack.ts';

/** What a person calls the stack: `plain rows`, `every second row turned`, `nested rows`, … */
export function stackName(stack: readonly StackedRow[], { swapped, owner }: Frame): string {
  const row = swapped ? 'column' : 'row';
  const versions = stack.map(({ row: { items } }) => [...new Set(items.map((item) => item.version))]);
  const turnOf = (version: number) => owner.versions[version].turn;
  if (versions.every((list) => list.length === 1)) {
    const firsts = versions.map(([version]) => turnOf(version));
    if (firsts.every((turn) => turn === firsts[0])) return oneWayName(stack, row);
    if (firsts.every((turn, i) => i < 2 || turn === firsts[i - 2]) && Math.abs(firsts[0] - firsts[1]) === 2) return `every second ${row} turned`;
    return `${row}s of different rotations`;
  }
  const isPair = versions.every((list) => list.length === 2 && Math.abs(turnOf(list[0]) - turnOf(list[1])) === 2);
  return isPair ? `head-to-tail ${row}s` : `mixed ${row}s`;
}

function oneWayName(stack: readonly StackedRow[], row: string): string {
  const level = stack.every(({ row: { items } }) => items.every((item) => item.y === items[0].y));
  const aligned = stack.every(({ row: { items } }) => items[0].x === stack[0].row.items[0].x);
  if (level && aligned) return stack.some(nestsInto) ? `nested ${row}s` : `plain ${row}s`;
  return `shifted ${row}s`;
}

function nestsInto({ y }: StackedRow, index: number, stack: readonly StackedRow[]): boolean {
  const below = stack[index - 1];
  return below !== undefined && y < below.y + below.row.height;
}

/** Few kinds of row and level blanks first: what is easier to cut and to strip. */
export function irregularity(stack: readonly StackedRow[]): number {
  const kinds = new Set<Row>(stack.map(({ row }) => row));
  const uneven = [...kinds].reduce((sum, { items }) => sum + new Set(items.map(({ version, y }) => `${version}:${y}`)).size, 0);
  return kinds.size + uneven;
}
