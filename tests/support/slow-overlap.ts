import type { Point, Ring } from '../../src/geometry/point.ts';
import polygonClipping from 'polygon-clipping';

/** Slow and obvious: the area two rings share, by an independent library in doubles. */
export function sharedArea(a: Ring, b: Ring): number {
  const pairs = (ring: Ring): [number, number][] => ring.map((p) => [p.x, p.y]);
  return polygonClipping.intersection([pairs(a)], [pairs(b)]).reduce((sum, polygon) => sum + polygon.reduce((area, ring) => area + ringSum(ring), 0), 0);
}

function ringSum(ring: readonly (readonly [number, number])[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < ring.length; i++) sum += ring[i][0] * ring[i + 1][1] - ring[i][1] * ring[i + 1][0];
  return sum / 2;
}

/** Whether two outlines come nearer than `gap`, every corner against every edge. Exact for coordinates of a few thousand. */
export function outlinesNearer(a: Ring, b: Ring, gap: number): boolean {
  return cornersNearer(a, b, gap) || cornersNearer(b, a, gap);
}

function cornersNearer(corners: Ring, edges: Ring, gap: number): boolean {
  return corners.some((p) => edges.some((from, i) => pointNearer(p, from, edges[(i + 1) % edges.length], gap)));
}

function pointNearer(p: Point, from: Point, to: Point, gap: number): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const along = (p.x - from.x) * dx + (p.y - from.y) * dy;
  const length = dx * dx + dy * dy;
  if (along <= 0) return (p.x - from.x) ** 2 + (p.y - from.y) ** 2 < gap ** 2;
  if (along >= length) return (p.x - to.x) ** 2 + (p.y - to.y) ** 2 < gap ** 2;
  return (dx * (p.y - from.y) - dy * (p.x - from.x)) ** 2 < gap ** 2 * length;
}

/** Least distance between two outlines, every corner against every edge, in doubles. */
export function slowDistance(a: Ring, b: Ring): number {
  const oneWay = (corners: Ring, edges: Ring) => Math.min(...corners.flatMap((p) => edges.map((from, i) => pointDistance(p, from, edges[(i + 1) % edges.length]))));
  return Math.min(oneWay(a, b), oneWay(b, a));
}

function pointDistance(p: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const t = Math.min(1, Math.max(0, ((p.x - from.x) * dx + (p.y - from.y) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p.x - from.x - t * dx, p.y - from.y - t * dy);
}
