import type { Candidate, Cell, Limit, Problem } from '../layout/problem.ts';
import { compareFigures, figuresOf, sameFigures, type Figures } from './rank.ts';
import type { Known } from './search.ts';

/** A layout that keeps every rule, with its figures. */
export interface RankedLayout extends Candidate {
  readonly figures: Figures;
}

/** Something became better: more ups, the same ups in a better order, or a lower proved limit. Never anything worse. */
export type Improvement =
  | { readonly kind: 'layout'; readonly ups: number; readonly source: string; readonly work: number; readonly layout: RankedLayout }
  | { readonly kind: 'limit'; readonly limit: Limit; readonly work: number };

/** Layouts kept beside the best one, to choose truly different ones from. */
const KEPT_LAYOUTS = 40;
/** Densest cells kept for the searches that build on them. */
const KEPT_CELLS = 60;

/** The best of everything met so far. Grows while searches run; what it announces never gets worse. */
export class Incumbents implements Known {
  private readonly problem: Problem;
  private readonly isValid: (candidate: Candidate) => boolean;
  private readonly announce: (event: Improvement) => void;
  private ranked: RankedLayout[] = [];
  private densest: Cell[] = [];
  private tightest: Limit | undefined;
  readonly history: Improvement[] = [];
  /** Counted work so far. */
  work = 0;

  constructor(problem: Problem, isValid: (candidate: Candidate) => boolean, announce: (event: Improvement) => void) {
    this.problem = problem;
    this.isValid = isValid;
    this.announce = announce;
  }

  get best(): RankedLayout | undefined {
    return this.ranked[0];
  }

  get ups(): number {
    return this.best?.figures.ups ?? 0;
  }

  /** Best first, all with the rules kept. */
  get layouts(): readonly RankedLayout[] {
    return this.ranked;
  }

  get cells(): readonly Cell[] {
    return this.densest;
  }

  get limit(): Limit | undefined {
    return this.tightest;
  }

  get limitMet(): boolean {
    return this.tightest !== undefined && this.ups >= this.tightest.ups;
  }

  /** Takes a candidate in when it is good enough and keeps every rule. True when it became the best. */
  offer(candidate: Candidate): boolean {
    if (candidate.placements.length === 0 || candidate.placements.length < this.ups - 1) return false;
    const last = this.ranked[KEPT_LAYOUTS - 1];
    const figures = figuresOf(this.problem, candidate.placements);
    if (last && compareFigures(figures, last.figures) >= 0) return false;
    if (this.ranked.some((known) => sameFigures(known.figures, figures))) return false;
    if (!this.isValid(candidate)) return false;
    const layout = { ...candidate, figures };
    this.ranked = [...this.ranked, layout].toSorted((a, b) => compareFigures(a.figures, b.figures)).slice(0, KEPT_LAYOUTS);
    if (this.ranked[0] !== layout) return false;
    this.record({ kind: 'layout', ups: figures.ups, source: candidate.source, work: this.work, layout });
    return true;
  }

  offerCell(cell: Cell): void {
    const last = this.densest[KEPT_CELLS - 1];
    if (last && cell.density <= last.density) return;
    this.densest = [...this.densest, cell].toSorted((a, b) => b.density - a.density).slice(0, KEPT_CELLS);
  }

  offerLimit(limit: Limit): void {
    const known = this.tightest;
    if (known && (limit.ups > known.ups || (limit.ups === known.ups && limit.value >= known.value))) return;
    this.tightest = limit;
    this.record({ kind: 'limit', limit, work: this.work });
  }

  private record(event: Improvement): void {
    this.history.push(event);
    this.announce(event);
  }
}
