import type { Issue } from '../base/issue.ts';
import { toMicrons } from '../base/units.ts';
import { blanksInGridCell, strippingOf, type Stripping } from '../estimate/stripping.ts';
import { brokenConditions, compareStripping, type BrokenCondition } from '../estimate/stripping-conditions.ts';
import { judgeStripping } from '../layout/judge-stripping.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import type { Candidate, Problem } from '../layout/problem.ts';
import type { Methods } from '../nesting/driver.ts';
import type { RankedLayout } from '../nesting/incumbents.ts';
import { compareFigures, placedBox } from '../nesting/rank.ts';
import { boxGridSearch } from '../nesting/searches/box-grid.ts';
import { asksFor, LEAST_FRAME_MM, LEAST_GRID_MM, type StrippingWish } from '../press/stripping.ts';

/** How a layout strips under a wish. */
export interface StrippingVerdict {
  readonly stripping: Stripping;
  /** Empty where the rule holds, by the figures and by the judge. */
  readonly broken: readonly BrokenCondition[];
}

export function strippingVerdict(layout: LayoutFile, wish: Omit<StrippingWish, 'rule'>): StrippingVerdict {
  const stripping = strippingOf(layout, wish.leastStrip);
  const broken = brokenConditions(stripping, wish.mode);
  const judged = new Map(judgeStripping(layout, wish).map(({ condition }, _, all) => [condition, all.filter((fault) => fault.condition === condition).length]));
  const judgeAlone = [...judged].filter(([condition]) => broken.every((one) => one.condition !== condition)).map(([condition, count]) => ({ condition, count }));
  return { stripping, broken: [...broken, ...judgeAlone] };
}

/** Whether a layout may be offered: any may but where the wish is a rule. */
export function keepsRule(layout: LayoutFile, wish: StrippingWish | undefined): boolean {
  return wish?.rule !== 'must' || strippingVerdict(layout, wish).broken.length === 0;
}

/** How layouts are chosen where the waste has a say in it, and whether the one that `broken` is of falls short of it. */
export function strippingNotes(wish: StrippingWish | undefined, broken: readonly BrokenCondition[] = []): Issue[] {
  if (!wish) return [];
  const facts = { mode: wish.mode.replace('-', ' '), strip: wish.leastStrip };
  return [{ code: `stripping-rule-${wish.rule}`, severity: 'note', facts }, ...(broken.length > 0 ? [{ code: 'stripping-falls-short', severity: 'note', facts } as const] : [])];
}

/**
 * The problem with the rule built into it, as far as distances can say it: the gap at least the strip, the knives off the
 * frame. Whatever keeps it keeps the problem's own rules too, and its limit is one for layouts that keep the rule.
 */
export function ruledProblem(problem: Problem, { mode, leastStrip }: StrippingWish): Problem {
  const frame = asksFor(mode, 'frame') ? toMicrons(LEAST_FRAME_MM) : 0;
  const { usable, sheet, rules } = problem;
  return {
    ...problem,
    usable: { minX: Math.max(usable.minX, frame), minY: usable.minY, maxX: Math.min(usable.maxX, sheet.width - frame), maxY: Math.min(usable.maxY, sheet.height - frame) },
    rules: { ...rules, gap: Math.max(rules.gap, toMicrons(leastStrip)) },
  };
}

/** Methods that take nothing but what keeps the rule. Straight ways never come of the free search, so it is left out for them. */
export function ruledMethods(methods: Methods, { mode, leastStrip }: StrippingWish, layoutOfCandidate: (candidate: Candidate) => LayoutFile): Methods {
  const inCells = (problem: Problem, { placements }: Candidate) => blanksInGridCell(placements.map((placement) => placedBox(problem, placement)), LEAST_GRID_MM) <= 1;
  const keepsIslands = (candidate: Candidate) => brokenConditions(strippingOf(layoutOfCandidate(candidate), leastStrip), mode).length === 0;
  const ways = asksFor(mode, 'ways');
  return {
    ...methods,
    patterns: ways ? [boxGridSearch(toMicrons(LEAST_GRID_MM)), ...methods.patterns] : methods.patterns,
    budgetOf: (effort) => ({ ...methods.budgetOf(effort), ...(ways && { free: 0 }) }),
    // Blanks that keep a distance enclose nothing; only those that share knives can.
    isValid: (problem, candidate) => (!ways || inCells(problem, candidate)) && methods.isValid(problem, candidate) && (!problem.rules.commonKnife || keepsIslands(candidate)),
  };
}

/** More would only take time: each costs some tenths of a second. */
const COMPARED = 12;

/** Of the layouts with as many ups as the first, those that strip best come first; then the others as they were. */
export function byStripping(layouts: readonly RankedLayout[], wish: StrippingWish, layoutOfCandidate: (candidate: Candidate) => LayoutFile): RankedLayout[] {
  const equal = layouts.filter(({ figures }) => figures.ups === layouts[0]?.figures.ups).slice(0, COMPARED);
  const seen = equal.map((layout) => ({ layout, stripping: strippingOf(layoutOfCandidate(layout), wish.leastStrip) }));
  const ordered = seen.toSorted((a, b) => compareStripping(a.stripping, b.stripping, wish.mode) || compareFigures(a.layout.figures, b.layout.figures));
  return [...ordered.map(({ layout }) => layout), ...layouts.slice(equal.length)];
}
