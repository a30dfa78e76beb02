import { inputError, type Issue } from '../base/issue.ts';
import { barClearance, type CuttingRules } from './rules.ts';

/** Where on the sheet ink and knives may be, millimetres. Sheet origin lower left, y = 0 the gripper edge. */
export interface SheetAreas {
  readonly usable: Area;
  readonly printable: Area;
  /** The colour bar's own area; a knife keeps `barClearance` away from it. */
  readonly bar?: Area;
  /** What was changed or assumed on the way, to be said in the report. */
  readonly notes: readonly Issue[];
}

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export type BarPlace = 'tail' | 'gripper' | 'centre';

export interface Bar {
  readonly place: BarPlace;
  readonly height: number;
}

/** What was asked, millimetres; what is undefined takes its default. */
export interface MarginSettings {
  readonly gripper?: number | undefined;
  readonly tail?: number | undefined;
  /** Left, right. */
  readonly sideMargins?: readonly [number, number] | undefined;
  readonly inkGripper?: number | undefined;
  readonly inkTail?: number | undefined;
  readonly inkSides?: number | undefined;
  readonly bar?: Bar | undefined;
  /** The sheet is turned tail to gripper for its second side: the tail is gripped too, and a bar at either end wants its room at both. */
  readonly secondGripper?: boolean | undefined;
}

const KNIFE_DEFAULTS = { gripper: 12, tail: 10, side: 6 };
const INK_DEFAULTS = { gripper: 10, tail: 3, side: 3 };

interface EdgeMargins {
  readonly knife: number;
  readonly ink: number;
}

/**
 * Works out knife and ink areas edge by edge. An ink margin that was not given is its default but never more than the
 * knife margin given; a knife margin is raised to ink margin + bleed, and at the bar's edge to ink margin + bar +
 * distance of bar and knife, and that is noted. Throws an InputError when nothing is left of the sheet.
 */
export function sheetAreas(sheet: Size, settings: MarginSettings, rules: CuttingRules): SheetAreas {
  const notes: Issue[] = [];
  const margins = (edge: string, knife: number, ink: number | undefined, inkDefault: number, bar: number): EdgeMargins => {
    const kept = ink ?? Math.min(inkDefault, knife);
    const needed = Math.max(kept + rules.bleed, bar > 0 ? kept + bar + barClearance(rules.bleed) : 0);
    if (needed <= knife) return { knife, ink: kept };
    const code = bar > 0 ? 'margin-raised-for-bar' : 'margin-raised-for-bleed';
    notes.push({ code, severity: 'note', facts: { edge, from: knife, to: needed, ink: kept, bleed: rules.bleed, bar } });
    return { knife: needed, ink: kept };
  };
  const { secondGripper = false } = settings;
  const barAt = (place: BarPlace) => (settings.bar?.place === place || (secondGripper && settings.bar && settings.bar.place !== 'centre') ? settings.bar!.height : 0);
  const gripper = settings.gripper ?? KNIFE_DEFAULTS.gripper;
  const tail = settings.tail ?? (secondGripper ? gripper : KNIFE_DEFAULTS.tail);
  const inkTail = secondGripper ? Math.max(settings.inkTail ?? 0, settings.inkGripper ?? Math.min(INK_DEFAULTS.gripper, gripper)) : settings.inkTail;
  const [left, right] = settings.sideMargins ?? [KNIFE_DEFAULTS.side, KNIFE_DEFAULTS.side];
  const edges = {
    gripper: margins('gripper', gripper, settings.inkGripper, INK_DEFAULTS.gripper, barAt('gripper')),
    tail: margins('tail', secondGripper ? Math.max(tail, gripper) : tail, inkTail, INK_DEFAULTS.tail, barAt('tail')),
    left: margins('left side', left, settings.inkSides, INK_DEFAULTS.side, 0),
    right: margins('right side', right, settings.inkSides, INK_DEFAULTS.side, 0),
  };

  const usable = within(sheet, edges.left.knife, edges.right.knife, edges.gripper.knife, edges.tail.knife);
  const printable = within(sheet, edges.left.ink, edges.right.ink, edges.gripper.ink, edges.tail.ink);
  const bar = settings.bar && barArea(sheet, printable, settings.bar);
  const band = settings.bar?.place === 'centre' ? settings.bar.height + 2 * barClearance(rules.bleed) : 0;
  if (usable.width <= 0 || usable.height <= band) {
    const facts = { ...sheet, sides: sheet.width - usable.width, ends: sheet.height - usable.height + band };
    throw inputError('nothing-left-of-sheet', { where: '--sheet', facts });
  }
  return { usable, printable, ...(bar && { bar }), notes };
}

function within(sheet: Size, left: number, right: number, gripper: number, tail: number): Area {
  return { x: left, y: gripper, width: sheet.width - left - right, height: sheet.height - gripper - tail };
}

/** At gripper or tail the bar lies against the ink margin; in the centre it is a band over the sheet's full width. */
function barArea(sheet: Size, printable: Area, { place, height }: Bar): Area {
  if (place === 'centre') return { x: 0, y: (sheet.height - height) / 2, width: sheet.width, height };
  const y = place === 'gripper' ? printable.y : printable.y + printable.height - height;
  return { x: printable.x, y, width: printable.width, height };
}
