import type { Format } from '../format.ts';
import type { NearMiss } from '../near-miss-facts.ts';

export type Changed = Pick<NearMiss, 'thing' | 'from' | 'to'> & { readonly layout?: NearMiss['layout'] };

/** Words for single changes of a layout. */
export interface ChangeWords {
  /** By `NearMiss.thing`: what is allowed or not. */
  readonly open: Readonly<Record<string, string>>;
  /** What is measured, what it becomes, and whether that is said where it was only tried. */
  readonly measured: Readonly<Record<string, readonly [name: string, change: string, alsoTried?: true]>>;
  /** A flap or dimension of a style, by its name there. */
  readonly flap: (name: string) => string;
  readonly less: string;
  readonly bleedsCut: (bleed: string) => string;
  readonly upTo: (length: string) => string;
}

function measuredIn({ measured, flap, less }: ChangeWords, thing: string): ChangeWords['measured'][string] {
  return measured[thing] ?? [flap(thing.replace(/^flap:/, '')), less];
}

/** `gap 0.6 mm narrower (6 → 5.4 mm)` */
export function changePhrase({ thing, from, to, layout }: Changed, words: ChangeWords, format: Format): string {
  const open = words.open[thing];
  if (open !== undefined) return open;
  const [name, how] = measuredIn(words, thing);
  const bleed = thing === 'gap' && layout?.rules.bleedMeeting === 'cut' ? `, ${words.bleedsCut(format.length(Math.min(layout.rules.bleed, to! / 2)))}` : '';
  return `${name} ${format.length(Math.abs(to! - from!))} ${how} (${format.bareLength(from!)} → ${format.length(to!)}${bleed})`;
}

/** How far a thing was tried: `sheet wider (to 1080 mm)`. */
export function triedPhrase({ thing, from, to }: Changed, words: ChangeWords, format: Format): string {
  const open = words.open[thing];
  if (open !== undefined) return open;
  const [name, how, alsoTried] = measuredIn(words, thing);
  return `${name}${alsoTried ? ` ${how}` : ''} (${words.upTo(format.length(to ?? from ?? 0))})`;
}
