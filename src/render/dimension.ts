import type { Point } from '../geometry/point.ts';
import type { Format } from './format.ts';
import type { Scale } from './scale.ts';
import type { SceneItem } from './scene.ts';
import { drawn, label, line } from './shapes.ts';
import type { Run } from './steps.ts';
import { textWidth } from './text-width.ts';

/** A chain of dimensions along one axis, on the line x or y = `at`; labels stand above it or, upright, to its left. */
export interface Chain {
  readonly axis: 'x' | 'y';
  readonly at: number;
  /** Where the thing that is measured ends: short lines lead from there to the chain. */
  readonly edge: number;
  readonly runs: readonly Run[];
  /** Written after every figure. */
  readonly suffix?: string;
}

const TEXT_SIZE = 0.85;

/** More pieces than that are no help to anybody. */
const MOST_RUNS = 10;

/** Distance that two labels across their lines keep between their middles, in units of the body text. */
const ACROSS_PITCH = 0.95;

/** True when there are few enough pieces and no label meets the next. */
export function chainFits(runs: readonly Run[], format: Format, scale: Scale): boolean {
  const middle = ({ from, step, count }: Run) => from + (step * count) / 2;
  const isAcross = runs.map((run) => !hasRoom(run, format, scale));
  const meets = (i: number) => isAcross[i] && isAcross[i + 1] && middle(runs[i + 1]!) - middle(runs[i]!) < ACROSS_PITCH * scale.unit;
  return runs.length <= MOST_RUNS && !runs.some((_, i) => meets(i));
}

export function dimensionChain({ axis, at, edge, runs, suffix = '' }: Chain, format: Format, scale: Scale): SceneItem[] {
  const { unit } = scale;
  const place = (along: number, across: number): Point => (axis === 'x' ? { x: along, y: across } : { x: across, y: along });
  // Upright text is read from the right, so "above" an upright line is to its left.
  const above = axis === 'x' ? 1 : -1;
  const first = runs[0]!.from;
  const lastRun = runs.at(-1)!;
  const last = lastRun.from + lastRun.step * lastRun.count;
  const outward = Math.sign(at - edge);

  const lines = [line(place(first, at), place(last, at))];
  for (const run of runs) {
    for (let k = 0; k <= run.count; k++) {
      const along = run.from + k * run.step;
      const isInner = k > 0 && k < run.count;
      const tick = unit * (isInner ? 0.16 : 0.28);
      lines.push(line(place(along - tick, at - tick), place(along + tick, at + tick)));
      if (!isInner) lines.push(line(place(along, edge + outward * unit * 0.4), place(along, at + outward * unit * 0.35)));
    }
  }

  const items: SceneItem[] = [drawn(lines, { stroke: 'ink', width: scale.fine })];
  for (const run of runs) {
    const middle = run.from + (run.step * run.count) / 2;
    const text = runText(run, format) + suffix;
    const size = unit * TEXT_SIZE;
    if (hasRoom(run, format, scale)) {
      items.push(label(text, place(middle, at + above * unit * 0.3), size, { anchor: 'middle', turn: axis === 'x' ? 0 : 1 }));
    } else {
      // Across the line: too short for the label along it.
      items.push(label(text, axis === 'x' ? place(middle + size * 0.36, at + unit * 0.5) : place(middle - size * 0.36, at + unit * 0.5), size, { turn: axis === 'x' ? 1 : 0 }));
    }
  }
  return items;
}

function runText({ step, count }: Run, format: Format): string {
  return count === 1 ? format.bareLength(step) : `${count} × ${format.bareLength(step)} = ${format.bareLength(step * count)}`;
}

function hasRoom(run: Run, format: Format, scale: Scale): boolean {
  return textWidth(runText(run, format), scale.unit * TEXT_SIZE) + scale.unit * 0.5 <= run.step * run.count;
}
