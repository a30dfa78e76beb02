import { boxOf, type Box, type Point, type Ring } from '../geometry/point.ts';
import { addTurns, turnPoint, type Turn } from '../geometry/turn.ts';
import { requiredGap, type Limit, type Placement, type Problem } from '../layout/problem.ts';
import type { Improvement, RankedLayout } from '../nesting/incumbents.ts';
import { figuresOf } from '../nesting/rank.ts';
import type { Solution } from '../nesting/solve.ts';

/**
 * Work-and-turn and work-and-tumble print front and back from the same plates: one half of the sheet carries fronts, the
 * other backs, and the second pass, the sheet turned over, prints each on the back of the other. So the knives of one half
 * are the mirror image of the other's. In such a problem part 0 is the blank and part 1 its mirror image.
 */
export type Halved = Problem & { readonly symmetry: 'turned' | 'tumbled' };

export function isHalved(problem: Problem): problem is Halved {
  return problem.symmetry !== 'none';
}

/** The half of the sheet that carries fronts, at the lay or at the gripper edge: whatever lies in it may be mirrored into the other. */
export function halfOf(problem: Halved): Problem {
  const { usable, printable, rules, keepOuts, parts } = problem;
  const reflect = reflectionOf(problem);
  const beside = Math.ceil(requiredGap(rules) / 2);
  const both = (area: Box) => common(area, reflectedBox(area, reflect));
  return {
    ...problem,
    parts: [parts[0]!],
    usable: halved(both(usable), problem, beside),
    // Where bleeds meet they are cut at the middle of the sheet.
    printable: halved(both(printable), problem, beside - rules.bleed),
    keepOuts: keepOuts.flatMap((keepOut) => [keepOut, { ...keepOut, ring: reflectedRing(keepOut.ring, reflect) }]),
    symmetry: 'none',
  };
}

/** The half's placements and their mirror images. */
export function bothHalves(problem: Halved, placements: readonly Placement[]): Placement[] {
  const reflect = reflectionOf(problem);
  const box = boxOf(problem.parts[1]!.outline);
  const span = { x: box.minX + box.maxX, y: 0 };
  return placements.flatMap((placement) => {
    const turn = mirroredTurn(placement.turn, problem.symmetry);
    const at = reflect(placement);
    const corner = turnPoint(span, turn);
    return [placement, { part: 1, turn, x: at.x - corner.x, y: at.y - corner.y }];
  });
}

/** The half's solution as that of the whole sheet: twice the ups, twice the limit. */
export function wholeSolution(problem: Halved, solution: Solution): Solution {
  return {
    ...solution,
    best: solution.best && wholeLayout(problem, solution.best),
    alternatives: solution.alternatives.map((layout) => wholeLayout(problem, layout)),
    limit: solution.limit && twice(solution.limit),
    history: solution.history.map((event) => wholeImprovement(problem, event)),
  };
}

export function wholeImprovement(problem: Halved, event: Improvement): Improvement {
  return event.kind === 'limit' ? { ...event, limit: twice(event.limit) } : { ...event, ups: 2 * event.ups, layout: wholeLayout(problem, event.layout) };
}

function wholeLayout(problem: Halved, layout: RankedLayout): RankedLayout {
  const placements = bothHalves(problem, layout.placements);
  return { ...layout, placements, figures: figuresOf(problem, placements) };
}

/** Without the half's certificate, which does not speak of the whole sheet. */
function twice({ ups, value, by }: Limit): Limit {
  return { ups: 2 * ups, value: 2 * value, by };
}

/** Rotations of the mirror image where the blank may take `turns`. */
export function mirroredTurns(turns: readonly Turn[], symmetry: 'turned' | 'tumbled'): Turn[] {
  return turns.map((turn) => mirroredTurn(turn, symmetry));
}

function mirroredTurn(turn: Turn, symmetry: 'turned' | 'tumbled'): Turn {
  return addTurns(symmetry === 'tumbled' ? 2 : 0, -turn);
}

type Reflection = (p: Point) => Point;

function reflectionOf({ sheet, symmetry }: Halved): Reflection {
  return symmetry === 'turned' ? ({ x, y }) => ({ x: sheet.width - x, y }) : ({ x, y }) => ({ x, y: sheet.height - y });
}

function reflectedRing(ring: Ring, reflect: Reflection): Ring {
  return ring.map(reflect).toReversed();
}

function reflectedBox({ minX, minY, maxX, maxY }: Box, reflect: Reflection): Box {
  return boxOf([reflect({ x: minX, y: minY }), reflect({ x: maxX, y: maxY })]);
}

function common(a: Box, b: Box): Box {
  return { minX: Math.max(a.minX, b.minX), minY: Math.max(a.minY, b.minY), maxX: Math.min(a.maxX, b.maxX), maxY: Math.min(a.maxY, b.maxY) };
}

/** The half of a box about the middle of the sheet that lies at the lay, or at the gripper edge, `beside` from the middle. */
function halved(box: Box, { sheet, symmetry, lay }: Halved, beside: number): Box {
  if (symmetry === 'tumbled') return { ...box, maxY: Math.min(box.maxY, Math.floor(sheet.height / 2) - beside) };
  return lay === 'left' ? { ...box, maxX: Math.min(box.maxX, Math.floor(sheet.width / 2) - beside) } : { ...box, minX: Math.max(box.minX, Math.ceil(sheet.width / 2) + beside) };
}
