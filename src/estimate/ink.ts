import { figure, type Figure, type Input } from './figure.ts';

/** kg of one ink over a run: a solid takes `gramsPerM2`, the colour covers `coverage` (0 … 1) of the sheet. */
export function inkWeight(sheets: number, area: Input, coverage: Input, gramsPerM2: Input): Figure {
  return figure('ink a colour', 'kg', 'sheets × sheet area × coverage × ink film ÷ 1000', { sheets, 'sheet area': area, coverage, 'ink film': gramsPerM2 });
}

/** kg of one ink over a run where it is known how much of each blank it covers. `name` is that of the formulas. */
export function inkOnBlanks(name: string, label: string, sheets: number, ups: number, inkedM2: Input, gramsPerM2: Input): Figure {
  return { ...figure(name, 'kg', 'sheets × ups × inked area × ink film ÷ 1000', { sheets, ups, 'inked area': inkedM2, 'ink film': gramsPerM2 }), label };
}

/** kg of varnish or coating laid over the whole of an area. */
export function coatingWeight(sheets: number, area: Input, gramsPerM2: Input): Figure {
  return figure('varnish', 'kg', 'sheets × coated area × film ÷ 1000', { sheets, 'coated area': area, film: gramsPerM2 });
}
