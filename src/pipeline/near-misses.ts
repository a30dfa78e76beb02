import { InputError } from '../base/issue.ts';
import { toMicrons, toMillimetres } from '../base/units.ts';
import { boardCost, boardWeight } from '../estimate/board.ts';
import { costPerSheet } from '../estimate/die-choice.ts';
import type { Placement, Problem } from '../layout/problem.ts';
import type { SoundLayout } from '../layout/sound.ts';
import type { Rates } from '../press/rates.ts';
import type { Size } from '../press/sheet-areas.ts';
import type { NearMiss, NearMissFacts, Saving } from '../render/near-miss-facts.ts';
import { commonKnifeGrid } from './common-knife.ts';
import { createLook } from './look.ts';
import { changesOf, type Change, type StyledSource } from './near-miss-changes.ts';
import { prepareNest, type NestJob, type SearchSettings } from './nest.ts';
import { keepsRule } from './stripping-choice.ts';

export interface NearMissTerms {
  /** Cartons a year. */
  readonly yearly: number | undefined;
  /** g/m² */
  readonly grammage: number | undefined;
  readonly pricePerTonne: number | undefined;
  readonly rates: Rates;
  readonly currency: string;
}

/** What stands already: the layout whose neighbours are looked for. */
export interface Standing {
  readonly job: NestJob;
  readonly problem: Problem;
  readonly placements: readonly Placement[];
  /** Where the blank was drawn from dimensions: its flaps are then changed by name. */
  readonly style?: StyledSource | undefined;
}

/** Changes are tried in steps of this, mm: finer than any knife is set. */
const STEP_MM = 0.1;

/**
 * Which single change brings more ups, and how little of it is enough: each thing is changed as far as is sensible; where
 * that brings more, halving finds the least step that a quick search still confirms, for the next up and, where the whole
 * change brings a row, for that too. Larger changes leave more room, so halving is right; a search that misses a layout
 * only makes the claim too modest. Every claim carries a judged layout.
 */
export async function nearMisses({ job, problem, placements, style }: Standing, terms: NearMissTerms, search: ChangeSearch, changes = changesOf(job, problem, style)): Promise<NearMissFacts> {
  const look = createLook(search);
  let work = 0;
  const ups = placements.length;
  const layoutAt: LayoutAt = async (change, byMm) => {
    const changed = possible(() => change.at(byMm));
    if (!changed) return undefined;
    if (change.commonKnife) return commonKnifeOf(changed);
    const seen = await look(changed, { depth: 'patterns', start: change.otherBlank ? undefined : placements });
    work += seen?.work ?? 0;
    return seen?.layout.file;
  };
  const found: NearMiss[] = [];
  const notFound: { thing: string; from?: number; to?: number }[] = [];
  let tried = 0;
  const worth = savingOf({ sheet: job.sheet, ups }, terms);
  const counts = runningCost(job.sheet, terms) === undefined ? 'board' : 'board and machines';
  const soFar = (): NearMissFacts => {
    const byWorth = found.toSorted((a, b) => b.saved.m2PerThousand - a.saved.m2PerThousand);
    return { ups, sheet: job.sheet, yearly: terms.yearly, currency: terms.currency, counts, found: byWorth, notFound: [...notFound], tried, changes: changes.length, stepMm: STEP_MM, work };
  };
  for (const change of changes) {
    if (search.stop() !== undefined) break;
    search.onProgress?.(soFar());
    const valueAt = (byMm: number | undefined) => (change.from === undefined || byMm === undefined ? {} : { from: change.from, to: rounded(change.from + change.sign * byMm) });
    const before = found.length;
    for await (const { byMm, file } of claimsOf(change, ups, layoutAt)) {
      const fresh = { sheet: file.sheet, ups: file.placements.length };
      found.push({ thing: change.thing, ...valueAt(byMm), ups: fresh.ups, layout: file, boardM2PerThousand: m2PerThousand(fresh), saved: worth(fresh) });
      search.onProgress?.(soFar());
    }
    const isOfNoUse = found.length === before;
    // One that was cut short might still have brought something; what it has brought is judged and stands.
    if (isOfNoUse && search.stop() !== undefined) break;
    tried++;
    if (isOfNoUse) notFound.push({ thing: change.thing, ...valueAt(change.most) });
  }
  return soFar();
}

interface ChangeSearch extends Pick<SearchSettings, 'seed' | 'runner' | 'stop'> {
  /** Hears what was found so far: before each change, and with each near miss. */
  readonly onProgress?: (soFar: NearMissFacts) => void;
}

/** The layout found with the thing changed by so many mm. */
type LayoutAt = (change: Change, byMm: number) => Promise<SoundLayout | undefined>;

interface Claim {
  readonly byMm: number | undefined;
  readonly file: SoundLayout;
}

/** The least change that brings one more up, then the least that brings as many as the whole change, where that is more. */
async function* claimsOf(change: Change, ups: number, layoutAt: LayoutAt): AsyncGenerator<Claim> {
  if (change.most === undefined) {
    const file = await layoutAt(change, 0);
    if (file && file.placements.length > ups) yield { byMm: undefined, file };
    return;
  }
  const steps = Math.floor(change.most / STEP_MM + 1e-6);
  const whole = steps < 1 ? undefined : await layoutAt(change, rounded(steps * STEP_MM));
  if (!whole || whole.placements.length <= ups) return;
  // Steps looked at, so that the second halving need not look again.
  const looked = new Map<number, SoundLayout | undefined>([[steps, whole]]);
  const layoutAfter = async (count: number) => {
    if (!looked.has(count)) looked.set(count, await layoutAt(change, rounded(count * STEP_MM)));
    return looked.get(count);
  };
  const claim = (count: number): Claim => ({ byMm: rounded(count * STEP_MM), file: looked.get(count)! });
  const next = await leastSteps(steps, ups + 1, layoutAfter);
  yield claim(next);
  if (looked.get(next)!.placements.length >= whole.placements.length) return;
  const row = await leastSteps(steps, whole.placements.length, layoutAfter);
  if (row !== next) yield claim(row);
}

/** Halves between nothing and the whole change, which is known to bring so many. */
async function leastSteps(most: number, wanted: number, layoutAfter: (count: number) => Promise<SoundLayout | undefined>): Promise<number> {
  let [low, high] = [0, most];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (((await layoutAfter(middle))?.placements.length ?? 0) >= wanted) high = middle;
    else low = middle;
  }
  return high;
}

/** A flap that its neighbours do not allow so short is no near miss. */
function possible<Value>(make: () => Value): Value | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

function commonKnifeOf(job: NestJob): SoundLayout | undefined {
  const { problem, design, stripping } = prepareNest(job);
  const layout = commonKnifeGrid(problem, design);
  return layout && keepsRule(layout, stripping) ? layout : undefined;
}

/** Steps are tenths; a tenth is no binary fraction. */
function rounded(mm: number): number {
  return toMillimetres(toMicrons(mm));
}

interface SheetUps {
  readonly sheet: Size;
  readonly ups: number;
}

function m2PerThousand({ sheet, ups }: SheetUps): number {
  return (sheet.width * sheet.height) / 1000 / ups;
}

/** What a layout saves against the one that stands. */
function savingOf(standing: SheetUps, terms: NearMissTerms): (fresh: SheetUps) => Saving {
  const { yearly, grammage } = terms;
  const perCarton = ({ sheet, ups }: SheetUps) => {
    const cost = runningCost(sheet, terms) ?? boardOfSheet(sheet, terms);
    return cost === undefined ? undefined : cost / ups;
  };
  return (fresh) => {
    const m2 = m2PerThousand(standing) - m2PerThousand(fresh);
    const m2PerYear = yearly === undefined ? undefined : (m2 * yearly) / 1000;
    const [before, after] = [perCarton(standing), perCarton(fresh)];
    return {
      m2PerThousand: m2,
      m2PerYear,
      kgPerYear: m2PerYear === undefined || grammage === undefined ? undefined : (m2PerYear * grammage) / 1000,
      moneyPerYear: yearly === undefined || before === undefined || after === undefined ? undefined : (before - after) * yearly,
    };
  };
}

const boardOf = ({ width, height }: Size, grammage: number) => ({ widthMm: width, heightMm: height, grammage });

function boardOfSheet(sheet: Size, { grammage, pricePerTonne, currency }: NearMissTerms): number | undefined {
  if (grammage === undefined || pricePerTonne === undefined) return undefined;
  return boardCost(boardWeight(1, boardOf(sheet, grammage)), pricePerTonne, currency).value!;
}

/** Board, press and die-cutter of one sheet; undefined where a rate is missing. */
function runningCost(sheet: Size, { grammage, pricePerTonne, rates: { press, cutter }, currency }: NearMissTerms): number | undefined {
  if (grammage === undefined || pricePerTonne === undefined || !press?.hourlyRate || !press.speed || !cutter?.hourlyRate || !cutter.speed) return undefined;
  const kgPerSheet = boardWeight(1, boardOf(sheet, grammage));
  return costPerSheet({ kgPerSheet, pricePerTonne, pressRate: press.hourlyRate, pressSpeed: press.speed, cutterRate: cutter.hourlyRate, cutterSpeed: cutter.speed }, currency).value!;
}

