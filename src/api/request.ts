import { inputError } from '../base/issue.ts';
import { parseSizeMm } from '../base/units.ts';
import { chooseBlank } from '../dieline/choose-blank.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import { mirrorBlank } from '../dieline/mirror-blank.ts';
import type { ReadOptions } from '../dieline/options.ts';
import { readDrawing } from '../dieline/read-drawing.ts';
import { parseRoleRule } from '../dieline/role-rule.ts';
import { turnOfDegrees } from '../geometry/turn.ts';
import type { Effort } from '../nesting/effort.ts';
import { inlineRunner, type TaskRunner } from '../nesting/tasks.ts';
import type { LayingSettings } from '../pipeline/laying.ts';
import type { SearchSettings } from '../pipeline/nest.ts';
import { readNoted } from '../press/known-fields.ts';
import { boardSchema, cutterSchema, pressSchema, readRecord } from '../press/records.ts';
import type { Size } from '../press/sheet-areas.ts';

/** How a drawing is to be read; each field as the option of the command `read`. */
export interface Reading {
  /** Millimetres of one user unit. */
  readonly scale?: number;
  /** Known width of the blank, mm. */
  readonly widthIs?: number;
  /** Which of several blanks, from 1. */
  readonly blank?: number;
  /** Rules such as `Cutting=layer:knife`, first match wins. */
  readonly roles?: readonly string[];
}

/** What `nest` and `compare` have in common. Lengths in millimetres. */
export interface LayingRequest extends Reading {
  /** An SVG, DXF or PDF drawing, or what `read` made of one. */
  readonly drawing: Uint8Array | string | Dieline;
  /** Name of the design in the layout file; by default `design`. */
  readonly name?: string;
  /** Gap, bleed, margins and bar by the names of a press record, such as `{ gap: 5, sideMargins: 8, bar: 'tail:6' }`. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Records of the shop, as their JSON files hold them. */
  readonly press?: unknown;
  readonly cutter?: unknown;
  readonly board?: unknown;
  readonly bleedMeeting?: 'apart' | 'cut';
  /** Degrees, counter-clockwise, quarter turns only. */
  readonly rotations?: readonly number[];
  readonly grain?: 'x' | 'y' | 'any';
  readonly sheetGrain?: 'x' | 'y' | 'long' | 'short';
  readonly drawnFrom?: 'printed' | 'inside';
  /** Default `normal`. */
  readonly effort?: Effort;
  /** Default 1. */
  readonly seed?: number;
  /** Ends the search with the best so far: `stopped` is then `interrupted`, or `seconds` for `AbortSignal.timeout`. */
  readonly signal?: AbortSignal;
  /** Something became better. */
  readonly onImprovement?: SearchSettings['onImprovement'];
  /** Where the tasks of the search run; by default in this thread, which stays responsive between slices of work. */
  readonly runner?: TaskRunner;
}

export function readingOptions({ scale, widthIs, blank, roles = [] }: Reading): Partial<ReadOptions> {
  return {
    roles: roles.map((rule) => parseRoleRule(rule, 'roles')),
    ...(scale !== undefined && { scale }),
    ...(widthIs !== undefined && { widthIs }),
    ...(blank !== undefined && { blank }),
  };
}

export function bytesOf(drawing: Uint8Array | string): Uint8Array {
  return typeof drawing === 'string' ? new TextEncoder().encode(drawing) : drawing;
}

export async function blankOf(request: LayingRequest): Promise<{ drawing: Dieline; blank: Blank }> {
  const { drawing: given } = request;
  const drawing = typeof given === 'string' || given instanceof Uint8Array ? await readDrawing(bytesOf(given), readingOptions(request)) : given;
  const blank = chooseBlank(drawing, request.blank);
  return { drawing, blank: request.drawnFrom === 'inside' ? mirrorBlank(blank) : blank };
}

/** A setting that is passed over spoils a sheet, so none may have another name. */
const settingsSchema = pressSchema.strict();

export function layingOf({ settings, press, cutter, board, bleedMeeting, rotations, grain, sheetGrain }: LayingRequest): Omit<LayingSettings, 'sheet'> {
  return {
    settings: settings === undefined ? {} : readRecord(settingsSchema, settings, 'settings'),
    machines: {
      press: press === undefined ? undefined : readNoted(pressSchema, press, 'press').record,
      cutter: cutter === undefined ? undefined : readNoted(cutterSchema, cutter, 'cutter').record,
      board: board === undefined ? undefined : readNoted(boardSchema, board, 'board').record,
    },
    bleedMeeting,
    rotations: rotations?.map((degrees) => {
      const turn = turnOfDegrees(degrees);
      if (turn === undefined) throw inputError('rotation-not-quarter', { where: 'rotations', facts: { rotation: degrees } });
      return turn;
    }),
    grain,
    sheetGrain,
  };
}

export function searchOf({ effort = 'normal', seed = 1, signal, onImprovement, runner = inlineRunner() }: LayingRequest): SearchSettings {
  return { effort, seed, runner, stop: () => (signal?.aborted ? reasonOf(signal) : undefined), ...(onImprovement && { onImprovement }) };
}

/** `"1020x720"` or sides in millimetres, the first along the gripper edge. */
export function sizeOf(sheet: string | Size, where: string): Size {
  const size = typeof sheet === 'string' ? parseSizeMm(sheet) : sheet;
  if (!size || !(size.width >= 1 && size.height >= 1 && Math.max(size.width, size.height) <= 16_000)) throw inputError('field-not-valid', { where, facts: { reason: 'a size with sides from 1 to 16000 mm is wanted, such as "1020x720"' } });
  return { width: size.width, height: size.height };
}

/** A signal of `AbortSignal.timeout` says that the time is up. */
function reasonOf({ reason }: AbortSignal): 'seconds' | 'interrupted' {
  return (reason as { name?: unknown } | undefined)?.name === 'TimeoutError' ? 'seconds' : 'interrupted';
}
