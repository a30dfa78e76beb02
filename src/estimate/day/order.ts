/** Forms to be put in order on one press. Minutes. */
export interface OrderProblem {
  /** From the press as it stands to each form. */
  readonly first: readonly number[];
  /** `between[i][j]`: from form i to form j. */
  readonly between: readonly (readonly number[])[];
  /** Makeready and run of each form. */
  readonly busy: readonly number[];
  /** When each form must be printed, minutes after the start; undefined: any time. */
  readonly due: readonly (number | undefined)[];
}

/** What an order is judged by: first the minutes that forms come too late, summed; then the minutes of changeover. */
export interface OrderWorth {
  readonly late: number;
  readonly changeover: number;
}

export function changeTo({ first, between }: OrderProblem, from: number | undefined, to: number): number {
  return from === undefined ? first[to]! : between[from]![to]!;
}

export function lateness({ due }: OrderProblem, form: number, end: number): number {
  return Math.max(0, end - (due[form] ?? Infinity));
}

export function worthOf(problem: OrderProblem, order: readonly number[]): OrderWorth {
  let [now, late, changeover] = [0, 0, 0];
  order.forEach((form, i) => {
    const change = changeTo(problem, order[i - 1], form);
    changeover += change;
    now += change + problem.busy[form]!;
    late += lateness(problem, form, now);
  });
  return { late, changeover };
}

/** Sums of minutes in another order differ in their last bits; less than this is no difference. */
export const SAME_MINUTES = 1e-6;

/** Negative when a is the better. */
export function compareWorth(a: OrderWorth, b: OrderWorth): number {
  const late = a.late - b.late;
  if (Math.abs(late) > SAME_MINUTES) return late;
  const changeover = a.changeover - b.changeover;
  return Math.abs(changeover) > SAME_MINUTES ? changeover : 0;
}
