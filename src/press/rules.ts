import { inputError } from '../base/issue.ts';

/** Knife and bleed rules of a job, millimetres. */
export interface CuttingRules {
  /** Least knife-to-knife distance. */
  readonly gap: number;
  /** How far ink runs over the outline. */
  readonly bleed: number;
  /** `apart`: the bleeds of neighbours clear each other; `cut`: both are cut at the middle of the gap. */
  readonly bleedMeeting: 'apart' | 'cut';
}

const DEFAULT_BLEED = 3;
const DEFAULT_GAP = 6;
/** Two knives nearer than this leave no room for ejection rubber (from memory; the die maker decides). */
const LEAST_DEFAULT_GAP = 5;

/**
 * Fills in what was not given: both open: 6 and 3; only the bleed given: gap = max(5, 2 × bleed); only the gap given:
 * bleed = min(3, gap / 2). Bleeds that would overlap without leave to be cut are refused.
 */
export function resolveRules(given: { gap?: number | undefined; bleed?: number | undefined; bleedMeeting?: 'apart' | 'cut' | undefined }): CuttingRules {
  const bleedMeeting = given.bleedMeeting ?? 'apart';
  const { gap, bleed } = fillIn(given.gap, given.bleed);
  if (bleedMeeting === 'apart' && gap < 2 * bleed) {
    throw inputError('bleeds-overlap', { where: '--gap', facts: { gap, bleed, needed: 2 * bleed } });
  }
  return { gap, bleed, bleedMeeting };
}

function fillIn(gap: number | undefined, bleed: number | undefined): { gap: number; bleed: number } {
  if (gap === undefined && bleed === undefined) return { gap: DEFAULT_GAP, bleed: DEFAULT_BLEED };
  if (gap === undefined) return { gap: Math.max(LEAST_DEFAULT_GAP, 2 * bleed!), bleed: bleed! };
  return { gap, bleed: bleed ?? Math.min(DEFAULT_BLEED, gap / 2) };
}

/** Least distance from a colour bar to a knife: the bleed, and never under 2 mm. */
export function barClearance(bleed: number): number {
  return Math.max(2, bleed);
}
