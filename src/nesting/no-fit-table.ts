import type { NoFit } from '../geometry/no-fit.ts';
import { forbids, noFitPolygon } from '../geometry/no-fit.ts';
import { counterClockwise } from '../geometry/point.ts';
import type { Point } from '../geometry/point.ts';
import type { Turn } from '../geometry/turn.ts';
import { addTurns, turnPoint, turnRing } from '../geometry/turn.ts';
import type { KeepOut, Placement, Problem } from '../layout/problem.ts';
import { requiredGap } from '../layout/problem.ts';

/**
 * The no-fit polygons of a problem, each made when it is first asked for. Placements turned alike share one: b against a
 * is asked in a's own axes, so part pairs and differences of turns are all there are.
 */
export class NoFitTable {
  private readonly problem: Problem;
  private readonly pairs = new Map<number, NoFit>();
  private readonly keepOuts = new Map<KeepOut, NoFit[]>();

  constructor(problem: Problem) {
    this.problem = problem;
  }

  /** Part `b` turned by `turn` against part `a` as drawn, at the gap the rules require. */
  between(a: number, b: number, turn: Turn): NoFit {
    const { parts, rules } = this.problem;
    const key = (a * parts.length + b) * 4 + turn;
    let noFit = this.pairs.get(key);
    if (!noFit) {
      noFit = noFitPolygon(parts[a].outline, turnRing(parts[b].outline, turn), requiredGap(rules));
      this.pairs.set(key, noFit);
    }
    return noFit;
  }

  /** Whether two blanks come nearer than the required gap. Exact. */
  forbidsPair(a: Placement, b: Placement): boolean {
    const d = relativeShift(a, b);
    return forbids(this.between(a.part, b.part, addTurns(b.turn, -a.turn)), d.x, d.y);
  }

  /** The turned part against a keep-out, shifts on the sheet. */
  against(keepOut: KeepOut, part: number, turn: Turn): NoFit {
    let noFits = this.keepOuts.get(keepOut);
    if (!noFits) this.keepOuts.set(keepOut, (noFits = []));
    const ring = counterClockwise(keepOut.ring);
    return (noFits[4 * part + turn] ??= noFitPolygon(ring, turnRing(this.problem.parts[part].outline, turn), keepOut.clearance));
  }

  /** Whether the blank comes nearer to a keep-out than its clearance. Exact. */
  forbidsPlace(placement: Placement): boolean {
    return this.problem.keepOuts.some((keepOut) => forbids(this.against(keepOut, placement.part, placement.turn), placement.x, placement.y));
  }
}

/** How far b stands from a, in a's own axes. */
export function relativeShift(a: Placement, b: Placement): Point {
  return turnPoint({ x: b.x - a.x, y: b.y - a.y }, addTurns(0, -a.turn));
}

const tables = new WeakMap<Problem, NoFitTable>();

/** The table of this problem; the same object gets the same table, so all searches share it. */
export function noFitTable(problem: Problem): NoFitTable {
  let table = tables.get(problem);
  if (!table) tables.set(problem, (table = new NoFitTable(problem)));
  return table;
}
