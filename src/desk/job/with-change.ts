import { toMicrons, toMillimetres } from '../../base/units.ts';
import type { LayoutFile } from '../../layout/layout-file.ts';
import type { NearMiss } from '../../render/near-miss-facts.ts';
import type { Job, LimitFields, SheetFields } from './job.ts';
import { nameOfDrawing } from './name-of-drawing.ts';

/** A single change as it lies on the desk. */
export type OneChange = Pick<NearMiss, 'thing' | 'from' | 'to'>;

/** Where a change belongs that no field of a job holds. */
export type BesideFields = 'drawing' | 'common-knife';

/** Undefined for a change that the job's own fields hold. */
export function besideFields(thing: string): BesideFields | undefined {
  if (thing.startsWith('edge-')) return 'drawing';
  return thing === 'common-knife' ? thing : undefined;
}

/**
 * The job with one change put into its own fields: with them it lays out as the layout that shows the change was laid out.
 * What goes with a change (ink that comes nearer with the knives, bleeds cut at the middle) is read from that layout.
 */
export function withChange(job: Job, { thing, to }: OneChange, shown: LayoutFile): Job {
  const [, flap] = /^flap:(.+)$/.exec(thing) ?? [];
  if (flap !== undefined) return withDimension(job, flap, to!);
  return { ...job, limits: { ...job.limits, ...limitsOf(thing, to, shown) }, sheet: { ...job.sheet, ...sheetOf(thing, shown) } };
}

/** A job named after its drawing keeps doing so. */
function withDimension(job: Job, name: string, mm: number): Job {
  if (job.drawing?.kind !== 'style') return job;
  const changed: Job = { ...job, drawing: { ...job.drawing, values: { ...job.drawing.values, [name]: mm } } };
  return job.name === nameOfDrawing(job) ? { ...changed, name: nameOfDrawing(changed) } : changed;
}

function sheetOf(thing: string, { sheet }: LayoutFile): Partial<SheetFields> {
  return thing.startsWith('sheet-') ? { size: `${text(sheet.width)}x${text(sheet.height)}` } : {};
}

function limitsOf(thing: string, to: number | undefined, shown: LayoutFile): Partial<LimitFields> {
  const { sheet, usable, printable, rules } = shown;
  const right = ({ x, width }: LayoutFile['usable']) => sheet.width - x - width;
  const tail = ({ y, height }: LayoutFile['usable']) => sheet.height - y - height;
  switch (thing) {
    case 'gap': return { gap: text(to!), bleed: text(rules.bleed), bleedMeeting: rules.bleedMeeting };
    case 'gripper': return { gripper: text(usable.y), inkGripper: text(printable.y) };
    case 'tail': return { tail: text(tail(usable)), inkTail: text(tail(printable)) };
    case 'sides': return { sideLeft: text(usable.x), sideRight: text(right(usable)), inkSides: text(Math.min(printable.x, right(printable))) };
    case 'rotations': return { rotations: '0,90,180,270', grain: '' };
    case 'bar-none': return { bar: 'none' };
    default: return thing.startsWith('bar-') ? barOf(shown) : {};
  }
}

/** The bar as it lies on the sheet: it may have come from the press until now. */
function barOf({ sheet, keepOut }: LayoutFile): Partial<LimitFields> {
  const ys = keepOut.find(({ kind }) => kind === 'colour-bar')!.ring.map(([, y]) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const offCentre = (low + high - sheet.height) / 2;
  // A bar in the centre lies there to the micrometre.
  const bar = Math.abs(offCentre) < 0.01 ? 'centre' : offCentre < 0 ? 'gripper' : 'tail';
  return { bar, barHeight: text(high - low) };
}

/** Millimetres as a field keeps them: whole micrometres. */
function text(mm: number): string {
  return String(toMillimetres(toMicrons(mm)));
}
