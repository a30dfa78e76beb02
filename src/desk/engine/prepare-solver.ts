import { prepareLinearPrograms } from '../../nesting/linear-program.ts';

/** The solver's WebAssembly lies beside the worker's script. */
export function prepareSolver(): Promise<void> {
  return prepareLinearPrograms({ locateFile: (file) => new URL(file, location.href).href });
}
