/** A function of one number that works out every value once. */
export function remembered(measure: (x: number) => number): (x: number) => number {
  const known = new Map<number, number>();
  return (x) => {
    const value = known.get(x) ?? measure(x);
    known.set(x, value);
    return value;
  };
}
