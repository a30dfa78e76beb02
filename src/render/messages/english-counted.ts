import type { Format } from '../format.ts';

/** `1 sheet`, `12 sheets`. */
export function counted(count: number, noun: string, format?: Format): string {
  return `${format ? format.number(count, 0) : count} ${noun}${count === 1 ? '' : 's'}`;
}
