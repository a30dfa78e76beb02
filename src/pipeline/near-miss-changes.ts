import { toMicrons, toMillimetres } from '../base/units.ts';
import type { Blank } from '../dieline/dieline.ts';
import { dielineOfStyle, styledBlank } from '../dieline/styles/dieline-of-style.ts';
import { boundValue, type Values } from '../dieline/styles/parameter.ts';
import { intersect } from '../geometry/boolean.ts';
import { flattenLoop } from '../geometry/flatten.ts';
import { boxOf, ringArea, type Box } from '../geometry/point.ts';
import { FLATTENING_MM } from '../layout/part.ts';
import type { Problem } from '../layout/problem.ts';
import { combineSettings, type MachineSettings } from '../press/machines.ts';
import { barClearance } from '../press/rules.ts';
import { polyline } from '../render/shapes.ts';
import type { NestJob } from './nest.ts';

/** One single thing that may change. */
export interface Change {
  /** `gap`, `gripper`, `flap:tuckFlap`, … */
  readonly thing: string;
  /** What it is now, mm; absent for what is allowed or not. */
  readonly from?: number;
  /** How far the thing is changed at most, mm. */
  readonly most?: number;
  /** +1 where the thing grows. */
  readonly sign: 1 | -1;
  /** The job with the thing changed by so many mm. */
  readonly at: (byMm: number) => NestJob;
  readonly commonKnife?: boolean;
  /** The blank is another one: blanks that lie already tell nothing. */
  readonly otherBlank?: boolean;
}

/** A blank drawn from dimensions. */
export interface StyledSource {
  readonly id: string;
  /** What was given; allowances that are left out follow from the dimensions. */
  readonly values: Values;
}

/**
 * How far things are changed, mm. From the sources beside each; none is a promise that a machine or a die maker takes it.
 */
const LEAST = {
  /** Between two rules with ejection rubber, about (common practice, no source). */
  gap: 3,
  /** 7 to 15 mm depending on the machine (packaging technologists' handbook, wiki.hpv-ev.org lf03/03). */
  gripper: 7,
  tail: 3,
  sides: 3,
  /** 4 to 8 mm are usual (common practice, no source). */
  bar: 4,
};
const MOST_LARGER_SHEET = 60;
const MOST_OFF_FLAP = 5;

/** Every single thing that may bring one more up, in the order in which a person would ask for it. */
export function changesOf(job: NestJob, problem: Problem, style?: StyledSource): Change[] {
  return [...gapChange(job, problem), ...marginChanges(job, problem), ...barChanges(job), ...sheetChanges(job), ...freedoms(job, problem), ...(style ? flapChanges(job, style) : edgeChanges(job))];
}

const withSettings = (job: NestJob, settings: Partial<MachineSettings>): NestJob => ({ ...job, settings: { ...job.settings, ...settings } });

/** Below twice the bleed the bleeds are cut at the middle. */
function gapChange(job: NestJob, { rules }: Problem): Change[] {
  const [gap, bleed] = [toMillimetres(rules.gap), toMillimetres(rules.bleed)];
  const at = (byMm: number): NestJob => ({ ...withSettings(job, { gap: gap - byMm, bleed }), bleedMeeting: gap - byMm < 2 * bleed ? 'cut' : job.bleedMeeting });
  return gap > LEAST.gap ? [{ thing: 'gap', from: gap, most: gap - LEAST.gap, sign: -1, at }] : [];
}

/** Ink comes nearer to the edge with the knives where it must. */
function marginChanges(job: NestJob, { sheet, usable, printable, rules }: Problem): Change[] {
  const bleed = toMillimetres(rules.bleed);
  const bar = combineSettings(job.settings, job.machines).bar;
  const beside = (place: 'gripper' | 'tail') => (bar?.place === place ? bar.height + barClearance(bleed) : bleed);
  const now = {
    gripper: toMillimetres(usable.minY), tail: toMillimetres(sheet.height - usable.maxY), left: toMillimetres(usable.minX), right: toMillimetres(sheet.width - usable.maxX),
    inkGripper: toMillimetres(printable.minY), inkTail: toMillimetres(sheet.height - printable.maxY), inkSides: toMillimetres(Math.min(printable.minX, sheet.width - printable.maxX)),
  };
  const ends = (['gripper', 'tail'] as const).map((thing): Change => {
    const ink = thing === 'gripper' ? 'inkGripper' : 'inkTail';
    return { thing, from: now[thing], most: now[thing] - Math.max(LEAST[thing], beside(thing)), sign: -1, at: (byMm) => withSettings(job, { [thing]: now[thing] - byMm, [ink]: Math.min(now[ink], now[thing] - byMm - beside(thing)) }) };
  });
  const least = Math.min(now.left, now.right);
  const sides: Change = {
    thing: 'sides',
    from: least,
    most: least - Math.max(LEAST.sides, bleed),
    sign: -1,
    at: (byMm) => withSettings(job, { sideMargins: [now.left - byMm, now.right - byMm], inkSides: Math.min(now.inkSides, least - byMm - bleed) }),
  };
  return [...ends, sides].filter(({ most }) => most! > 0);
}

function barChanges(job: NestJob): Change[] {
  const bar = combineSettings(job.settings, job.machines).bar;
  if (!bar) return [];
  const elsewhere = (['tail', 'gripper', 'centre'] as const).filter((place) => place !== bar.place);
  const lower: Change = { thing: 'bar-height', from: bar.height, most: bar.height - LEAST.bar, sign: -1, at: (byMm) => withSettings(job, { bar: { ...bar, height: bar.height - byMm } }) };
  return [
    ...(bar.height > LEAST.bar ? [lower] : []),
    ...elsewhere.map((place): Change => ({ thing: `bar-${place}`, sign: 1, at: () => withSettings(job, { bar: { ...bar, place } }) })),
    { thing: 'bar-none', sign: 1, at: () => withSettings(job, { bar: 'none' }) },
  ];
}

/** Within what press and die-cutter take. */
function sheetChanges(job: NestJob): Change[] {
  const { sheet, machines: { press, cutter } } = job;
  return (['width', 'height'] as const).flatMap((side): Change[] => {
    const most = Math.min(MOST_LARGER_SHEET, ...[press, cutter].flatMap((machine) => (machine?.maxSheet ? [machine.maxSheet[side] - sheet[side]] : [])));
    return most > 0 ? [{ thing: `sheet-${side}`, from: sheet[side], most, sign: 1, at: (byMm) => ({ ...job, sheet: { ...sheet, [side]: sheet[side] + byMm } }) }] : [];
  });
}

function freedoms(job: NestJob, { parts, rules }: Problem): Change[] {
  const anyGrain: Change = { thing: 'rotations', sign: 1, at: () => ({ ...job, rotations: [0, 1, 2, 3], grain: undefined, sheetGrain: undefined }) };
  const shared: Change = { thing: 'common-knife', sign: 1, at: () => job, commonKnife: true };
  return [...(parts[0].turns.length < 4 ? [anyGrain] : []), ...(rules.commonKnife ? [] : [shared])];
}

/** Flaps first, then the dimensions of the carton itself. */
function flapChanges(job: NestJob, { id, values }: StyledSource): Change[] {
  const { style: { allowances, dimensions }, values: now } = styledBlank(id, values);
  const flaps = allowances.filter(({ name }) => /flap/i.test(name));
  return [...flaps, ...dimensions].flatMap(({ name, least }): Change[] => {
    const from = now[name]!;
    const most = Math.min(MOST_OFF_FLAP, from - boundValue(least, now));
    const at = (byMm: number): NestJob => {
      const { blanks, fingerprint } = dielineOfStyle(id, { ...values, [name]: toMillimetres(toMicrons(from - byMm)) });
      return { ...job, blank: blanks[0]!, drawing: { ...job.drawing, fingerprint } };
    };
    return most > 0 ? [{ thing: `flap:${name}`, from, most, sign: -1, at, otherBlank: true }] : [];
  });
}

/** Of a drawing the blank is cut short at one of its four sides, wherever it reaches farthest. */
function edgeChanges(job: NestJob): Change[] {
  const { ring } = flattenLoop(job.blank.outline, { toleranceMm: FLATTENING_MM, side: 'outside' });
  const box = boxOf(ring);
  const size = { x: box.maxX - box.minX, y: box.maxY - box.minY };
  const cut = (byMm: number, inset: (by: number) => Box): Blank => {
    const { minX, minY, maxX, maxY } = inset(toMicrons(byMm));
    const kept = intersect([{ outer: ring, holes: [] }], [{ outer: [{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }], holes: [] }]);
    const outer = kept.map((polygon) => polygon.outer).reduce((a, b) => (ringArea(b) > ringArea(a) ? b : a));
    const points = outer.map(({ x, y }) => ({ x: toMillimetres(x), y: toMillimetres(y) }));
    return { ...job.blank, outline: polyline(points, true), box: boxOf(points), areaMm2: ringArea(outer) / 1e6 };
  };
  const insets: [string, number, (by: number) => Box][] = [
    ['edge-top', size.y, (by) => ({ ...box, maxY: box.maxY - by })],
    ['edge-bottom', size.y, (by) => ({ ...box, minY: box.minY + by })],
    ['edge-left', size.x, (by) => ({ ...box, minX: box.minX + by })],
    ['edge-right', size.x, (by) => ({ ...box, maxX: box.maxX - by })],
  ];
  return insets.map(([thing, along, inset]): Change => ({ thing, from: toMillimetres(along), most: MOST_OFF_FLAP, sign: -1, at: (byMm) => ({ ...job, blank: cut(byMm, inset) }), otherBlank: true }));
}
