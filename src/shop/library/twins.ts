import { inputError, type InputError } from '../../base/issue.ts';

interface Named {
  readonly kind: string;
  readonly id: string;
  readonly where: string;
}

interface Refused {
  readonly where: string;
  readonly error: InputError;
}

/** Places named in one message. */
const MOST_PLACES = 4;

/**
 * Offers of one kind and name that contradict one another become refusals, each naming the places of the others: which of
 * them is meant only their owner knows. What does not contradict stays as it is; the order is kept.
 */
export function withoutTwins<Offer extends Named>(offers: Iterable<Offer | Refused>, contradict: (a: Offer, b: Offer) => boolean): (Offer | Refused)[] {
  const all = [...offers];
  const groups = new Map<string, Offer[]>();
  for (const offer of all) {
    if ('error' in offer) continue;
    const group = groups.get(nameOf(offer));
    if (group) group.push(offer);
    else groups.set(nameOf(offer), [offer]);
  }
  const twins = new Map<Offer | Refused, readonly Offer[]>();
  for (const group of groups.values()) {
    if (group.some((one, index) => index > 0 && contradict(group[0], one))) for (const one of group) twins.set(one, group);
  }
  return all.map((offer) => (twins.has(offer) ? refusal(offer as Offer, twins.get(offer)!) : offer));
}

function nameOf({ kind, id }: Named): string {
  return JSON.stringify([kind, id]);
}

function refusal(offer: Named, group: readonly Named[]): Refused {
  const { kind, id, where } = offer;
  const others = group.filter((one) => one !== offer).map((one) => one.where);
  const more = others.length > MOST_PLACES ? ` and ${others.length - MOST_PLACES} more places` : '';
  return { where, error: inputError('library-named-twice', { where, facts: { kind, id, others: others.slice(0, MOST_PLACES).join(', ') + more } }) };
}
