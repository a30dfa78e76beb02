import { createLinearProgram } from '../../nesting/linear-program.ts';

/** Layouts as columns, designs as rows: how often each layout is pressed, real numbers. */
export interface Master {
  /** Takes in a layout by its counts; returns its number. */
  add(counts: readonly number[]): number;
  /** The fewest pressings with these layouts, or with all. `prices`: what a copy of each design is worth in pressings. */
  solve(layouts?: readonly number[]): { readonly total: number; readonly runs: readonly number[]; readonly prices: readonly number[] };
  dispose(): void;
}

/** A copy that no layout makes costs so many pressings, so that there always is an answer with prices. */
const NOT_MADE = 1e6;
const MOST_ITERATIONS = 10_000;

/** `quantities` in copies. Dispose it: its memory is not collected. */
export function createMaster(quantities: readonly number[]): Master {
  const program = createLinearProgram('minimise');
  // Quantities of one whole: the program's numbers stay near 1, whatever the job's size.
  const scale = Math.max(...quantities);
  const made: number[][] = [];
  const rows = program.addRows(quantities.map((quantity) => ({ lower: quantity / scale, upper: Infinity, columns: [], values: [] })));
  const column = (cost: number, counts: readonly number[]) => {
    const of = counts.flatMap((count, d) => (count > 0 ? [d] : []));
    return program.addColumn(cost, 0, Infinity, { rows: of.map((d) => rows + d), values: of.map((d) => counts[d]!) });
  };
  const first = quantities.map((_, d) => column(NOT_MADE, quantities.map((__, other) => (other === d ? 1 : 0)))).length;
  return {
    add(counts) {
      column(1, counts);
      made.push([...counts]);
      return made.length - 1;
    },
    solve(layouts) {
      const open = layouts && new Set(layouts);
      made.forEach((_, layout) => program.setBounds(first + layout, 0, open && !open.has(layout) ? 0 : Infinity));
      const { objective, values, rowDuals } = program.solve(MOST_ITERATIONS);
      const which = layouts ?? made.map((_, layout) => layout);
      return { total: objective * scale, runs: which.map((layout) => values[first + layout]! * scale), prices: quantities.map((_, d) => Math.max(0, rowDuals[rows + d]!)) };
    },
    dispose: () => program.dispose(),
  };
}
