/** Decimals of lengths in the files we write: a thousandth of a millimetre, as in the layout file. */
export const LENGTH_DECIMALS = 3;

/** A number with at most three decimals and nothing superfluous, never −0. */
export function plain(value: number): string {
  return String(Number(value.toFixed(LENGTH_DECIMALS)) + 0);
}
