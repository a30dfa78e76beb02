import type { Segments } from './contact-edges.ts';
import { contactEdges } from './contact-edges.ts';
import type { Piece } from './free-pieces.ts';
import { freePieces } from './free-pieces.ts';
import type { ConvexPolygons } from './minkowski.ts';
import { differenceSums, insideAny } from './minkowski.ts';
import { nearerThan } from './nearer-than.ts';
import type { Ring } from './point.ts';

/**
 * The shifts d at which `b` moved by d comes nearer than `gap` to `a`; at gap 0, at which their interiors meet. An open
 * set: touching, and standing exactly `gap` apart, is allowed, so at gap 0 it may have slits and single points of no width
 * (a bar in an inlet just as wide, a jigsaw piece in its place). Inlets and enclosed pockets are kept.
 *
 * Guaranteed: all numbers are whole micrometres as given, nothing is rounded; whatever is asked of it is decided exactly.
 */
export interface NoFit {
  readonly gap: number;
  /** Interiors meet exactly at the shifts strictly inside one of these. */
  readonly sums: ConvexPolygons;
  /** Contact edges that are free somewhere, overlap on their left side. */
  readonly edges: Segments;
  /** Where they are free: together the boundary at gap 0, with slits and single points. */
  readonly pieces: readonly Piece[];
}

/**
 * The no-fit polygon of two simple counter-clockwise rings in whole micrometres, coordinates within 2²⁴.
 * Time grows with the convex parts of both times the contact edges; see bench/no-fit.ts.
 */
export function noFitPolygon(a: Ring, b: Ring, gap = 0): NoFit {
  const sums = differenceSums(a, b);
  const edges = contactEdges(a, b);
  const pieces = freePieces(edges, sums);
  return { gap, sums, ...onlyUsed(edges, pieces) };
}

/** The same pair under another gap. */
export function withGap(noFit: NoFit, gap: number): NoFit {
  return { ...noFit, gap };
}

/** Whether the shift is forbidden. Exact. */
export function forbids({ gap, sums, edges }: NoFit, dx: number, dy: number): boolean {
  if (insideAny(sums, dx, dy)) return true;
  if (gap === 0) return false;
  const { count, x0, y0, x1, y1 } = edges;
  for (let k = 0; k < count; k++) {
    if (Math.max(x0[k], x1[k]) + gap <= dx || Math.min(x0[k], x1[k]) - gap >= dx) continue;
    if (Math.max(y0[k], y1[k]) + gap <= dy || Math.min(y0[k], y1[k]) - gap >= dy) continue;
    if (nearerThan(dx, dy, x0[k], y0[k], x1[k], y1[k], gap)) return true;
  }
  return false;
}

/** How far apart the outlines are at the shift, µm, in doubles; 0 when they meet. */
export function outlineDistance({ sums, edges }: NoFit, dx: number, dy: number): number {
  if (insideAny(sums, dx, dy)) return 0;
  const { count, x0, y0, x1, y1 } = edges;
  let least = Infinity;
  for (let k = 0; k < count; k++) {
    const ux = x1[k] - x0[k];
    const uy = y1[k] - y0[k];
    const along = ((dx - x0[k]) * ux + (dy - y0[k]) * uy) / (ux * ux + uy * uy);
    const t = along < 0 ? 0 : along > 1 ? 1 : along;
    const awayX = dx - x0[k] - t * ux;
    const awayY = dy - y0[k] - t * uy;
    least = Math.min(least, awayX * awayX + awayY * awayY);
  }
  return Math.sqrt(least);
}

function onlyUsed(edges: Segments, pieces: readonly Piece[]): Pick<NoFit, 'edges' | 'pieces'> {
  const used = [...new Set(pieces.map((piece) => piece.segment))];
  const numberOf = new Map(used.map((segment, k) => [segment, k]));
  const pick = (values: Float64Array) => Float64Array.from(used, (segment) => values[segment]);
  return {
    edges: { count: used.length, x0: pick(edges.x0), y0: pick(edges.y0), x1: pick(edges.x1), y1: pick(edges.y1) },
    pieces: pieces.map((piece) => ({ ...piece, segment: numberOf.get(piece.segment)! })),
  };
}
