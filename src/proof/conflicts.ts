import type { Ring } from '../geometry/point.ts';
import { turnRing } from '../geometry/turn.ts';
import { differenceRange } from './cells.ts';
import type { Cells, ReadCertificate } from './clique-certificate.ts';
import { demand } from './demand.ts';
import { forbiddenPieces, isBoxForbidden } from './forbidden.ts';

/** Answers remembered, at most: one byte each. */
const MOST_ANSWERS = 2 ** 27;

const UNKNOWN = 0;
const CONFLICT = 1;
const NONE = 2;

/**
 * Whether all placements of two cells conflict: the box of all differences of their places lies in the forbidden set of their turns. Answers depend on the
 * difference alone and are remembered.
 */
export class Conflicts {
  private readonly certificate: ReadCertificate;
  private readonly pieces: ReturnType<typeof forbiddenPieces>[][];
  private readonly reachColumns: number;
  private readonly reachRows: number;
  private readonly answers: Uint8Array;

  constructor(certificate: ReadCertificate, gap: number) {
    this.certificate = certificate;
    const turned = certificate.blanks.flatMap(({ turns, parts }) => turns.map((turn) => parts.map((part): Ring => turnRing(part, turn))));
    this.pieces = turned.map((a) => turned.map((b) => forbiddenPieces(a, b, gap)));
    // A map may exchange columns and rows.
    const reach = Math.max(spread(certificate, 1), spread(certificate, 2));
    const exchanged = certificate.maps.some((map) => map.swap);
    this.reachColumns = exchanged ? reach : spread(certificate, 1);
    this.reachRows = exchanged ? reach : spread(certificate, 2);
    const size = turned.length ** 2 * (2 * this.reachColumns + 1) * (2 * this.reachRows + 1);
    demand(size <= MOST_ANSWERS, 'cliques reach too far');
    this.answers = new Uint8Array(size);
  }

  /** Any two different cells conflict, and any two placements of one cell do. */
  demandClique(cells: Cells): void {
    const { answers, reachColumns, reachRows } = this;
    const turns = this.pieces.length;
    const width = 2 * reachColumns + 1;
    const height = 2 * reachRows + 1;
    for (let a = 0; a < cells.length; a += 3) {
      const turn = cells[a]!;
      const column = cells[a + 1]!;
      const row = cells[a + 2]!;
      for (let b = 0; b <= a; b += 3) {
        const columns = cells[b + 1]! - column;
        const rows = cells[b + 2]! - row;
        demand(b === a || columns !== 0 || rows !== 0 || cells[b] !== turn, 'a clique names a cell twice');
        const at = ((turn * turns + cells[b]!) * width + columns + reachColumns) * height + rows + reachRows;
        if (answers[at] === UNKNOWN) answers[at] = this.conflict(turn, cells[b]!, columns, rows) ? CONFLICT : NONE;
        demand(answers[at] === CONFLICT, b === a ? 'two blanks fit into one cell' : 'two cells of a clique do not conflict');
      }
    }
  }

  private conflict(r: number, s: number, columns: number, rows: number): boolean {
    const x = differenceRange(this.certificate.x, columns);
    const y = differenceRange(this.certificate.y, rows);
    return isBoxForbidden({ minX: x.low, maxX: x.high, minY: y.low, maxY: y.high }, this.pieces[r]![s]!);
  }
}

/** Most columns (entry 1) or rows (entry 2) between two cells of one clique. */
function spread({ cliques }: ReadCertificate, entry: 1 | 2): number {
  return cliques.reduce((most, { cells }) => {
    let low = Infinity;
    let high = -Infinity;
    for (let k = entry; k < cells.length; k += 3) {
      low = Math.min(low, cells[k]!);
      high = Math.max(high, cells[k]!);
    }
    return Math.max(most, high - low);
  }, 0);
}
