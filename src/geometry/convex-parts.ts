import type { Ring } from './point.ts';

/**
 * Cuts a simple ring into convex parts: counter-clockwise, strictly convex, vertices from the ring, together exactly the
 * ring's area, no two sharing more than an edge. Flat vertices of the ring (on a straight line between their neighbours)
 * may lie on a part's edge without being its vertex. Time about O(n · reflex vertices).
 *
 * Ear clipping (Meisters, "Polygons have ears", Amer. Math. Monthly 82, 1975), then flips towards fat triangles, so that
 * the parts along a hollow curve are small and near it, then every diagonal that is not needed is taken out, longest first
 * (Hertel and Mehlhorn, FCT 1983: at most four times the fewest parts possible).
 *
 * The ring must be simple and counter-clockwise, coordinates within 2²⁵ µm so that determinants are exact.
 * Throws RangeError for a clockwise ring and for one that it finds to cross itself; not every crossing is found.
 */
export function convexParts(ring: Ring): Ring[] {
  const mesh = earMesh(ring);
  flipToDelaunay(mesh);
  removeSpareDiagonals(mesh);
  return faces(mesh).map((corners) => corners.map((corner) => ring[corner]));
}

/** Half-edges, the ring's n first, then the diagonals in pairs: the twin of diagonal `n + k` is `n + (k ^ 1)`. */
interface Mesh {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Vertex where the half-edge starts. */
  readonly origin: Int32Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly ringEdges: number;
  halfEdges: number;
}

/** Twice the signed area of vertices a, b, c; exact. */
function turning({ x, y }: Mesh, a: number, b: number, c: number): number {
  return (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
}

function link(mesh: Mesh, from: number, to: number): void {
  mesh.next[from] = to;
  mesh.previous[to] = from;
}

function earMesh(ring: Ring): Mesh {
  const n = ring.length;
  const room = n + 2 * Math.max(0, n - 3);
  const mesh: Mesh = {
    x: Float64Array.from(ring, (p) => p.x),
    y: Float64Array.from(ring, (p) => p.y),
    origin: new Int32Array(room),
    next: new Int32Array(room),
    previous: new Int32Array(room),
    ringEdges: n,
    halfEdges: n,
  };
  for (let i = 0; i < n; i++) {
    mesh.origin[i] = i;
    link(mesh, i, (i + 1) % n);
  }
  // `out` leaves the vertex that may be an ear. A full round without one means that there is none.
  let out = 0;
  let misses = 0;
  for (let left = n; left > 3; ) {
    if (isEar(mesh, out)) {
      out = mesh.next[cutEar(mesh, out)];
      left--;
      misses = 0;
    } else {
      out = mesh.next[out];
      if (++misses > left) throw new RangeError('The ring is clockwise or not simple.');
    }
  }
  if (turning(mesh, mesh.origin[mesh.previous[out]], mesh.origin[out], mesh.origin[mesh.next[out]]) <= 0) throw new RangeError('The ring is clockwise or not simple.');
  return mesh;
}

/** A strictly convex corner whose closed triangle holds no other vertex of what is left. */
function isEar(mesh: Mesh, out: number): boolean {
  const { x, y, origin, next, previous } = mesh;
  const a = origin[previous[out]];
  const b = origin[out];
  const end = next[out];
  const c = origin[end];
  if (turning(mesh, a, b, c) <= 0) return false;
  const minX = Math.min(x[a], x[b], x[c]);
  const maxX = Math.max(x[a], x[b], x[c]);
  const minY = Math.min(y[a], y[b], y[c]);
  const maxY = Math.max(y[a], y[b], y[c]);
  const last = previous[out];
  for (let edge = next[end]; edge !== last; edge = next[edge]) {
    const v = origin[edge];
    if (x[v] < minX || x[v] > maxX || y[v] < minY || y[v] > maxY) continue;
    if (turning(mesh, a, b, v) >= 0 && turning(mesh, b, c, v) >= 0 && turning(mesh, c, a, v) >= 0) return false;
  }
  return true;
}

/** Cuts the ear off along its diagonal; returns the half-edge of the diagonal that stays with the rest. */
function cutEar(mesh: Mesh, out: number): number {
  const into = mesh.previous[out];
  const before = mesh.previous[into];
  const after = mesh.next[out];
  const stays = mesh.halfEdges++;
  const leaves = mesh.halfEdges++;
  mesh.origin[stays] = mesh.origin[into];
  mesh.origin[leaves] = mesh.origin[after];
  link(mesh, before, stays);
  link(mesh, stays, after);
  link(mesh, out, leaves);
  link(mesh, leaves, into);
  return stays;
}

/** Flips per diagonal after which flipping ends, whatever rounding may do to it. */
const FLIPS = 20;

/**
 * Lawson's flips towards the constrained Delaunay triangulation: fat triangles keep parts short and local. Which diagonals
 * come out is a matter of taste, so the test for circles is in doubles; that a flip is possible is decided exactly.
 */
function flipToDelaunay(mesh: Mesh): void {
  const { ringEdges, halfEdges } = mesh;
  const open: number[] = [];
  for (let edge = ringEdges; edge < halfEdges; edge += 2) open.push(edge);
  for (let flips = FLIPS * open.length; open.length > 0 && flips > 0; ) {
    const edge = open.pop()!;
    if (!shouldFlip(mesh, edge)) continue;
    flips--;
    for (const side of flip(mesh, edge)) if (side >= ringEdges) open.push(side - ((side - ringEdges) % 2));
  }
}

/** Whether the fourth corner lies in the circle through one triangle's corners, and the two triangles make a convex quadrilateral. */
function shouldFlip(mesh: Mesh, edge: number): boolean {
  const { x, y, origin, previous } = mesh;
  const a = origin[edge];
  const b = origin[edge + 1];
  const c = origin[previous[edge]];
  const d = origin[previous[edge + 1]];
  if (turning(mesh, c, d, b) <= 0 || turning(mesh, d, c, a) <= 0) return false;
  const adx = x[a] - x[d];
  const ady = y[a] - y[d];
  const bdx = x[b] - x[d];
  const bdy = y[b] - y[d];
  const cdx = x[c] - x[d];
  const cdy = y[c] - y[d];
  const lift =
    (adx * adx + ady * ady) * (bdx * cdy - bdy * cdx) + (bdx * bdx + bdy * bdy) * (cdx * ady - cdy * adx) + (cdx * cdx + cdy * cdy) * (adx * bdy - ady * bdx);
  return lift > 0;
}

/** Replaces the diagonal by the other one of its quadrilateral; returns the quadrilateral's four sides. */
function flip(mesh: Mesh, edge: number): number[] {
  const { origin, next, previous } = mesh;
  const twin = edge + 1;
  const [bc, ca, ad, db] = [next[edge], previous[edge], next[twin], previous[twin]];
  origin[edge] = origin[ca];
  origin[twin] = origin[db];
  // Edge now runs from c to d, its triangle c, d, b; the twin's is d, c, a.
  link(mesh, edge, db);
  link(mesh, db, bc);
  link(mesh, bc, edge);
  link(mesh, twin, ca);
  link(mesh, ca, ad);
  link(mesh, ad, twin);
  return [bc, ca, ad, db];
}

function removeSpareDiagonals(mesh: Mesh): void {
  const { x, y, origin, next, previous, ringEdges } = mesh;
  const diagonals = Array.from({ length: (mesh.halfEdges - ringEdges) / 2 }, (_, k) => {
    const edge = ringEdges + 2 * k;
    const a = origin[edge];
    const b = origin[edge + 1];
    return { edge, length: (x[a] - x[b]) ** 2 + (y[a] - y[b]) ** 2 };
  });
  diagonals.sort((p, q) => q.length - p.length || p.edge - q.edge);
  const convexWithout = (edge: number, twin: number) =>
    turning(mesh, origin[previous[edge]], origin[edge], origin[next[next[twin]]]) >= 0;
  for (const { edge } of diagonals) {
    const twin = edge + 1;
    if (!convexWithout(edge, twin) || !convexWithout(twin, edge)) continue;
    link(mesh, previous[edge], next[twin]);
    link(mesh, previous[twin], next[edge]);
    next[edge] = -1;
    next[twin] = -1;
  }
}

/** The corners of every face, flat ones left out. */
function faces(mesh: Mesh): number[][] {
  const { origin, next, previous, halfEdges } = mesh;
  const seen = new Uint8Array(halfEdges);
  const found: number[][] = [];
  for (let first = 0; first < halfEdges; first++) {
    if (seen[first] || next[first] === -1) continue;
    const corners: number[] = [];
    for (let edge = first; !seen[edge]; edge = next[edge]) {
      seen[edge] = 1;
      const corner = origin[edge];
      if (turning(mesh, origin[previous[edge]], corner, origin[next[edge]]) > 0) corners.push(corner);
    }
    found.push(corners);
  }
  return found;
}
