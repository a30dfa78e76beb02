import type { Format } from '../format.ts';

/** `1 coupe`, `12 coupes`; in French nought is singular too. */
export function frenchCounted(count: number, one: string, many = `${one}s`, format?: Format): string {
  return `${format ? format.number(count, 0) : count} ${count < 2 ? one : many}`;
}
