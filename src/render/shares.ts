/**
 * Parts of a whole as fractions rounded to so many decimals of a percent that still add up to 100 %: the parts that lose
 * most by rounding down are rounded up (largest remainder). All parts are at least 0; their sum is more than 0.
 */
export function roundedShares(parts: readonly number[], decimals: number): number[] {
  const total = parts.reduce((sum, part) => sum + part, 0);
  const steps = 100 * 10 ** decimals;
  const exact = parts.map((part) => (part / total) * steps);
  const whole = exact.map(Math.floor);
  const missing = Math.round(steps - whole.reduce((sum, part) => sum + part, 0));
  const byLoss = exact.map((_, i) => i).toSorted((a, b) => exact[b]! - whole[b]! - (exact[a]! - whole[a]!) || a - b);
  for (const i of byLoss.slice(0, missing)) whole[i]! += 1;
  return whole.map((value) => value / steps);
}
