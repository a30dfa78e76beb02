import { inputError } from '../base/issue.ts';
import type { Turn } from '../geometry/turn.ts';
import type { Size } from './sheet-areas.ts';

export type GrainAxis = 'x' | 'y';

/** What people write for the side that runs with the fibres: x along the gripper edge, y across it. */
export const GRAIN_WORDS = ['x', 'y', 'long', 'short'] as const;
export type GrainWord = (typeof GRAIN_WORDS)[number];

/** `long` and `short` mean the grain runs along the longer or shorter side; a square has neither. */
export function sheetGrainAxis(text: GrainWord, sheet: Size, where = '--sheet-grain'): GrainAxis {
  if (text === 'x' || text === 'y') return text;
  if (sheet.width === sheet.height) throw inputError('square-has-no-long-side', { where, facts: { value: text, side: sheet.width } });
  return (text === 'long') === sheet.width > sheet.height ? 'x' : 'y';
}

/**
 * Rotations that bring the fibres of the sheet along the side of the drawing that wants them: same axis, upright or
 * head down; the other axis, a quarter turn either way; no wish, all four.
 */
export function turnsForGrain(drawing: GrainAxis | 'any', sheet: GrainAxis): readonly Turn[] {
  if (drawing === 'any') return [0, 1, 2, 3];
  return drawing === sheet ? [0, 2] : [1, 3];
}
