import { exactOrder } from './exact-order.ts';
import { nearOrder } from './near-order.ts';
import { compareWorth, SAME_MINUTES, worthOf, type OrderProblem, type OrderWorth } from './order.ts';
import { changeoverBound } from './order-bound.ts';

export interface OrderPlan extends OrderWorth {
  readonly order: readonly number[];
  /** No order has less changeover, minutes. */
  readonly lowerBound: number;
  /** No order is better; known, not hoped. */
  readonly optimal: boolean;
  /** The forms in the order in which they were given. */
  readonly given: OrderWorth;
}

/** More forms than this have too many subsets. */
const MOST_EXACT = 16;

/**
 * The order of forms that comes least late and, among those, costs least changeover. Proved for up to sixteen forms (and
 * for more where the bound is met); otherwise the best found and the bound. The same problem gives the same order.
 */
export function planOrder(problem: OrderProblem): OrderPlan {
  const given = worthOf(problem, problem.first.map((_, form) => form));
  const near = nearOrder(problem);
  const exact = problem.first.length <= MOST_EXACT ? exactOrder(problem, near.worth) : undefined;
  const found = exact && { order: exact, worth: worthOf(problem, exact) };
  const best = found && compareWorth(found.worth, near.worth) < 0 ? found : near;
  const { late, changeover } = best.worth;
  const bound = exact && late <= SAME_MINUTES ? changeover : Math.min(changeover, changeoverBound(problem.first, problem.between, changeover));
  const meetsBound = late <= SAME_MINUTES && changeover <= bound + SAME_MINUTES;
  return { ...best.worth, order: best.order, lowerBound: bound, optimal: exact !== undefined || meetsBound, given };
}
