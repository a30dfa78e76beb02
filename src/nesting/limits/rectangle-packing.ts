/**
 * Upper limits for rectangles a × b in a rectangle width × height, sides parallel. Whole positive numbers throughout; areas below 2⁵³.
 */

/**
 * Theorem. In one orientation: at most the whole columns times the whole rows. (Draw the lines at whole multiples of a, counted from just right of
 * the left side, and likewise those of b: every copy holds exactly one of the crossings in its half-open rectangle.)
 */
export function alignedCount(width: number, height: number, a: number, b: number): number {
  return Math.floor(width / a) * Math.floor(height / b);
}

/**
 * In both orientations: the most that the following two theorems leave possible.
 *
 * Dual feasible functions (Lueker, Bin packing with items uniformly distributed, 1983; for two directions Fekete and Schepers, A general framework
 * for bounds for higher-dimensional orthogonal packing, Math. Methods Oper. Res. 60, 2004). Let u i + v j ≤ d for all whole i, j ≥ 0 with
 * a i + b j ≤ width, and s i + t j ≤ e for the height. Then n1 lying and n2 standing copies obey n1 u t + n2 v s ≤ d e. With two lengths
 * alone, all that such functions can say is said by the sides of the hull of the pairs (i, j) that fit.
 *
 * Empty area: see `leastEmpty`.
 */
export function turnedCount(width: number, height: number, a: number, b: number): number {
  const laws = hullSides(width, a, b).flatMap((x) => hullSides(height, a, b).map((y) => ({ lying: x.a * y.b, standing: x.b * y.a, room: x.room * y.room })));
  const shortWidth = longestSum(width, a, b);
  const shortHeight = longestSum(height, a, b);
  const byArea = Math.floor((shortWidth * shortHeight - leastEmpty(shortWidth, shortHeight, a, b)) / (a * b));
  let most = 0;
  for (let lying = 0; lying <= byArea; lying++) {
    const standing = laws.reduce((least, law) => Math.min(least, restOf(law, lying)), byArea - lying);
    if (standing >= 0) most = Math.max(most, lying + standing);
  }
  return most;
}

interface Law {
  readonly lying: number;
  readonly standing: number;
  readonly room: number;
}

/** How many may stand beside so many lying; negative where even the lying are too many. */
function restOf({ lying, standing, room }: Law, count: number): number {
  const rest = room - lying * count;
  return rest < 0 ? -1 : standing === 0 ? Infinity : Math.floor(rest / standing);
}

/** Sides of the hull of the whole pairs (i, j) with a i + b j ≤ length: a-weight × i + b-weight × j ≤ room. */
function hullSides(length: number, a: number, b: number): { a: number; b: number; room: number }[] {
  const corners: { i: number; j: number }[] = [];
  for (let i = 0; i * a <= length; i++) {
    const next = { i, j: Math.floor((length - i * a) / b) };
    while (corners.length >= 2 && !turnsDown(corners.at(-2)!, corners.at(-1)!, next)) corners.pop();
    corners.push(next);
  }
  const sides = corners.slice(1).map((to, k) => {
    const from = corners[k]!;
    const weights = { a: from.j - to.j, b: to.i - from.i };
    return { ...weights, room: weights.a * to.i + weights.b * to.j };
  });
  return [...sides, { a: 0, b: 1, room: corners[0]!.j }, { a: 1, b: 0, room: corners.at(-1)!.i }];
}

function turnsDown(p: { i: number; j: number }, q: { i: number; j: number }, r: { i: number; j: number }): boolean {
  return (q.i - p.i) * (r.j - p.j) - (q.j - p.j) * (r.i - p.i) < 0;
}

/** The longest a i + b j within the length. Every packing can be pushed into the corner, where only such lengths are used. */
function longestSum(length: number, a: number, b: number): number {
  let longest = 0;
  for (let i = 0; i * a <= length; i++) longest = Math.max(longest, length - ((length - i * a) % b));
  return longest;
}

/**
 * Area that stays empty, at least. Barnes, Packing the maximum number of m × n tiles in a large p × q rectangle, Discrete Math. 26, 1979: bars
 * 1 × a leave min(r s, (a − r)(a − s)), r and s what is over when a is taken from the sides; a rectangle is made of bars 1 × a and of bars 1 × b.
 */
function leastEmpty(width: number, height: number, a: number, b: number): number {
  return Math.max(
    ...[a, b].map((bar) => {
      const r = width % bar;
      const s = height % bar;
      return Math.min(r * s, (bar - r) * (bar - s));
    }),
  );
}
