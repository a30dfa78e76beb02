/** Halves up, with the float's dust taken off first. */
export function roundTo(value: number, decimals: number): number {
  return Math.round(Number(value.toPrecision(15)) * 10 ** decimals) / 10 ** decimals;
}
