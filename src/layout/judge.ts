import { inputError } from '../base/issue.ts';
import { TURNS, type Turn } from '../geometry/turn.ts';
import { barClearance } from '../press/rules.ts';
import { checkRing, judgedDesign, quarterTurn, type JudgedDesign } from './judge-design.ts';
import { outlineOfRing } from './judge-outline.ts';
import { mayShareKnife } from './judge-facing.ts';
import { judgePair, type PairFault } from './judge-pair.ts';
import { shapeOf, type Shape, type Spot } from './judge-shape.ts';
import { JUDGE_TOLERANCE_MM } from './judge-tolerance.ts';
import type { LayoutFile, MmArea, PlacedBlank } from './layout-file.ts';

/**
 * Judges layouts from scratch, whoever made them. Everything is measured on true curves in the file's own millimetres,
 * with code that no search uses. `result` is not looked at.
 */
export type FaultKind = 'gap' | 'overlap' | 'outside' | 'keep-out' | 'bleed' | 'rotation' | 'outline';

export interface Fault {
  /** `outline`: the design's polygon does not fit its true curves. */
  readonly kind: FaultKind;
  /** 0-based numbers of the placements concerned. */
  readonly blanks: readonly number[];
  /** On the sheet, mm. */
  readonly place: readonly [number, number];
  /** What is missing of a distance, how deep an overlap or how far a thing sticks out, mm. 0 for a rotation. */
  readonly byMm: number;
}

export interface Judgement {
  readonly state: 'sound' | 'faulty';
  readonly faults: readonly Fault[];
  /** True when judging stopped at `MOST_FAULTS`; there may be more. */
  readonly cutShort: boolean;
}

/** More faults than these tell nothing new. */
export const MOST_FAULTS = 10_000;

/** Throws an InputError when the layout cannot be judged: see `createJudge`. */
export function judge(layout: LayoutFile, onWork?: OnWork): Judgement {
  return createJudge(layout, onWork)(layout.placements);
}

/** Told at every blank and every pair that the work goes on: it must be quick. */
type OnWork = () => void;

export type Frame = Omit<LayoutFile, 'placements' | 'result'>;

/**
 * Prepares sheet, rules and designs once, for many judgements of placements (while blanks are dragged). Throws an
 * InputError when a ring is not simple, a rotation no quarter turn, a design named twice or its curves unreadable;
 * the judge itself throws one for no placements, an unknown design or a rotation that is no quarter turn.
 */
export function createJudge(frame: Frame, onWork?: OnWork): (placements: readonly PlacedBlank[]) => Judgement {
  const designs = new Map<string, JudgedDesign>();
  for (const design of frame.designs) {
    if (designs.has(design.id)) throw inputError('design-twice', { where: `design ${design.id}` });
    onWork?.();
    designs.set(design.id, judgedDesign(design));
  }
  const keepOuts = frame.keepOut.map(({ kind, ring }, i) => {
    checkRing(ring, `keepOut[${i}]`);
    return { shape: shapeOf(outlineOfRing(ring)), clearance: kind === 'colour-bar' ? barClearance(frame.rules.bleed) : frame.rules.bleed };
  });
  const judgePairs = createPairJudge(frame, onWork);

  return (placements) => {
    if (placements.length === 0) throw inputError('no-placements');
    const blanks = placements.map((placement, i) => standingBlank(placement, i, designs));
    const faults: Fault[] = [];
    for (const blank of blanks) {
      onWork?.();
      faults.push(...rotationFaults(blank), ...edgeFaults(blank, frame), ...keepOuts.flatMap(({ shape, clearance }) => keepOutFaults(blank, shape, clearance)));
    }
    faults.push(...outlineFaults(blanks));
    judgePairs(blanks, faults);
    return { state: faults.length === 0 ? 'sound' : 'faulty', faults: faults.slice(0, MOST_FAULTS), cutShort: faults.length > MOST_FAULTS };
  };
}

/** A design standing on the sheet. */
interface StandingBlank extends Spot {
  readonly number: number;
  readonly design: JudgedDesign;
  readonly turn: Turn;
  /** In its own coordinates, turned; on the sheet after adding (x, y). */
  readonly shape: Shape;
}

function standingBlank({ design: id, rotation, x, y }: PlacedBlank, number: number, designs: ReadonlyMap<string, JudgedDesign>): StandingBlank {
  const where = `placements[${number}]`;
  const design = designs.get(id);
  if (!design) throw inputError('design-unknown', { where, facts: { design: id } });
  const turn = quarterTurn(rotation, where);
  return { number, design, turn, shape: design.shapes[turn]!, x, y };
}

function rotationFaults({ number, design, turn, shape, x, y }: StandingBlank): Fault[] {
  if (design.turns.has(turn)) return [];
  return [{ kind: 'rotation', blanks: [number], place: [x + (shape.minX + shape.maxX) / 2, y + (shape.minY + shape.maxY) / 2], byMm: 0 }];
}

/** Knives within the usable area and the sheet, bleed within the printable area and the sheet. */
function edgeFaults(blank: StandingBlank, { sheet, usable, printable, rules }: Frame): Fault[] {
  const whole: MmArea = { x: 0, y: 0, ...sheet };
  const faults: Fault[] = [];
  const report = (kind: FaultKind, reach: { byMm: number; place: Spot }) => {
    if (reach.byMm > JUDGE_TOLERANCE_MM) faults.push({ kind, blanks: [blank.number], place: [reach.place.x, reach.place.y], byMm: reach.byMm });
  };
  report('outside', farthestOut(blank, [usable, whole], 0));
  report('bleed', farthestOut(blank, [printable, whole], rules.bleed));
  return faults;
}

/** The side on which the blank, grown by `margin`, leaves the areas most. Grown outlines have the grown box. */
function farthestOut({ shape, x, y }: StandingBlank, areas: readonly MmArea[], margin: number): { byMm: number; place: Spot } {
  const [left, bottom, right, top] = shape.extremes.map((spot) => ({ x: spot.x + x, y: spot.y + y })) as [Spot, Spot, Spot, Spot];
  const sides = areas.flatMap((area) => [
    { byMm: area.x + margin - left.x, place: left },
    { byMm: area.y + margin - bottom.y, place: bottom },
    { byMm: right.x + margin - (area.x + area.width), place: right },
    { byMm: top.y + margin - (area.y + area.height), place: top },
  ]);
  return sides.reduce((worst, side) => (side.byMm > worst.byMm ? side : worst));
}

function keepOutFaults(blank: StandingBlank, keepOut: Shape, clearance: number): Fault[] {
  const shift = { x: -blank.x, y: -blank.y };
  if (!boxesWithin(blank.shape, keepOut, shift, clearance)) return [];
  const fault = judgePair(blank.shape, keepOut, shift, clearance, undefined);
  if (!fault) return [];
  const byMm = fault.kind === 'overlap' ? clearance + fault.depth : clearance - fault.distance;
  return [{ kind: 'keep-out', blanks: [blank.number], place: [fault.place.x + blank.x, fault.place.y + blank.y], byMm }];
}

/** One fault a design, naming all its blanks, at the first of them. */
function outlineFaults(blanks: readonly StandingBlank[]): Fault[] {
  const byDesign = new Map<JudgedDesign, StandingBlank[]>();
  for (const blank of blanks) {
    if (!blank.design.mismatch) continue;
    byDesign.set(blank.design, [...(byDesign.get(blank.design) ?? []), blank]);
  }
  return [...byDesign].map(([design, [first, ...more]]) => {
    const { place, byMm } = design.mismatch!;
    const spot = turned(place, first!.turn);
    return { kind: 'outline', blanks: [first!, ...more].map((blank) => blank.number), place: [spot.x + first!.x, spot.y + first!.y], byMm };
  });
}

function turned({ x, y }: Spot, turn: Turn): Spot {
  return [{ x, y }, { x: -y, y: x }, { x: -x, y: -y }, { x: y, y: -x }][turn]!;
}

function boxesWithin(a: Shape, b: Shape, shift: Spot, reach: number): boolean {
  return (
    b.minX + shift.x <= a.maxX + reach && b.maxX + shift.x >= a.minX - reach && b.minY + shift.y <= a.maxY + reach && b.maxY + shift.y >= a.minY - reach
  );
}

/**
 * Regular layouts repeat few relative positions, so each is measured once. Relative positions are taken to the
 * nanometre, which joins those that differ only by the rounding of sums.
 */
const NANOMETRES_PER_MM = 1e6;
const MOST_REMEMBERED = 200_000;

function createPairJudge({ rules, designs }: Frame, onWork?: OnWork): (blanks: readonly StandingBlank[], faults: Fault[]) => void {
  const bleeds = rules.bleedMeeting === 'apart' ? 2 * rules.bleed : 0;
  const needed = Math.max(rules.gap, bleeds);
  const ids = new Map(designs.map((design, i) => [design.id, i]));
  const remembered = new Map<string, PairFault | undefined>();

  const faultOf = (a: StandingBlank, b: StandingBlank): PairFault | undefined => {
    const dx = Math.round((b.x - a.x) * NANOMETRES_PER_MM);
    const dy = Math.round((b.y - a.y) * NANOMETRES_PER_MM);
    const key = `${ids.get(a.design.id)! * TURNS.length + a.turn} ${ids.get(b.design.id)! * TURNS.length + b.turn} ${dx} ${dy}`;
    if (remembered.has(key)) return remembered.get(key);
    if (remembered.size >= MOST_REMEMBERED) remembered.clear();
    const fault = judgePair(a.shape, b.shape, { x: dx / NANOMETRES_PER_MM, y: dy / NANOMETRES_PER_MM }, needed, rules.commonKnife ? mayShareKnife(a, b, rules.commonKnifePairs) : undefined);
    remembered.set(key, fault);
    return fault;
  };

  return (blanks, faults) => {
    for (const [a, b] of nearPairs(blanks, needed)) {
      onWork?.();
      const fault = faultOf(a, b);
      if (!fault) continue;
      const common = { blanks: [a.number, b.number].sort((p, q) => p - q), place: [fault.place.x + a.x, fault.place.y + a.y] as const };
      if (fault.kind === 'overlap') faults.push({ kind: 'overlap', ...common, byMm: fault.depth });
      else {
        if (rules.gap - fault.distance > JUDGE_TOLERANCE_MM) faults.push({ kind: 'gap', ...common, byMm: rules.gap - fault.distance });
        // Where the gap asks for as much, it speaks for the bleed as well.
        if (bleeds > rules.gap) faults.push({ kind: 'bleed', ...common, byMm: bleeds - fault.distance });
      }
      if (faults.length > MOST_FAULTS) return;
    }
  };
}

/** Pairs whose boxes come within reach, by a sweep from left to right. */
function* nearPairs(blanks: readonly StandingBlank[], reach: number): Generator<[StandingBlank, StandingBlank]> {
  const sorted = blanks.toSorted((a, b) => a.x + a.shape.minX - (b.x + b.shape.minX));
  for (let i = 0; i < sorted.length; i++) {
    const a = sorted[i]!;
    const end = a.x + a.shape.maxX + reach;
    for (let j = i + 1; j < sorted.length && sorted[j]!.x + sorted[j]!.shape.minX <= end; j++) {
      const b = sorted[j]!;
      if (boxesWithin(a.shape, b.shape, { x: b.x - a.x, y: b.y - a.y }, reach)) yield [a, b];
    }
  }
}
