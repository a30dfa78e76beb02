import { createLinearProgram, prepareLinearPrograms } from '../../nesting/linear-program.ts';

/** Forms whose stations are settled, by whomever. */
export interface SettledForms {
  readonly quantities: readonly number[];
  /** Stations of each version on each form: `[form][version]`. */
  readonly counts: readonly (readonly number[])[];
  /** Copies of each version beyond its quantity; absent: none at least, and nobody minds more. */
  readonly limits?: readonly { readonly least: number; readonly greatest?: number }[] | undefined;
}

export interface WeighedForms {
  /** Pressings of each form; 0 where the others make everything. */
  readonly pressings: readonly number[];
  /** Copies of each version beyond its quantity; below 0 where no station prints it. */
  readonly overs: readonly number[];
  /** Versions that no station prints. */
  readonly missing: readonly number[];
  /** Versions of which more are made than allowed, whatever the pressings. */
  readonly tooMany: readonly number[];
}

/**
 * How often each form is pressed so that every version that is on some form is made in its quantity with the fewest
 * pressings altogether: a whole-number program with a column a form and a row a version. Exact within the nodes it is given,
 * which forms made by hand never use up.
 */
export async function weighStations({ quantities, counts, limits }: SettledForms): Promise<WeighedForms> {
  const isMade = (version: number) => counts.some((form) => form[version]! > 0);
  const missing = quantities.flatMap((_, version) => (isMade(version) ? [] : [version]));
  const pressings = missing.length === quantities.length ? counts.map(() => 0) : await fewestWithin({ quantities, counts, limits }, isMade);
  const overs = quantities.map((quantity, version) => counts.reduce((made, form, f) => made + form[version]! * pressings[f]!, 0) - quantity);
  return { pressings, overs, missing, tooMany: overs.flatMap((over, version) => (over > greatestOf(limits, version) ? [version] : [])) };
}

/** Where no pressings keep the greatest overs, the fewest that make enough. */
async function fewestWithin({ quantities, counts, limits }: SettledForms, isMade: (version: number) => boolean): Promise<number[]> {
  const wanted = { counts, lower: quantities.map((quantity, version) => quantity + (limits?.[version]?.least ?? 0)) };
  const upper = quantities.map((quantity, version) => quantity + greatestOf(limits, version));
  const within = upper.some(Number.isFinite) ? await fewest({ ...wanted, upper }, isMade) : undefined;
  return within ?? (await fewest({ ...wanted, upper: quantities.map(() => Infinity) }, isMade))!;
}

function greatestOf(limits: SettledForms['limits'], version: number): number {
  return limits?.[version]?.greatest ?? Infinity;
}

/** Copies wanted of each version. */
interface Wanted extends Pick<SettledForms, 'counts'> {
  readonly lower: readonly number[];
  readonly upper: readonly number[];
}

/** Nodes of the program's tree. */
const MOST_NODES = 20_000;

/** Undefined where the upper limits cannot be kept. */
async function fewest({ counts, lower, upper }: Wanted, isMade: (version: number) => boolean): Promise<number[] | undefined> {
  await prepareLinearPrograms();
  const program = createLinearProgram('minimise');
  try {
    counts.forEach(() => program.addColumn(1));
    const columns = counts.map((_, form) => form);
    program.addRows(lower.flatMap((least, version) => (isMade(version) ? [{ lower: least, upper: upper[version]!, columns, values: counts.map((form) => form[version]!) }] : [])));
    const { status, values } = program.solveWhole(MOST_NODES);
    if (status !== 'optimal' && upper.some(Number.isFinite)) return undefined;
    return topUp({ quantities: lower, counts }, Array.from(values, (value) => (status === 'optimal' ? Math.round(value) : Math.max(0, Math.ceil(value)))));
  } finally {
    program.dispose();
  }
}

/** The solver keeps its rows to a tolerance; a copy that is still wanting is made by the form that makes most of it. */
function topUp({ quantities, counts }: SettledForms, pressings: number[]): number[] {
  quantities.forEach((quantity, version) => {
    const made = counts.reduce((sum, form, f) => sum + form[version]! * pressings[f]!, 0);
    const most = Math.max(...counts.map((form) => form[version]!));
    if (made < quantity && most > 0) pressings[counts.findIndex((form) => form[version] === most)]! += Math.ceil((quantity - made) / most);
  });
  return pressings;
}
