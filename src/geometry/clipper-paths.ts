import { ClipType, FillRule, PolyTree64, booleanOpWithPolyTree, type Path64, type PolyPath64 } from 'clipper2-ts';
import type { Point, Polygon, Ring } from './point.ts';
import { withoutStraights } from './without-straights.ts';

/** Our rings to the polygon library's paths and its results back. */

export function toPaths(polygons: readonly Polygon[]): Path64[] {
  return polygons.flatMap(({ outer, holes }) => [outer, ...holes]).map(toPath);
}

export function toPath(ring: Ring): Path64 {
  return ring.map(({ x, y }) => ({ x, y }));
}

export type Operation = 'union' | 'intersection' | 'difference';

const CLIP_TYPE = { union: ClipType.Union, intersection: ClipType.Intersection, difference: ClipType.Difference } as const;

/** `winding`: which points count as inside, by how often the paths go round them counter-clockwise. */
export function combine(operation: Operation, subject: Path64[], clip: Path64[], winding: 'not zero' | 'positive'): Polygon[] {
  const tree = new PolyTree64();
  const fillRule = winding === 'positive' ? FillRule.Positive : FillRule.NonZero;
  booleanOpWithPolyTree(CLIP_TYPE[operation], subject, clip, tree, fillRule);
  return childrenOf(tree).flatMap(toPolygons);
}

function childrenOf(node: PolyPath64): PolyPath64[] {
  return Array.from({ length: node.count }, (_, i) => node.child(i));
}

/** An outer path with its holes, then what lies within the holes. */
function toPolygons(node: PolyPath64): Polygon[] {
  const holes = childrenOf(node);
  const polygon = { outer: toRing(node), holes: holes.map(toRing) };
  return [polygon, ...holes.flatMap(childrenOf).flatMap(toPolygons)];
}

function toRing(node: PolyPath64): Ring {
  return withoutStraights((node.poly ?? []).map(({ x, y }): Point => ({ x: x + 0, y: y + 0 })));
}
