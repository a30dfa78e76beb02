import type { Random } from '../../base/random.ts';
import type { Placement } from '../../layout/problem.ts';
import { withEnd, type Prepared } from '../prepare.ts';
import { placedBox } from '../rank.ts';
import type { Tables } from '../tables.ts';
import { Crowd } from './guided-crowd.ts';
import { keepFailed, settle, type FailedLayout, type Finish } from './guided-settle.ts';
import { standingOf } from './guided-starts.ts';
import { makeStripStart } from './strip-starts.ts';

/**
 * Given counts of several parts on the shortest strip: from a layout that keeps every rule, shorten the strip, settle
 * again, go on from the layout that came nearest, disturbed (the plan of Elkeran, EJOR 231, 2013, and of Gardeyn, Vanden
 * Berghe and Wauters, arXiv:2509.13329, 2025, on our own search).
 */
export interface StripInput {
  readonly prepared: Prepared;
  readonly tables: Tables;
  readonly random: Random;
  /** Part of every blank wanted. */
  readonly parts: readonly number[];
  /** Shortest layout known; its blanks in the order of `parts`. */
  readonly best: readonly Placement[] | undefined;
  readonly state: StripState | undefined;
  /** Separates, then pushes towards the strip's start. */
  readonly finish: Finish;
}

/** What a lane hands on from round to round. Plain data. */
export interface StripState {
  /** Share of the length that is tried to be saved. */
  readonly saving: number;
  /** Length, from the strip's start, at which the failed layout was left. */
  readonly length: number;
  readonly failed: FailedLayout | undefined;
  /** Starts in a row at this length that did not settle. */
  readonly failures: number;
}

export interface StripStep {
  readonly work: number;
  readonly found?: readonly Placement[];
  readonly source?: string;
  readonly state?: StripState;
}

/** First share to be saved, and the least and the most that are tried. */
const FIRST_SAVING = 0.03;
const LEAST_SAVING = 0.0005;
const MOST_SAVING = 0.06;
/** After a success the next step is longer, after failures in a row at one length shorter, by these factors. */
const LONGER = 1.3;
const SHORTER = 0.6;
const FAILURES_PER_LENGTH = 12;
/** The first strip is so much longer than the blanks' boxes would need at full density. */
const FIRST_SLACK = 1.2;

export function* stripSearch(input: StripInput): Generator<StripStep, void, void> {
  const { prepared, random, parts } = input;
  let { best } = input;
  let length = best ? lengthOf(prepared, best) : Infinity;
  let state: StripState = input.state ?? { saving: FIRST_SAVING, length: 0, failed: undefined, failures: 0 };
  // While what is known is far too long, or nothing is, blanks are scattered on a strip of about the right length.
  let scattered = FIRST_SLACK * boxLength(prepared, parts);
  for (;;) {
    const loose = scattered * FIRST_SLACK < length;
    const target = loose ? scattered : state.failed ? state.length : length * (1 - state.saving);
    const crowd = crowdAt(input, target);
    const source = makeStripStart(crowd, loose ? undefined : best?.map((placement) => standingOf(prepared, placement)), state.failed?.standing, random);
    const found = yield* settle(crowd, random, input.finish);
    const reached = found ? lengthOf(prepared, found) : Infinity;
    if (found && reached < length) {
      best = found;
      length = reached;
      state = { saving: Math.min(MOST_SAVING, Math.max(FIRST_SAVING / 10, state.saving) * LONGER), length, failed: undefined, failures: 0 };
      yield { work: 0, found, source: `free search, ${source}`, state };
      continue;
    }
    if (loose) scattered *= FIRST_SLACK;
    else state = afterFailure(state, target, keepFailed(state.failed, crowd));
    yield { work: 0, state };
  }
}

function afterFailure(state: StripState, target: number, failed: FailedLayout): StripState {
  if (state.failures + 1 < FAILURES_PER_LENGTH) return { ...state, length: target, failed, failures: state.failures + 1 };
  return { saving: Math.max(LEAST_SAVING, state.saving * SHORTER), length: target, failed: undefined, failures: 0 };
}

function crowdAt({ prepared, tables, parts }: StripInput, length: number): Crowd {
  const crowd = new Crowd(withEnd(prepared, prepared.area.minX + length), tables, parts.length);
  parts.forEach((part, i) => (crowd.choice[i] = part));
  return crowd;
}

/** From the strip's start to the end of the furthest blank, µm. */
export function lengthOf({ problem, area }: Prepared, placements: readonly Placement[]): number {
  return placements.reduce((most, placement) => Math.max(most, placedBox(problem, placement).maxX - area.minX), 0);
}

/** Length on which the blanks' boxes would just fit by area, and no blank is too wide. */
function boxLength({ poses, posesOf, area }: Prepared, parts: readonly number[]): number {
  const boxes = parts.map((part) => poses[posesOf[part][0]]);
  const sum = boxes.reduce((total, { width, height }) => total + width * height, 0);
  return Math.max(sum / (area.maxY - area.minY), ...boxes.map(({ width }) => width));
}
