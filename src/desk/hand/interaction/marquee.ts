import type { Box } from '../../../geometry/point.ts';
import { boxOf } from '../../../geometry/point.ts';
import { boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import type { Interaction, Pointer } from './interaction.ts';
import { CLICK_PX, IDLE } from './interaction.ts';

type Marquee = Extract<Interaction, { kind: 'marquee' }>;

/** Drawn to the right it takes the blanks that lie wholly inside, drawn to the left every one that it meets. */
export function drawMarquee(situation: Situation, state: Marquee, pointer: Pointer, frame: SheetFrame): Situation {
  const interaction = { ...state, end: pointer.at };
  const isClick = Math.abs(pointer.screen.x - state.startScreen.x) < CLICK_PX && Math.abs(pointer.screen.y - state.startScreen.y) < CLICK_PX;
  if (isClick) return { ...situation, interaction, selected: state.base };
  const area = boxOf([state.start, pointer.at]);
  const takes = pointer.at.x >= state.start.x ? holds : meets;
  const inside = shown(situation).blanks.filter((blank) => takes(area, boxOnSheet(frame, blank))).map(({ id }) => id);
  return { ...situation, interaction, selected: new Set([...state.base, ...inside]) };
}

export function endMarquee(situation: Situation): Situation {
  return { ...situation, interaction: IDLE };
}

function holds(outer: Box, inner: Box): boolean {
  return outer.minX <= inner.minX && outer.maxX >= inner.maxX && outer.minY <= inner.minY && outer.maxY >= inner.maxY;
}

function meets(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

