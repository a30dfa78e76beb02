import type { Box } from '../../geometry/point.ts';

/** Straight cuts through one pile, all the same way, and every pile like it. Lengths in the unit of the boxes. */
export interface CutStep {
  /** Cuts across x stand at places along x; the knife runs along y. */
  readonly axis: 'x' | 'y';
  /** From the pile's left (or lower) edge, rising. */
  readonly places: readonly number[];
  readonly width: number;
  readonly height: number;
  /** Piles cut alike. */
  readonly piles: number;
  /** The pile is turned a quarter before. */
  readonly turned: boolean;
}

/** A cut where it lies on the sheet; `step` is an index. */
export interface CutLine {
  readonly step: number;
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

export interface CutSequence {
  readonly steps: readonly CutStep[];
  readonly lines: readonly CutLine[];
  /** Strokes of the knife for one lift. */
  readonly strokes: number;
  /** Piles turned for one lift. */
  readonly turns: number;
}

/** A pile, the cuts through it and what comes off; undefined: it is a blank, nothing is left to cut. */
interface Stage {
  readonly region: Box;
  readonly axis: 'x' | 'y';
  readonly places: readonly number[];
  readonly parts: readonly (Stage | undefined)[];
  readonly strokes: number;
}

/**
 * Cuts from edge to edge, one pile after the other, that leave exactly the boxes and cut away all else. Piles alike lie
 * side by side under the knife as far as its width allows. Of two ways to begin, the one with fewer strokes. Undefined
 * when some pile cannot be cut through without cutting into a box, or is longer than the knife: the layout cannot be
 * guillotined.
 */
export function cutSequence(sheet: Box, boxes: readonly Box[], knifeWidth: number): CutSequence | undefined {
  const known = new Map<string, Stage | 'blank' | 'impossible'>();
  const top = stageFor(sheet, boxes, knifeWidth, known);
  if (top === 'impossible' || boxes.length === 0) return undefined;
  if (top === 'blank') return { steps: [], lines: [], strokes: 0, turns: 0 };
  return inOrder(top, knifeWidth);
}

function stageFor(region: Box, boxes: readonly Box[], knifeWidth: number, known: Map<string, Stage | 'blank' | 'impossible'>): Stage | 'blank' | 'impossible' {
  const key = keyOf(region, boxes);
  const found = known.get(key);
  if (found !== undefined) return typeof found === 'string' ? found : moved(found, region);
  if (boxes.length === 1 && sameBox(region, boxes[0]!)) return 'blank';
  // While it is worked out a pile like this one is none that could be reached.
  known.set(key, 'impossible');
  const stages = (['y', 'x'] as const).flatMap((axis) => stageAcross(axis, region, boxes, knifeWidth, known) ?? []);
  const best = stages.reduce<Stage | undefined>((least, stage) => (least && least.strokes <= stage.strokes ? least : stage), undefined);
  known.set(key, best ?? 'impossible');
  return best ?? 'impossible';
}

function stageAcross(axis: 'x' | 'y', region: Box, boxes: readonly Box[], knifeWidth: number, known: Map<string, Stage | 'blank' | 'impossible'>): Stage | undefined {
  const [low, high] = axis === 'x' ? (['minX', 'maxX'] as const) : (['minY', 'maxY'] as const);
  if (alongKnife(region, axis) > knifeWidth) return undefined;
  const groups = groupsAlong(boxes, low, high);
  const edges = groups.flatMap(({ from, to }) => [from, to]);
  const places = [...new Set(edges)].filter((at) => at > region[low] && at < region[high]);
  if (places.length === 0) return undefined;
  const parts = groups.map((group) => stageFor({ ...region, [low]: group.from, [high]: group.to }, group.boxes, knifeWidth, known));
  if (parts.includes('impossible')) return undefined;
  const stages = parts.map((part) => (part === 'blank' ? undefined : (part as Stage)));
  const own = { region, axis, places: places.map((at) => at - region[low]), parts: stages };
  return { ...own, strokes: places.length + alike(stages).reduce((sum, { stage, piles }) => sum + strokesOf(stage, piles, knifeWidth), 0) };
}

/** Strokes for so many piles alike: several at a time under the knife, the piles that come of them likewise. */
function strokesOf(stage: Stage, piles: number, knifeWidth: number): number {
  return stage.places.length * loads(stage, piles, knifeWidth) + alike(stage.parts).reduce((sum, part) => sum + strokesOf(part.stage, part.piles * piles, knifeWidth), 0);
}

function loads({ region, axis }: Pick<Stage, 'region' | 'axis'>, piles: number, knifeWidth: number): number {
  return Math.ceil(piles / Math.floor(knifeWidth / alongKnife(region, axis)));
}

function alongKnife(region: Box, axis: 'x' | 'y'): number {
  return axis === 'x' ? region.maxY - region.minY : region.maxX - region.minX;
}

interface Group {
  readonly from: number;
  readonly to: number;
  readonly boxes: readonly Box[];
}

/** Boxes whose spans overlap stay together; between groups a cut goes through. */
function groupsAlong(boxes: readonly Box[], low: 'minX' | 'minY', high: 'maxX' | 'maxY'): Group[] {
  const groups: { from: number; to: number; boxes: Box[] }[] = [];
  for (const box of boxes.toSorted((a, b) => a[low] - b[low])) {
    const last = groups.at(-1);
    if (last && box[low] < last.to) {
      last.boxes.push(box);
      last.to = Math.max(last.to, box[high]);
    } else groups.push({ from: box[low], to: box[high], boxes: [box] });
  }
  return groups;
}

/** Stages alike once, with their number, in the order in which they come. */
function alike(parts: readonly (Stage | undefined)[]): { stage: Stage; piles: number }[] {
  const byKey = new Map<string, { stage: Stage; piles: number }>();
  for (const stage of parts) {
    if (!stage) continue;
    const known = byKey.get(stageKey(stage));
    if (known) known.piles++;
    else byKey.set(stageKey(stage), { stage, piles: 1 });
  }
  return [...byKey.values()];
}

function inOrder(top: Stage, knifeWidth: number): CutSequence {
  const steps: CutStep[] = [];
  const lines: CutLine[] = [];
  let strokes = 0;
  let turns = 0;
  const put = (stages: readonly Stage[], axisBefore: 'x' | 'y' | undefined): void => {
    const [first] = stages;
    const { region, axis, places } = first!;
    const step = steps.length;
    const turned = axisBefore !== undefined && axisBefore !== axis;
    steps.push({ axis, places, width: region.maxX - region.minX, height: region.maxY - region.minY, piles: stages.length, turned });
    strokes += places.length * loads(first!, stages.length, knifeWidth);
    if (turned) turns += stages.length;
    for (const stage of stages) for (const at of stage.places) lines.push(lineOf(stage, at, step));
    const parts = stages.flatMap((stage) => stage.parts.filter((part) => part !== undefined));
    for (const group of grouped(parts)) put(group, axis);
  };
  put([top], undefined);
  return { steps, lines, strokes, turns };
}

function grouped(stages: readonly Stage[]): Stage[][] {
  const byKey = new Map<string, Stage[]>();
  for (const stage of stages) byKey.set(stageKey(stage), [...(byKey.get(stageKey(stage)) ?? []), stage]);
  return [...byKey.values()];
}

function lineOf({ region, axis }: Stage, at: number, step: number): CutLine {
  return axis === 'x' ? { step, axis, at: region.minX + at, from: region.minY, to: region.maxY } : { step, axis, at: region.minY + at, from: region.minX, to: region.maxX };
}

/** Piles with the same key are cut alike. */
function stageKey({ region, axis, places, parts }: Stage): string {
  return `${region.maxX - region.minX},${region.maxY - region.minY}${axis}${places.join()}(${parts.map((part) => (part ? stageKey(part) : '.')).join(';')})`;
}

function keyOf(region: Box, boxes: readonly Box[]): string {
  const places = boxes.map((box) => [box.minX - region.minX, box.minY - region.minY, box.maxX - box.minX, box.maxY - box.minY].join()).sort();
  return `${region.maxX - region.minX},${region.maxY - region.minY}:${places.join(';')}`;
}

function sameBox(a: Box, b: Box): boolean {
  return a.minX === b.minX && a.minY === b.minY && a.maxX === b.maxX && a.maxY === b.maxY;
}

/** The stage as it lies in another region of the same size. */
function moved(stage: Stage, region: Box): Stage {
  const [dx, dy] = [region.minX - stage.region.minX, region.minY - stage.region.minY];
  if (dx === 0 && dy === 0) return stage;
  const shift = (one: Stage): Stage => ({
    ...one,
    region: { minX: one.region.minX + dx, minY: one.region.minY + dy, maxX: one.region.maxX + dx, maxY: one.region.maxY + dy },
    parts: one.parts.map((part) => part && shift(part)),
  });
  return shift(stage);
}
