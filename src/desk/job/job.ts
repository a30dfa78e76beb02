import type { LayoutFile } from '../../layout/layout-file.ts';
import type { StopReason } from '../../layout/problem.ts';
import type { Effort } from '../../nesting/effort.ts';
import type { Issue } from '../../base/issue.ts';
import type { NearMiss } from '../../render/near-miss-facts.ts';
import type { Improvement, LimitStep } from '../../render/nest-facts.ts';
import type { DrawingSource, LimitFacts } from '../engine/protocol.ts';
import type { KeptSteps } from '../hand/last-steps.ts';
import { newId } from '../new-id.ts';
import { NO_OUTLINES, type Outlines } from './outlines.ts';
import { NO_RATES, type RateName } from './rate-fields.ts';
import { NO_VERSIONS, type Versions } from './versions.ts';

/**
 * One job as it lies on the desk: everything that is kept and can be undone. Fields that a person types stay as typed;
 * an empty one means the usual value. Plain data.
 */
export interface Job {
  readonly format: 'blankwright-job';
  readonly version: 1;
  /** Under which it is kept; no two jobs have one. */
  readonly id: string;
  readonly name: string;
  readonly drawing: DrawingSource | undefined;
  readonly drawnFrom: 'printed' | 'inside';
  readonly sheet: SheetFields;
  readonly limits: LimitFields;
  readonly effort: Effort;
  readonly layouts: readonly KeptLayout[];
  /** Id of the layout that is shown, handed over and quoted. */
  readonly chosen: string | undefined;
  /** Ids of up to two layouts side by side with the chosen one. */
  readonly beside: readonly string[];
  readonly versions: Versions;
  readonly outlines: Outlines;
  readonly money: MoneyFields;
  readonly handover: HandoverFields;
}

export interface SheetFields {
  readonly size: string;
  /** Ids of records. */
  readonly press: string;
  readonly cutter: string;
  readonly board: string;
  readonly sheetGrain: '' | 'x' | 'y' | 'long' | 'short';
}

export const LIMIT_LENGTHS = ['gripper', 'tail', 'sideLeft', 'sideRight', 'inkGripper', 'inkTail', 'inkSides', 'gap', 'bleed'] as const;
export type LimitLength = (typeof LIMIT_LENGTHS)[number];

export interface LimitFields extends Readonly<Record<LimitLength, string>> {
  readonly bar: '' | 'none' | 'tail' | 'gripper' | 'centre';
  readonly barHeight: string;
  readonly bleedMeeting: 'apart' | 'cut';
  /** Degrees with commas, or by grain. */
  readonly rotations: '' | '0' | '0,180' | '0,90' | '0,90,180,270';
  readonly grain: '' | 'x' | 'y' | 'any';
  readonly lay: '' | 'left' | 'right';
}

export interface MoneyFields extends Readonly<Record<RateName, string>> {
  /** Id of the record of rates; empty for the last one taken in, `none` for none. */
  readonly ratesRecord: string;
  readonly quantities: string;
  readonly grammage: string;
  readonly boardPrice: string;
  readonly currency: string;
  readonly colours: string;
  readonly varnishUnits: string;
  readonly stages: readonly string[];
  /** Whether the labelled invented rates fill what is not typed. */
  readonly inventedRates: boolean;
}

export interface HandoverFields {
  readonly layoutNumber: string;
  readonly revision: string;
  readonly approvedBy: string;
  readonly product: string;
  readonly quantity: string;
  readonly date: string;
}

/** A layout with what is known of it. */
export interface KeptLayout {
  readonly id: string;
  readonly file: LayoutFile;
  readonly state: 'not judged' | 'sound' | 'faulty';
  readonly source: string;
  /** Made or changed by hand. */
  readonly byHand?: boolean;
  /** The single change that it shows, and the inputs that it changes: `inputsOf` of that moment. */
  readonly changed?: (Pick<NearMiss, 'thing' | 'from' | 'to'> & { readonly of?: string }) | undefined;
  /** The last steps under the hand, so that they can be taken back after the page was opened anew. */
  readonly steps?: KeptSteps | undefined;
  /** Numbers of placements that are locked under the hand. */
  readonly locked?: readonly number[];
  /** It came with a job's file: its blank must be the one on the desk. */
  readonly fromFile?: boolean;
  /** What it was made from: `inputsOf` of that moment. */
  readonly inputs: string;
  readonly limit: LimitFacts | undefined;
  readonly stopped: StopReason;
  readonly seconds: number | undefined;
  readonly notes: readonly Issue[];
  readonly history: readonly Improvement[];
  readonly limits: readonly LimitStep[];
}

export const EMPTY_JOB: Job = {
  format: 'blankwright-job',
  version: 1,
  id: '',
  name: '',
  drawing: undefined,
  drawnFrom: 'printed',
  sheet: { size: '1020x720', press: '', cutter: '', board: '', sheetGrain: '' },
  limits: {
    gripper: '', tail: '', sideLeft: '', sideRight: '', inkGripper: '', inkTail: '', inkSides: '', gap: '', bleed: '',
    bar: '', barHeight: '6', bleedMeeting: 'apart', rotations: '', grain: '', lay: '',
  },
  effort: 'normal',
  layouts: [],
  chosen: undefined,
  beside: [],
  versions: NO_VERSIONS,
  outlines: NO_OUTLINES,
  money: {
    quantities: '5000, 20000, 50000', grammage: '', boardPrice: '', currency: 'EUR', colours: '4', varnishUnits: '0', stages: ['die-cutting', 'gluing'],
    inventedRates: false, ratesRecord: '', ...NO_RATES,
  },
  handover: { layoutNumber: '', revision: '', approvedBy: '', product: '', quantity: '', date: '' },
};

/** A job with nothing on it yet. */
export function newJob(id: string = newId()): Job {
  return { ...EMPTY_JOB, id };
}

/** The next job of the same shop: sheet, machines, limits and rates stay as they lie; what belongs to one carton or one order begins anew. */
export function nextJob({ sheet, limits, effort, money }: Job): Job {
  const { rotations, grain } = EMPTY_JOB.limits;
  return { ...newJob(), sheet, limits: { ...limits, rotations, grain }, effort, money: { ...money, quantities: EMPTY_JOB.money.quantities } };
}

/** That of the job's money; euros where none is typed. */
export function currencyOf({ currency }: Pick<MoneyFields, 'currency'>): string {
  return currency || 'EUR';
}
