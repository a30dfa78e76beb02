import type { Format } from '../format.ts';

/** `1 Schnitt`, `12 Schnitte`. */
export function germanCounted(count: number, one: string, many: string, format?: Format): string {
  return `${format ? format.number(count, 0) : count} ${count === 1 ? one : many}`;
}
