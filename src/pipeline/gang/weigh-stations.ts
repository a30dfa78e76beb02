import { createLinearProgram, prepareLinearPrograms } from '../../nesting/linear-program.ts';

/** Forms whose stations are settled, by whomever. */
export interface SettledForms {
  readonly quantities: readonly number[];
  /** Stations of each version on each form: `[form][version]`. */
  readonly counts: readonly (readonly number[])[];
}

export interface WeighedForms {
  /** Pressings of each form; 0 where the others make everything. */
  readonly pressings: readonly number[];
  /** Copies of each version beyond its quantity; below 0 where no station prints it. */
  readonly overs: readonly number[];
  /** Versions that no station prints. */
  readonly missing: readonly number[];
}

/**
 * How often each form is pressed so that every version that is on some form is made in its quantity with the fewest
 * pressings altogether: a whole-number program with a column a form and a row a version. Exact within the nodes it is given,
 * which forms made by hand never use up.
 */
export async function weighStations({ quantities, counts }: SettledForms): Promise<WeighedForms> {
  const isMade = (version: number) => counts.some((form) => form[version]! > 0);
  const missing = quantities.flatMap((_, version) => (isMade(version) ? [] : [version]));
  const pressings = missing.length === quantities.length ? counts.map(() => 0) : await fewest({ quantities, counts }, isMade);
  const overs = quantities.map((quantity, version) => counts.reduce((made, form, f) => made + form[version]! * pressings[f]!, 0) - quantity);
  return { pressings, overs, missing };
}

/** Nodes of the program's tree. */
const MOST_NODES = 20_000;

async function fewest({ quantities, counts }: SettledForms, isMade: (version: number) => boolean): Promise<number[]> {
  await prepareLinearPrograms();
  const program = createLinearProgram('minimise');
  try {
    counts.forEach(() => program.addColumn(1));
    const columns = counts.map((_, form) => form);
    program.addRows(quantities.flatMap((quantity, version) => (isMade(version) ? [{ lower: quantity, upper: Infinity, columns, values: counts.map((form) => form[version]!) }] : [])));
    const { status, values } = program.solveWhole(MOST_NODES);
    return topUp({ quantities, counts }, Array.from(values, (value) => (status === 'optimal' ? Math.round(value) : Math.max(0, Math.ceil(value)))));
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
