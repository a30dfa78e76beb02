import { inputError, InputError, type Issue } from '../base/issue.ts';
import { toMicrons, toMillimetres } from '../base/units.ts';
import { boxOf, type Ring } from '../geometry/point.ts';
import { degreesOf, turnBox, type Turn } from '../geometry/turn.ts';
import { isTumbled, symmetryOf, type WorkStyle } from '../layout/back-up.ts';
import { micronBox } from '../layout/rings.ts';
import type { CommonKnifePair } from '../layout/common-knife-pairs.ts';
import type { KeepOut, Part, Problem } from '../layout/problem.ts';
import { sheetGrainAxis, turnsForGrain, type GrainAxis } from '../press/grain.ts';
import { checkMachines, combineSettings, type MachineSettings, type Machines } from '../press/machines.ts';
import { barClearance, resolveRules } from '../press/rules.ts';
import { sheetAreas, type Area, type Size } from '../press/sheet-areas.ts';

/** What decides where blanks may lie, besides the blanks themselves. Millimetres. */
export interface LayingSettings {
  readonly sheet: Size;
  readonly settings: MachineSettings;
  readonly machines: Machines;
  readonly bleedMeeting?: 'apart' | 'cut' | undefined;
  /** Neighbours may share one straight rule: unprinted edges, or where the same colour runs through. */
  readonly commonKnife?: boolean | undefined;
  /** Only these sides of the drawing may; absent: any. */
  readonly commonKnifePairs?: readonly CommonKnifePair[] | undefined;
  /** How the second side is printed; absent: one side only. */
  readonly back?: WorkStyle | undefined;
  readonly rotations?: readonly Turn[] | undefined;
  /** Side of the drawing along which the fibres must run. */
  readonly grain?: GrainAxis | 'any' | undefined;
  readonly sheetGrain?: GrainAxis | 'long' | 'short' | undefined;
}

/** A problem without its parts, and what was assumed or changed on the way to it. */
export interface PreparedSheet {
  readonly frame: Omit<Problem, 'parts' | 'demand' | 'locked' | 'grid'>;
  /** Fibre direction of the sheet where it is known. */
  readonly sheetGrain: GrainAxis | undefined;
  readonly notes: readonly Issue[];
}

/** Sheet, margins, bar, gap and bleed as a search sees them. Throws an InputError where they leave nothing. */
export function prepareSheet(laying: LayingSettings): PreparedSheet {
  const { sheet, machines } = laying;
  checkMachines(sheet, machines);
  const combined = combineSettings(laying.settings, machines);
  const rules = resolveRules({ gap: combined.gap, bleed: combined.bleed, bleedMeeting: laying.bleedMeeting });
  const areas = sheetAreas(sheet, { ...combined, secondGripper: laying.back !== undefined && isTumbled(laying.back) }, rules);
  const keepOuts: KeepOut[] = areas.bar ? [{ kind: 'colour-bar', ring: areaRing(areas.bar), clearance: toMicrons(barClearance(rules.bleed)) }] : [];
  return {
    frame: {
      sheet: { width: toMicrons(sheet.width), height: toMicrons(sheet.height) },
      usable: micronBox(areas.usable),
      printable: micronBox(areas.printable),
      lay: combined.lay,
      keepOuts,
      rules: { gap: toMicrons(rules.gap), bleed: toMicrons(rules.bleed), bleedMeeting: rules.bleedMeeting, commonKnife: laying.commonKnife ?? laying.commonKnifePairs !== undefined, ...(laying.commonKnifePairs && { commonKnifePairs: laying.commonKnifePairs }) },
      symmetry: symmetryOf(laying.back),
    },
    sheetGrain: grainOfSheet(laying),
    notes: [...combined.notes, ...areas.notes, ...(laying.commonKnifePairs ?? []).map(({ sides: [side, other], reason }): Issue => ({ code: 'common-knife-pair', severity: 'note', facts: { side, other, reason: reason.replace('-', ' ') } }))],
  };
}

function grainOfSheet({ sheet, sheetGrain, machines }: LayingSettings): GrainAxis | undefined {
  const given = sheetGrain ?? machines.board?.sheetGrain;
  return given && sheetGrainAxis(given, sheet);
}

const HEAD_TO_TAIL: readonly Turn[] = [0, 2];

/**
 * Allowed rotations: as given; or from the grain, where both the drawing's wish (given, or written in the drawing) and
 * the sheet's fibre direction are known; else upright and head down.
 */
export function allowedTurns(laying: LayingSettings, drawingGrain: GrainAxis | undefined): readonly Turn[] {
  if (laying.rotations) return laying.rotations;
  const sheet = grainOfSheet(laying);
  const wish = laying.grain ?? drawingGrain;
  if (laying.grain === 'any') return turnsForGrain('any', 'x');
  if (laying.grain && !sheet) throw inputError('sheet-grain-missing', { where: '--grain', facts: { value: laying.grain } });
  if (laying.sheetGrain && !wish) throw inputError('drawing-grain-missing', { where: '--sheet-grain', facts: { value: laying.sheetGrain } });
  return wish && sheet ? turnsForGrain(wish, sheet) : HEAD_TO_TAIL;
}

function areaRing({ x, y, width, height }: Area): Ring {
  const [left, right, low, high] = [toMicrons(x), toMicrons(x + width), toMicrons(y), toMicrons(y + height)];
  return [{ x: left, y: low }, { x: right, y: low }, { x: right, y: high }, { x: left, y: high }];
}

/** Throws when a part goes onto the usable area in none of its rotations; says by how much in each. */
export function checkFits(part: Part, frame: PreparedSheet['frame']): void {
  const width = toMillimetres(frame.usable.maxX - frame.usable.minX);
  const height = toMillimetres(frame.usable.maxY - frame.usable.minY);
  const box = boxOf(part.outline);
  const tooLarge = part.turns.map((turn): Issue | undefined => {
    const turned = turnBox(box, turn);
    const needs = { width: toMillimetres(turned.maxX - turned.minX), height: toMillimetres(turned.maxY - turned.minY) };
    if (needs.width <= width && needs.height <= height) return undefined;
    return {
      code: 'blank-larger-than-usable',
      severity: 'error',
      where: part.id,
      facts: {
        rotation: degreesOf(turn), needsWidth: needs.width, needsHeight: needs.height, width, height,
        overWidth: Math.max(0, needs.width - width), overHeight: Math.max(0, needs.height - height),
      },
    };
  });
  const reasons = tooLarge.filter((issue) => issue !== undefined);
  if (reasons.length === part.turns.length) throw new InputError(reasons);
}
