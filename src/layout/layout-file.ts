import { z } from 'zod';
import { InputError, inputError, type Issue } from '../base/issue.ts';
import { MICRONS_PER_MM } from '../base/units.ts';
import { COMMON_KNIFE_REASONS, FACING_SIDES, type CommonKnifePair } from './common-knife-pairs.ts';
import { COORDINATE_LIMIT } from '../geometry/point.ts';

/**
 * The layout file, version 1. Millimetres; sheet origin lower left, y = 0 the gripper edge and y growing away from it.
 * A point of a design's outline goes onto the sheet by turning it counter-clockwise by `rotation` degrees about the
 * design's origin, then adding (x, y).
 */
export type MmPoint = readonly [number, number];
/** Closed, last point not repeated. */
export type MmRing = readonly MmPoint[];

export interface MmArea {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The true curves of a design, SVG path data in the design's own millimetres, y up. */
export interface DesignDrawing {
  /** Of the drawing's bytes. */
  readonly fingerprint?: string;
  /** The true outline, of which `Design.outline` is the polygon. */
  readonly outline?: string;
  readonly openings?: readonly string[];
  /** Every rule with its role, each physical line once. */
  readonly paths: readonly { readonly role: string; readonly d: string }[];
}

export interface Design {
  readonly id: string;
  /** Counter-clockwise polygon that holds the true blank; its box has its lower left corner at the origin. */
  readonly outline: MmRing;
  /** Each clockwise. */
  readonly openings: readonly MmRing[];
  /** Allowed rotations, degrees counter-clockwise. */
  readonly rotations: readonly number[];
  readonly drawing?: DesignDrawing;
}

export interface PlacedBlank {
  /** Id of a design. */
  readonly design: string;
  readonly rotation: number;
  readonly x: number;
  readonly y: number;
}

export interface LayoutRules {
  readonly gap: number;
  readonly bleed: number;
  readonly bleedMeeting: 'apart' | 'cut';
  readonly commonKnife: boolean;
  /** Sides of the drawing that may share a knife; absent: any, where `commonKnife` holds. */
  readonly commonKnifePairs?: readonly CommonKnifePair[];
}

export interface LayoutFile {
  readonly sheet: { readonly width: number; readonly height: number };
  /** Where knives may be. */
  readonly usable: MmArea;
  /** Where ink may be. */
  readonly printable: MmArea;
  readonly lay: 'left' | 'right';
  readonly keepOut: readonly { readonly kind: string; readonly ring: MmRing }[];
  readonly rules: LayoutRules;
  readonly designs: readonly Design[];
  /** In station order. */
  readonly placements: readonly PlacedBlank[];
  /** What the maker says of the layout. Carried along, never believed. */
  readonly result?: Readonly<Record<string, unknown>>;
}

export const LAYOUT_FORMAT = 'blankwright-layout';
export const LAYOUT_VERSION = 1;

/** A file from anyone may be of any size; these keep reading and judging within seconds. */
const MOST_POINTS = 20_000;
const MOST_DESIGNS = 1_000;
const MOST_KEEP_OUTS = 1_000;
const MOST_PLACEMENTS = 100_000;
const MOST_PATHS = 20_000;
const MOST_PAIRS = 16;
const LONGEST_PATH = 4_000_000;
const FARTHEST = COORDINATE_LIMIT / MICRONS_PER_MM;

const coordinate = z.number().min(-FARTHEST).max(FARTHEST);
const length = z.number().min(0).max(FARTHEST);
const extent = z.number().positive().max(FARTHEST);
const ring = z.array(z.tuple([coordinate, coordinate])).min(3).max(MOST_POINTS);
const area = z.looseObject({ x: coordinate, y: coordinate, width: extent, height: extent });
const pathData = z.string().max(LONGEST_PATH);

const drawing = z.looseObject({
  fingerprint: z.string().optional(),
  outline: pathData.optional(),
  openings: z.array(pathData).max(MOST_PATHS).optional(),
  paths: z.array(z.looseObject({ role: z.string(), d: pathData })).max(MOST_PATHS).default([]),
});

export const layoutFileSchema = z.looseObject({
  units: z.literal('mm'),
  sheet: z.looseObject({ width: extent, height: extent }),
  usable: area,
  printable: area.optional(),
  lay: z.enum(['left', 'right']).default('left'),
  keepOut: z.array(z.looseObject({ kind: z.string(), ring })).max(MOST_KEEP_OUTS).default([]),
  rules: z.looseObject({
    gap: length,
    bleed: length,
    bleedMeeting: z.enum(['apart', 'cut']).default('apart'),
    commonKnife: z.boolean().default(false),
    commonKnifePairs: z.array(z.looseObject({ sides: z.tuple([z.enum(FACING_SIDES), z.enum(FACING_SIDES)]), reason: z.enum(COMMON_KNIFE_REASONS) })).max(MOST_PAIRS).optional(),
  }),
  designs: z
    .array(
      z.looseObject({
        id: z.string(),
        outline: ring,
        openings: z.array(ring).max(MOST_PATHS).default([]),
        rotations: z.array(z.number()).min(1).max(360).default([0, 90, 180, 270]),
        drawing: drawing.optional(),
      }),
    )
    .min(1)
    .max(MOST_DESIGNS),
  placements: z.array(z.looseObject({ design: z.string(), rotation: z.number(), x: coordinate, y: coordinate })).max(MOST_PLACEMENTS),
  result: z.unknown().optional(),
});

/**
 * Takes in a parsed layout file from anyone. Fields that may be absent get their defaults; unknown fields are left
 * aside. Whether rings are simple and placements possible is the judge's matter. `where` names the file.
 * Throws an InputError with a path for every field that is wrong.
 */
export function readLayoutFile(content: unknown, where: string): LayoutFile {
  checkFormat(content, where);
  const parsed = layoutFileSchema.safeParse(content);
  if (!parsed.success) throw new InputError(parsed.error.issues.slice(0, MOST_REASONS).map((issue) => fieldIssue(issue, where)));
  const { sheet, usable, printable, lay, keepOut, rules, designs, placements, result } = parsed.data;
  return {
    sheet: { width: sheet.width, height: sheet.height },
    usable: areaOf(usable),
    printable: printable ? areaOf(printable) : { x: 0, y: 0, width: sheet.width, height: sheet.height },
    lay,
    keepOut: keepOut.map((area) => ({ kind: area.kind, ring: area.ring })),
    rules: { gap: rules.gap, bleed: rules.bleed, bleedMeeting: rules.bleedMeeting, commonKnife: rules.commonKnife, ...(rules.commonKnifePairs && { commonKnifePairs: rules.commonKnifePairs.map(({ sides, reason }) => ({ sides, reason })) }) },
    designs: designs.map((design) => ({
      id: design.id,
      outline: design.outline,
      openings: design.openings,
      rotations: design.rotations,
      ...(design.drawing && { drawing: drawingOf(design.drawing) }),
    })),
    placements: placements.map(({ design, rotation, x, y }) => ({ design, rotation, x, y })),
    ...(isRecord(result) && { result }),
  };
}

/** One wrong field per kind of mistake is enough to mend a file; more would only scroll. */
const MOST_REASONS = 20;

function checkFormat(content: unknown, where: string): void {
  if (!isRecord(content) || content['format'] !== LAYOUT_FORMAT) throw inputError('layout-format', { where, facts: { format: LAYOUT_FORMAT } });
  if (content['version'] !== LAYOUT_VERSION) throw inputError('layout-version', { where, facts: { found: (JSON.stringify(content['version']) ?? 'none').slice(0, 40), version: LAYOUT_VERSION } });
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function fieldIssue(issue: z.core.$ZodIssue, where: string): Issue {
  return { code: 'layout-field', severity: 'error', where, facts: { field: fieldName(issue.path), wanted: wanted(issue) } };
}

/** `designs[0].outline[3][1]` */
function fieldName(path: readonly PropertyKey[]): string {
  return path.map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`)).join('').replace(/^\./, '') || 'the whole file';
}

function wanted(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'number' ? 'a finite number' : `${/^[aeiou]/.test(issue.expected) ? 'an' : 'a'} ${issue.expected}`;
    case 'invalid_value':
      return issue.values.map(String).join(' or ');
    case 'too_small':
      return issue.origin === 'number' ? `a number ${issue.inclusive ? 'not under' : 'over'} ${issue.minimum}` : `at least ${issue.minimum} entries`;
    case 'too_big':
      return issue.origin === 'number' ? `a number not over ${issue.maximum}` : `at most ${issue.maximum} entries`;
    default:
      return issue.message;
  }
}

function areaOf({ x, y, width, height }: MmArea): MmArea {
  return { x, y, width, height };
}

function drawingOf(read: z.output<typeof drawing>): DesignDrawing {
  return {
    ...(read.fingerprint !== undefined && { fingerprint: read.fingerprint }),
    ...(read.outline !== undefined && { outline: read.outline }),
    ...(read.openings && { openings: read.openings }),
    paths: read.paths.map(({ role, d }) => ({ role, d })),
  };
}

/**
 * The file's text: keys in a fixed order, lengths with at most three decimals, one line a placement, so that equal
 * layouts are equal bytes and a difference of two layouts can be read.
 */
export function writeLayoutFile(layout: LayoutFile): string {
  const { sheet, usable, printable, lay, keepOut, rules, designs, placements, result } = layout;
  const entries: [string, string][] = [
    ['format', JSON.stringify(LAYOUT_FORMAT)],
    ['version', String(LAYOUT_VERSION)],
    ['units', '"mm"'],
    ['sheet', object([['width', mm(sheet.width)], ['height', mm(sheet.height)]])],
    ['usable', areaText(usable)],
    ['printable', areaText(printable)],
    ['lay', JSON.stringify(lay)],
    ['keepOut', lines(keepOut.map(({ kind, ring }) => object([['kind', JSON.stringify(kind)], ['ring', ringText(ring)]])))],
    ['rules', object([
      ['gap', mm(rules.gap)],
      ['bleed', mm(rules.bleed)],
      ['bleedMeeting', JSON.stringify(rules.bleedMeeting)],
      ['commonKnife', String(rules.commonKnife)],
      ...(rules.commonKnifePairs ? [['commonKnifePairs', JSON.stringify(rules.commonKnifePairs)] as const] : []),
    ])],
    ['designs', lines(designs.map(designText))],
    ['placements', lines(placements.map(({ design, rotation, x, y }) =>
      object([['design', JSON.stringify(design)], ['rotation', String(rotation)], ['x', mm(x)], ['y', mm(y)]])))],
  ];
  if (result) entries.push(['result', JSON.stringify(result)]);
  return `{\n${entries.map(([key, value]) => `  ${JSON.stringify(key)}: ${value}`).join(',\n')}\n}\n`;
}

function designText({ id, outline, openings, rotations, drawing }: Design): string {
  const entries: [string, string][] = [
    ['id', JSON.stringify(id)],
    ['outline', ringText(outline)],
    ['openings', `[${openings.map(ringText).join(', ')}]`],
    ['rotations', `[${rotations.join(', ')}]`],
  ];
  if (drawing) {
    const { fingerprint, outline: trueOutline, openings: trueOpenings, paths } = drawing;
    entries.push(['drawing', JSON.stringify({ fingerprint, outline: trueOutline, openings: trueOpenings, paths: paths.map(({ role, d }) => ({ role, d })) })]);
  }
  return object(entries);
}

function object(entries: readonly (readonly [string, string])[]): string {
  return `{ ${entries.map(([key, value]) => `${JSON.stringify(key)}: ${value}`).join(', ')} }`;
}

function lines(values: readonly string[]): string {
  return values.length === 0 ? '[]' : `[\n${values.map((value) => `    ${value}`).join(',\n')}\n  ]`;
}

function areaText({ x, y, width, height }: MmArea): string {
  return object([['x', mm(x)], ['y', mm(y)], ['width', mm(width)], ['height', mm(height)]]);
}

function ringText(ring: MmRing): string {
  return `[${ring.map(([x, y]) => `[${mm(x)}, ${mm(y)}]`).join(', ')}]`;
}

/** Adding 0 turns −0 into 0. */
function mm(value: number): string {
  return String(Math.round(value * MICRONS_PER_MM) / MICRONS_PER_MM + 0);
}
