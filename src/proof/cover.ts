import { boxOf, type Ring } from '../geometry/point.ts';
import { turnRing, type Turn } from '../geometry/turn.ts';
import { cellRange, cellsAcross, type Range } from './cells.ts';
import type { CheckedProblem } from './checked-problem.ts';
import type { Cells, ReadBlank, ReadCertificate } from './clique-certificate.ts';
import { demand } from './demand.ts';
import { forbiddenPieces, isBoxForbidden } from './forbidden.ts';

/** Sums of weights on every cell that holds a place of a blank; one problem for each blank of the certificate. */
export class Cover {
  private readonly certificate: ReadCertificate;
  private readonly problems: readonly CheckedProblem[];
  private readonly columns: Range;
  private readonly rows: Range;
  private readonly sums: Float64Array;

  constructor(certificate: ReadCertificate, problems: readonly CheckedProblem[]) {
    this.certificate = certificate;
    this.problems = problems;
    const all = problems.flatMap((problem) => problem.turns.flatMap((turn) => this.placesOf(problem, turn) ?? []));
    this.columns = hullOf(all.map(({ columns }) => columns));
    this.rows = hullOf(all.map(({ rows }) => rows));
    this.sums = new Float64Array(certificate.blanks.reduce((sum, { turns }) => sum + turns.length, 0) * sizeOf(this.columns) * sizeOf(this.rows));
  }

  add(cells: Cells, weight: number): void {
    for (let k = 0; k < cells.length; k += 3) {
      const at = this.entry(cells[k]!, cells[k + 1]!, cells[k + 2]!);
      if (at >= 0) this.sums[at]! += weight;
    }
  }

  /** Every place of a blank that no keep-out forbids lies in a cell with at least the blank's worth. */
  demandWhole(): void {
    let before = 0;
    this.certificate.blanks.forEach((blank, b) => {
      this.demandBlank(blank, this.problems[b]!, before);
      before += blank.turns.length;
    });
  }

  /** `first`: index of the blank's first turn. */
  private demandBlank(blank: ReadBlank, problem: CheckedProblem, first: number): void {
    for (const turn of problem.turns) {
      const places = this.placesOf(problem, turn);
      if (!places) continue;
      const own = classOf(blank, turn);
      const index = first + own;
      const barred = this.barredPieces(blank, problem, blank.turns[own]!);
      for (let column = places.columns.low; column <= places.columns.high; column++) {
        for (let row = places.rows.low; row <= places.rows.high; row++) {
          if (this.sums[this.entry(index, column, row)]! >= blank.worth) continue;
          const x = cellRange(this.certificate.x, column);
          const y = cellRange(this.certificate.y, row);
          const box = { minX: x.low, maxX: x.high, minY: y.low, maxY: y.high };
          demand(isBoxForbidden(box, barred), 'a cell is not covered');
        }
      }
    }
  }

  private placesOf(problem: CheckedProblem, turn: Turn): { columns: Range; rows: Range } | undefined {
    if (!fitsTurned(problem, turn)) return undefined;
    const { outline, halfWidth, halfHeight } = problem;
    const box = boxOf(turnRing(outline, turn));
    return { columns: cellsAcross(this.certificate.x, halfWidth - box.maxX), rows: cellsAcross(this.certificate.y, halfHeight - box.maxY) };
  }

  private barredPieces({ parts }: ReadBlank, problem: CheckedProblem, shown: Turn): ReturnType<typeof forbiddenPieces> {
    const turned = parts.map((part): Ring => turnRing(part, shown));
    return this.certificate.keepOuts.flatMap((pieces, k) => forbiddenPieces(pieces, turned, problem.keepOuts[k]!.clearance));
  }

  /** Index into `sums`, −1 outside. */
  private entry(turn: number, column: number, row: number): number {
    const { columns, rows } = this;
    if (column < columns.low || column > columns.high || row < rows.low || row > rows.high) return -1;
    return (turn * sizeOf(columns) + column - columns.low) * sizeOf(rows) + row - rows.low;
  }
}

/** The class that stands for a rotation: the parts, turned by the class, lie in the outline turned by the rotation. */
function classOf({ symmetry, turns }: ReadBlank, turn: Turn): number {
  const period = 4 / symmetry;
  const index = turns.findIndex((other) => (turn - other) % period === 0);
  demand(index >= 0, 'a rotation has no class');
  return index;
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
