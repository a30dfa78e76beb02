import { boxOf, type Ring } from '../geometry/point.ts';
import { turnRing, type Turn } from '../geometry/turn.ts';
import { cellRange, cellsAcross, type Range } from './cells.ts';
import type { CheckedProblem } from './checked-problem.ts';
import type { Cells, ReadCertificate } from './clique-certificate.ts';
import { demand } from './demand.ts';
import { forbiddenPieces, isBoxForbidden } from './forbidden.ts';

/** Sums of weights on every cell that holds a place of a blank. */
export class Cover {
  private readonly certificate: ReadCertificate;
  private readonly problem: CheckedProblem;
  private readonly columns: Range;
  private readonly rows: Range;
  private readonly sums: Float64Array;

  constructor(certificate: ReadCertificate, problem: CheckedProblem) {
    this.certificate = certificate;
    this.problem = problem;
    const all = problem.turns.flatMap((turn) => this.placesOf(turn) ?? []);
    this.columns = hullOf(all.map(({ columns }) => columns));
    this.rows = hullOf(all.map(({ rows }) => rows));
    this.sums = new Float64Array(certificate.turns.length * sizeOf(this.columns) * sizeOf(this.rows));
  }

  add(cells: Cells, weight: number): void {
    for (let k = 0; k < cells.length; k += 3) {
      const at = this.entry(cells[k]!, cells[k + 1]!, cells[k + 2]!);
      if (at >= 0) this.sums[at]! += weight;
    }
  }

  /** Every place of a blank that no keep-out forbids lies in a cell with at least a whole weight. */
  demandWhole(): void {
    for (const turn of this.problem.turns) {
      const places = this.placesOf(turn);
      if (!places) continue;
      const index = this.classOf(turn);
      const barred = this.barredPieces(turn);
      for (let column = places.columns.low; column <= places.columns.high; column++) {
        for (let row = places.rows.low; row <= places.rows.high; row++) {
          if (this.sums[this.entry(index, column, row)]! >= this.certificate.scale) continue;
          const x = cellRange(this.certificate.x, column);
          const y = cellRange(this.certificate.y, row);
          const box = { minX: x.low, maxX: x.high, minY: y.low, maxY: y.high };
          demand(isBoxForbidden(box, barred), 'a cell is not covered');
        }
      }
    }
  }

  /** The class that stands for a rotation: the parts, turned by the class, lie in the outline turned by the rotation. */
  private classOf(turn: Turn): number {
    const period = 4 / this.certificate.symmetry;
    const index = this.certificate.turns.findIndex((other) => (turn - other) % period === 0);
    demand(index >= 0, 'a rotation has no class');
    return index;
  }

  private placesOf(turn: Turn): { columns: Range; rows: Range } | undefined {
    if (!fitsTurned(this.problem, turn)) return undefined;
    const { outline, halfWidth, halfHeight } = this.problem;
    const box = boxOf(turnRing(outline, turn));
    return { columns: cellsAcross(this.certificate.x, halfWidth - box.maxX), rows: cellsAcross(this.certificate.y, halfHeight - box.maxY) };
  }

  private barredPieces(turn: Turn): ReturnType<typeof forbiddenPieces> {
    const shown = this.certificate.turns[this.classOf(turn)]!;
    const blank = this.certificate.parts.map((part): Ring => turnRing(part, shown));
    return this.certificate.keepOuts.flatMap((parts, k) => forbiddenPieces(parts, blank, this.problem.keepOuts[k]!.clearance));
  }

  /** Index into `sums`, −1 outside. */
  private entry(turn: number, column: number, row: number): number {
    const { columns, rows } = this;
    if (column < columns.low || column > columns.high || row < rows.low || row > rows.high) return -1;
    return (turn * sizeOf(columns) + column - columns.low) * sizeOf(rows) + row - rows.low;
  }
}

/** Whether a blank turned so lies on the sheet at all. */
export function fitsTurned({ outline, halfWidth, halfHeight }: CheckedProblem, turn: Turn): boolean {
  const { maxX, maxY } = boxOf(turnRing(outline, turn));
  return maxX <= halfWidth && maxY <= halfHeight;
}

function sizeOf({ low, high }: Range): number {
  return Math.max(0, high - low + 1);
}

function hullOf(ranges: readonly Range[]): Range {
  return { low: Math.min(...ranges.map((range) => range.low)), high: Math.max(...ranges.map((range) => range.high)) };
}
