/** What decides whether two designs may stand on one form. What a design leaves open, the job may say for all. */
export const SHARED_FIELDS = ['board', 'sheetGrain', 'coating', 'foodClass', 'delivery'] as const;
export type SharedField = (typeof SHARED_FIELDS)[number];

export interface Sharing extends Readonly<Partial<Record<SharedField, string | undefined>>> {
  readonly id: string;
  readonly inks: readonly string[];
}

/** Why two designs do not stand on one form. */
export interface Apart {
  readonly designs: readonly [string, string];
  readonly because: SharedField | 'inks';
  /** What each of them says; undefined: nothing. For inks their number together and the units of the press. */
  readonly says: readonly [string | undefined, string | undefined];
}

export interface Grouped {
  /** Indices of designs that may share a form. */
  readonly groups: readonly (readonly number[])[];
  readonly apart: readonly Apart[];
}

/**
 * Designs that agree in every field go together as long as their inks find units enough. Which of them stand together
 * where the units do not suffice follows the order of the list.
 */
export function groupDesigns(designs: readonly Sharing[], units: number | undefined): Grouped {
  const groups: number[][] = [];
  designs.forEach((design, index) => {
    const home = groups.find((group) => group.every((other) => !difference(designs[other]!, design)) && inksOf([...group.map((other) => designs[other]!), design]).size <= (units ?? Infinity));
    if (home) home.push(index);
    else groups.push([index]);
  });
  const heads = groups.map((group) => group[0]!);
  const apart = heads.flatMap((a, i) => heads.slice(i + 1).map((b): Apart => {
    const [first, second] = [designs[a]!, designs[b]!];
    const because = difference(first, second);
    const says: Apart['says'] = because ? [first[because], second[because]] : [String(inksOf(groups[i]!.map((member) => designs[member]!).concat(second)).size), String(units)];
    return { designs: [first.id, second.id], because: because ?? 'inks', says };
  }));
  return { groups, apart };
}

function difference(a: Sharing, b: Sharing): SharedField | undefined {
  return SHARED_FIELDS.find((field) => a[field] !== b[field]);
}

export function inksOf(designs: readonly Sharing[]): Set<string> {
  return new Set(designs.flatMap(({ inks }) => inks));
}
