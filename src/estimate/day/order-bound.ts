/**
 * No order has less changeover than this, minutes. Every order is a tree of changes from the press as it stands to all
 * forms in which no form has more than one that follows it. The least tree (Chu and Liu 1965; Edmonds, J. Res. NBS 71B,
 * 1967) without that condition is a bound; putting a price on every second follower raises it (Held and Karp, Math.
 * Programming 1, 1971).
 */
export function changeoverBound(first: readonly number[], between: readonly (readonly number[])[], reached: number): number {
  const n = first.length;
  // Node 0 is the press as it stands, node i + 1 is form i. cost[to][from].
  const cost = [new Array<number>(n + 1).fill(Infinity), ...first.map((start, to) => [start, ...between.map((row, from) => (from === to ? Infinity : row[to]!))])];
  const prices = new Array<number>(n + 1).fill(0);
  let best = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const priced = cost.map((row) => row.map((minutes, from) => minutes + prices[from]!));
    const parents = leastTree(priced);
    // In an order nobody is followed twice, so it pays each price once at most: taking them all off keeps the bound.
    const followers = prices.map((_, node) => parents.filter((parent) => parent === node).length);
    const tree = parents.reduce((sum, parent, to) => sum + (to === 0 ? 0 : priced[to]![parent]!), 0);
    const value = tree - prices.reduce((sum, price) => sum + price, 0);
    best = Math.max(best, value);
    const off = followers.map((count) => count - 1);
    const length = off.reduce((sum, by, node) => sum + (prices[node]! > 0 || by > 0 ? by * by : 0), 0);
    if (length === 0 || best >= reached) break;
    const step = ((2 * 0.97 ** round) * Math.max(reached - value, reached * 0.01)) / length;
    off.forEach((by, node) => (prices[node] = Math.max(0, prices[node]! + step * by)));
  }
  return roundedUp(best, [...first, ...between.flatMap((row, from) => row.filter((_, to) => to !== from))]);
}

const ROUNDS = 150;
/** Minutes are compared in thousandths. */
const PARTS = 1000;

/** Sums of the minutes given are multiples of their common measure, so the bound is too. */
function roundedUp(bound: number, minutes: readonly number[]): number {
  const measure = minutes.reduce((a, b) => common(a, Math.round(b * PARTS)), 0);
  const isWhole = minutes.every((value) => Math.abs(value * PARTS - Math.round(value * PARTS)) < 1e-6);
  return isWhole && measure > 0 ? (Math.ceil((bound * PARTS) / measure - 1e-6) * measure) / PARTS : bound * (1 - 1e-12);
}

function common(a: number, b: number): number {
  return b === 0 ? a : common(b, a % b);
}

/** Parent of every node in the least tree from node 0; `cost[to][from]`. Parent of node 0 is −1. */
export function leastTree(cost: readonly (readonly number[])[]): number[] {
  const parents = cost.map((row, to) => (to === 0 ? -1 : row.reduce((least, minutes, from) => (minutes < row[least]! ? from : least), 0)));
  const ring = findRing(parents);
  if (!ring) return parents;
  // The ring becomes one node; an edge into it costs what it costs more than the ring's own edge it would replace.
  const outside = cost.map((_, node) => node).filter((node) => !ring.includes(node));
  const own = (node: number) => cost[node]![parents[node]!]!;
  const enter = outside.map((from) => least(ring, (to) => cost[to]![from]! - own(to)));
  const leave = outside.map((to) => least(ring, (from) => cost[to]![from]!));
  const smaller = [...outside.map((to, i) => [...outside.map((from) => cost[to]![from]!), leave[i]!.value]), [...enter.map(({ value }) => value), Infinity]];
  const tree = leastTree(smaller);
  const merged = outside.length;
  outside.forEach((node, i) => {
    if (node !== 0) parents[node] = tree[i] === merged ? leave[i]!.node : outside[tree[i]!]!;
  });
  const into = tree[merged]!;
  parents[enter[into]!.node] = outside[into]!;
  return parents;
}

function least(nodes: readonly number[], of: (node: number) => number): { node: number; value: number } {
  return nodes.map((node) => ({ node, value: of(node) })).reduce((a, b) => (b.value < a.value ? b : a));
}

function findRing(parents: readonly number[]): number[] | undefined {
  const seen = new Array<number>(parents.length).fill(-1);
  for (let start = 1; start < parents.length; start++) {
    let node = start;
    while (node > 0 && seen[node]! < 0) {
      seen[node] = start;
      node = parents[node]!;
    }
    if (node <= 0 || seen[node] !== start) continue;
    const ring = [node];
    for (let next = parents[node]!; next !== node; next = parents[next]!) ring.push(next);
    return ring;
  }
  return undefined;
}
