import { judge, type Judgement } from './judge.ts';
import type { LayoutFile } from './layout-file.ts';

declare const judgedSound: unique symbol;

/** A layout that the judge found sound. Files for production take nothing else, and nothing else makes one. */
export interface SoundLayout extends LayoutFile {
  readonly [judgedSound]: true;
}

export type Verdict = { readonly judgement: Judgement; readonly sound?: SoundLayout };

/** Judges the layout; `sound` stands only when no fault was found. Throws like `judge`. */
export function judgeForProduction(layout: LayoutFile): Verdict {
  const judgement = judge(layout);
  return judgement.state === 'sound' ? { judgement, sound: structuredClone(layout) as SoundLayout } : { judgement };
}
