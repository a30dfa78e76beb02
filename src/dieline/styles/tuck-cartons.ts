import { cartonDimensions, SEAM, TUCK } from './allowances.ts';
import { body, type BodyPanel } from './body.ts';
import { crashLockBottom, CRASH_LOCK } from './crash-lock.ts';
import { dustEnd, glueSeam, notched, tuckEnd } from './ends.ts';
import { mirrored, type Edge, type Flap } from './flap.ts';
import type { Values } from './parameter.ts';
import { SNAP, snapBottom } from './snap-bottom.ts';
import { ACROSS_BODY_CREASES, type Style } from './style.ts';

/** What the four panels carry at one end, from left to right as drawn: back, side, front, other side. */
type End = readonly [back: Edge, side: Edge, front: Edge, otherSide: Edge];

/** A tuck end whose cover hangs on the back and tucks in behind the front, or the other way round. Walked left to right. */
function tuck(end: string, on: 'back' | 'front', values: Values): End {
  const cover = tuckEnd(end, values);
  const entry = notched(values.thumbNotch);
  const dust = (name: string, entryAt: 'start' | 'end') => {
    const edge = dustEnd(`${end} ${name}`, values);
    return entryAt === 'start' ? edge : mirrored(edge);
  };
  return on === 'back' ? [cover, dust('dust flap', 'end'), entry, dust('other dust flap', 'start')] : [entry, dust('dust flap', 'start'), cover, dust('other dust flap', 'end')];
}

/** An end at the top is walked the other way. */
function atTop(end: End): End {
  const [back, side, front, otherSide] = end.map(mirrored);
  return [back, side, front, otherSide];
}

/** Back, side, front, other side, with the glue flap on the back's left. */
export function fourPanels({ length, width, depth, lastPanelLess, glueFlap }: Values, bottom?: End, top?: End): Flap {
  const widths = { back: length, side: width, front: length, 'other side': width - lastPanelLess };
  const panels = Object.entries(widths).map(([id, across], i): BodyPanel => ({
    id,
    width: across,
    ...(bottom ? { bottom: bottom[i] } : {}),
    ...(top ? { top: atTop(top)[i] } : {}),
  }));
  return body(depth, panels, glueSeam(glueFlap, 'other side'));
}

const common = { grain: ACROSS_BODY_CREASES, allowances: [...SEAM, ...TUCK] };

export const straightTuck: Style = {
  ...common,
  id: 'straight-tuck',
  description: 'carton with tuck flaps at both ends, both covers on the back',
  dimensions: cartonDimensions([60, 30, 110]),
  build: (v) => fourPanels(v, tuck('bottom', 'back', v), tuck('top', 'back', v)),
};

export const reverseTuck: Style = {
  ...common,
  id: 'reverse-tuck',
  description: 'carton with tuck flaps at both ends, the top cover on the back, the bottom one on the front',
  dimensions: cartonDimensions([60, 30, 110]),
  build: (v) => fourPanels(v, tuck('bottom', 'front', v), tuck('top', 'back', v)),
};

export const tuckTopCrashLockBottom: Style = {
  ...common,
  id: 'tuck-top-crash-lock-bottom',
  description: 'carton with a tuck top and a glued bottom that springs open and locks when the flat carton is squared up',
  dimensions: cartonDimensions([80, 50, 120], 30),
  allowances: [...common.allowances, ...CRASH_LOCK],
  build: (v) => fourPanels(v, crashLockBottom(v), tuck('top', 'back', v)),
};

export const snapBottomCarton: Style = {
  ...common,
  id: 'snap-bottom',
  description: 'carton with a tuck top and a bottom of four flaps that are pushed into one another by hand',
  dimensions: cartonDimensions([80, 50, 120], 30),
  allowances: [...common.allowances, ...SNAP],
  build: (v) => fourPanels(v, snapBottom(v), tuck('top', 'back', v)),
};
