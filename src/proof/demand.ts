/** Why a certificate proves nothing. */
export class Refusal extends Error {}

export function demand(condition: boolean, reason: string): asserts condition {
  if (!condition) throw new Refusal(reason);
}
