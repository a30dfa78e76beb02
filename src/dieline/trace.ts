import type { Curve } from '../geometry/curve.ts';
import type { Arrangement, Cover } from './arrangement.ts';
import { curvePart, withEnds } from './curve-part.ts';
import type { Step } from './cycles.ts';

/** Stretch of one curve along consecutive steps. */
interface Run {
  readonly curve: Curve;
  readonly start: number;
  end: number;
  readonly from: number;
  to: number;
}

/**
 * True curves along a way. Where several lines run on one another, the one that is followed already is kept, else the
 * first drawn. Curves join bit for bit; a closed way gives a closed path.
 */
export function traceSteps(graph: Arrangement, steps: readonly Step[], closed: boolean): Curve[] {
  const runs: Run[] = [];
  for (const step of steps) {
    const covers = coversAlong(graph, step);
    const last = runs[runs.length - 1];
    const going = last && covers.find((cover) => continues(last, cover));
    if (going) {
      last.end = going.end;
      last.to = step.to;
    } else {
      const [{ curve, start, end }] = covers;
      runs.push({ curve, start, end, from: step.from, to: step.to });
    }
  }
  const first = runs[0];
  const last = runs[runs.length - 1];
  if (closed && runs.length > 1 && continues(last, first)) runs.splice(0, 1, { ...runs.pop()!, end: first.end, to: first.to });
  return runs.flatMap(({ curve, start, end, from, to }) => withEnds(curvePart(curve, start, end), graph.vertices.exact(from), graph.vertices.exact(to)));
}

function continues(run: Run, next: Pick<Cover, 'curve' | 'start' | 'end'>): boolean {
  return run.curve === next.curve && run.end === next.start && run.end > run.start === next.end > next.start;
}

function coversAlong(graph: Arrangement, { edge, from }: Step): readonly Cover[] {
  const covers = graph.covers[edge];
  if (graph.edges[edge][0] === from) return covers;
  return covers.map(({ line, curve, start, end }) => ({ line, curve, start: end, end: start }));
}
