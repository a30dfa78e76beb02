import loadHighs from 'highs';
import type { Highs, InitOptions, Model, ModelStatusCode, VariableType } from 'highs';

/**
 * Linear programs in a solver that keeps its last basis, so that rows can be added and the program solved again from where
 * it stood. The solver is WebAssembly and single-threaded: the same calls give the same numbers on every machine. It is
 * ended by counted iterations, never by a clock.
 */
export type ProgramStatus = 'optimal' | 'infeasible' | 'unbounded' | 'iterations' | 'failed';

export interface ProgramResult {
  readonly status: ProgramStatus;
  /** Iterations that this call used. */
  readonly iterations: number;
  /** The rest is meaningful when `status` is 'optimal'; doubles, feasible to 1e-7 of the row's own scale. */
  readonly objective: number;
  /** By column. */
  readonly values: Float64Array;
  /** By row: how much the objective gains per unit of the row's bound. */
  readonly rowDuals: Float64Array;
  /** By column: reduced costs. */
  readonly columnDuals: Float64Array;
}

export interface ProgramRow {
  readonly lower: number;
  readonly upper: number;
  readonly columns: ArrayLike<number>;
  readonly values: ArrayLike<number>;
}

export type LinearProgram = ReturnType<typeof openProgram>;

let solver: Highs | undefined;
let loading: Promise<Highs> | undefined;

/**
 * Loads the solver; once is enough. A page names the place of `highs.wasm` by `locateFile`. Everything below needs it.
 */
export async function prepareLinearPrograms(options: Pick<InitOptions, 'locateFile' | 'wasmBinary'> = {}): Promise<void> {
  loading ??= load(options);
  solver = await loading;
}

/** An empty program. Throws when `prepareLinearPrograms` has not been awaited. `dispose` it: its memory is not collected. */
export function createLinearProgram(sense: 'maximise' | 'minimise'): LinearProgram {
  if (!solver) throw new Error('Await prepareLinearPrograms first.');
  const model = solver.createModel();
  model.options.set({ output_flag: false, random_seed: 0 });
  model.changeObjectiveSense(sense === 'maximise' ? solver.constants.objectiveSense.maximize : solver.constants.objectiveSense.minimize);
  return openProgram(model, solver.constants.modelStatus, solver.constants.variableType.integer);
}

type Statuses = Highs['constants']['modelStatus'];

function openProgram(model: Model, statuses: Statuses, whole: VariableType) {
  return {
    /** Adds a column, default 0 … ∞, with its values in rows that are there already; returns its number. */
    addColumn(cost: number, lower = 0, upper = Infinity, entries: { readonly rows: readonly number[]; readonly values: readonly number[] } = { rows: [], values: [] }): number {
      model.addCol(cost, lower, upper, { indices: Int32Array.from(entries.rows), values: Float64Array.from(entries.values) });
      return model.getDimensions().numCols - 1;
    },

    /** Adds rows lower ≤ Σ value · column ≤ upper; returns the first one's number. */
    addRows(rows: readonly ProgramRow[]): number {
      const { numRows, numCols } = model.getDimensions();
      if (rows.length === 0) return numRows;
      const starts = new Int32Array(rows.length + 1);
      rows.forEach((row, i) => (starts[i + 1] = starts[i] + row.columns.length));
      const indices = new Int32Array(starts[rows.length]);
      const values = new Float64Array(starts[rows.length]);
      rows.forEach((row, i) => {
        indices.set(row.columns, starts[i]);
        values.set(row.values, starts[i]);
      });
      model.addRows({
        lower: Float64Array.from(rows, (row) => row.lower),
        upper: Float64Array.from(rows, (row) => row.upper),
        matrix: { format: 'csr', numRows: rows.length, numCols, starts, indices, values },
      });
      return numRows;
    },

    deleteRows(rows: readonly number[]): void {
      if (rows.length > 0) model.deleteRows({ kind: 'set', indices: Int32Array.from(rows) });
    },

    setCost(column: number, cost: number): void {
      model.changeColCost(column, cost);
    },

    setBounds(column: number, lower: number, upper: number): void {
      model.changeColBounds(column, lower, upper);
    },

    setRowBounds(row: number, lower: number, upper: number): void {
      model.changeRowBounds(row, lower, upper);
    },

    get rows(): number {
      return model.getDimensions().numRows;
    },

    get columns(): number {
      return model.getDimensions().numCols;
    },

    /** Solves from the last basis, at most so many simplex iterations. */
    solve(iterations: number): ProgramResult {
      model.options.set({ simplex_iteration_limit: iterations });
      const { modelStatus } = model.run();
      const { colValue, rowDual, colDual } = model.getSolution();
      return {
        status: statusOf(modelStatus, statuses),
        iterations: Number(model.info.get('simplex_iteration_count')),
        objective: model.getObjectiveValue(),
        values: colValue,
        rowDuals: rowDual,
        columnDuals: colDual,
      };
    },

    /** Solves with every column a whole number; at most so many nodes of its tree. An objective of whole numbers is settled to the last unit. No duals. */
    solveWhole(nodes: number): Pick<ProgramResult, 'status' | 'values'> {
      const { numCols } = model.getDimensions();
      model.changeColsIntegrality({ kind: 'range', from: 0, to: numCols - 1 }, new Int32Array(numCols).fill(whole));
      model.options.set({ mip_rel_gap: 0, mip_abs_gap: 0.5, mip_max_nodes: nodes });
      const { modelStatus } = model.run();
      return { status: statusOf(modelStatus, statuses), values: model.getSolution().colValue };
    },

    dispose(): void {
      model.dispose();
    },
  };
}

function statusOf(code: ModelStatusCode, statuses: Statuses): ProgramStatus {
  switch (code) {
    case statuses.optimal:
      return 'optimal';
    case statuses.infeasible:
    case statuses.unboundedOrInfeasible:
      return 'infeasible';
    case statuses.unbounded:
      return 'unbounded';
    case statuses.iterationLimit:
      return 'iterations';
    default:
      return 'failed';
  }
}

/** The package is typed as CommonJS, where the loader is the `default` of what an ES module sees as its default. */
function load(options: InitOptions): Promise<Highs> {
  const loader = loadHighs as unknown as (options: InitOptions) => Promise<Highs>;
  return loader(options);
}
