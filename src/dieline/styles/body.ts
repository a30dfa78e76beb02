import { firstPanel, panel, type Edge, type Edges, type Flap, type Inner } from './flap.ts';
import { hung } from './ends.ts';

/** A panel of a body: its ends are edges seen from the body, flaps hanging down from it. */
export interface BodyPanel {
  readonly id: string;
  readonly width: number;
  readonly top?: Edge;
  readonly bottom?: Edge;
  readonly inner?: Inner;
}

/**
 * Panels side by side, creased to one another: what a carton is cut from. The first one's left edge carries `left`,
 * mostly the glue flap. An end at the bottom is walked from left to right, one at the top from right to left.
 */
export function body(height: number, panels: readonly BodyPanel[], left?: Edge): Flap {
  const [first, ...others] = panels;
  const right = others.reduceRight<Edge | undefined>((next, { id, width, top, bottom, inner }) => hung(() => panel(id, height, width, given({ start: bottom, far: next, end: top }), inner)), undefined);
  return firstPanel(first.id, first.width, height, given({ start: left, far: first.bottom, end: right, top: first.top }), first.inner);
}

function given(edges: Readonly<Record<string, Edge | undefined>>): Edges & { readonly top?: Edge } {
  return Object.fromEntries(Object.entries(edges).filter(([, edge]) => edge !== undefined));
}
