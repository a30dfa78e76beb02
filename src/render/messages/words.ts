import type { Role } from '../../dieline/dieline.ts';
import type { WasteCause } from '../../estimate/waste.ts';
import type { BoundName, StopReason } from '../../layout/problem.ts';
import type { Format } from '../format.ts';
import type { Improvement, LeastSheetFacts, NestFacts } from '../nest-facts.ts';

/** Words on a picture of a sheet. One object a language. */
export interface PictureWords {
  readonly title: (ups: number, size: string) => string;
  readonly description: (designs: string, ups: number) => string;
  readonly reelDescription: (designs: string, ups: number) => string;
  readonly gripperEdge: string;
  readonly sideLay: string;
  readonly machineDirection: string;
  readonly grain: string;
  readonly knifeLimit: string;
  readonly inkLimit: string;
  readonly waste: string;
  readonly bleed: string;
  /** By role; a role without a word is shown under its own name. */
  readonly roles: Readonly<Partial<Record<Role, string>>>;
  /** By the kind that the layout file names; a kind without a word is shown under its own name. */
  readonly keepOuts: Readonly<Record<string, string>>;
}

/** Words of the report of one design on one sheet. Sentences are functions: languages differ in more than words. */
export interface ReportWords {
  readonly title: (facts: NestFacts, format: Format) => string;
  readonly answer: (facts: NestFacts, format: Format) => string;
  readonly headings: { readonly why: (ups: number) => string; readonly board: string; readonly bleed: string; readonly assumed: string; readonly caution: string; readonly history: string; readonly picture: string };
  readonly labels: Readonly<Record<ReportLabel, string>>;
  /** How a limit is known. */
  readonly bounds: Readonly<Record<BoundName, { readonly name: string; readonly meaning: string }>>;
  readonly noLimit: string;
  readonly stopped: Readonly<Record<StopReason, string>>;
  /** By `Candidate.source`; a source without words is shown as it is. */
  readonly sources: Readonly<Record<string, string>>;
  readonly causes: (product: NestFacts['product']) => Readonly<Record<WasteCause, string>>;
  readonly difference: (ups: number, limit: number, format: Format) => string;
  readonly gap: (facts: NestFacts, format: Format) => string;
  readonly bleed: (facts: NestFacts, format: Format) => string;
  /** A row of the list of bleeds: these pairs of stations face each other. */
  readonly facing: (pairs: readonly (readonly [number, number])[]) => string;
  readonly otherEdges: string;
  /** `raised`: more ups than the step before; else the same number in a better arrangement. */
  readonly improvement: (step: Improvement, raised: boolean, format: Format) => string;
  readonly leastSheet: (least: LeastSheetFacts, format: Format) => string;
  readonly axes: { readonly ups: string; readonly seconds: string; readonly work: string };
  readonly caution: string;
}

export type ReportLabel = 'source' | 'limit' | 'difference' | 'stopped' | 'time' | 'gap' | 'bleed' | 'rotations' | 'blank' | 'yield' | 'cell' | 'sheet' | 'seed' | 'atMost' | 'design';
