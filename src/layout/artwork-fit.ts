import { inputError, type Issue } from '../base/issue.ts';
import { cutsThrough } from '../dieline/knife-roles.ts';
import type { Role } from '../dieline/dieline.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { readPathData } from '../geometry/path-data.ts';
import { boxOf, type Box, type Point } from '../geometry/point.ts';
import { segmentDistance } from '../geometry/distance.ts';
import type { Design } from './layout-file.ts';

/** What is known of a page of artwork. Millimetres from the page's lower left corner as it is looked at, y up. */
export interface ArtworkContent {
  readonly width: number;
  readonly height: number;
  /** As the page declares them. */
  readonly trim: Box | undefined;
  readonly bleed: Box | undefined;
  /** Boxes of the die lines that are drawn in it under a name. */
  readonly dieLines: readonly Box[];
  /** Box of all filled areas and images; undefined where there are none or they were not looked at. */
  readonly ink: Box | undefined;
  /** Where lines of text begin. */
  readonly texts: readonly { readonly content: string; readonly place: Point; readonly heightMm: number }[];
}

export type FittedBy = 'given' | 'die line' | 'trim box' | 'page';

export interface ArtworkFit {
  /** Place of the page's lower left corner in the design's axes, mm. */
  readonly offset: Point;
  readonly by: FittedBy;
  readonly issues: readonly Issue[];
}

/** Two sizes that differ by less are one, mm: what drawing programs and paper sizes round. */
const SAME_SIZE_MM = 0.3;

/** Text and fine lines stay so far from a knife, mm: print-to-cut tolerance and a little; common practice, no source. */
export const LIVE_MATTER_MM = 2;

/** Of one matter so many are listed one by one. */
const LISTED = 10;

/**
 * Lays a page of artwork on a design: by the place given, by the die line drawn in it, by its trim box, or by the middle of
 * its page where that is the blank with one and the same bleed all round. Says what bleed is missing on which edge and which
 * texts stand too near a knife. Throws InputError `artwork-other-die-line` or `artwork-size`.
 */
export function fitArtwork(content: ArtworkContent, design: Design, { bleed, at, where }: { readonly bleed: number; readonly at?: Point | undefined; readonly where: string }): ArtworkFit {
  const blank = boxOf(design.outline.map(([x, y]) => ({ x, y })));
  const { offset, by } = placed(content, blank, at, where);
  return { offset, by, issues: [...missingBleed(content, blank, offset, bleed, where), ...nearKnives(content, design, offset, where)] };
}

function placed(content: ArtworkContent, blank: Box, at: Point | undefined, where: string): Pick<ArtworkFit, 'offset' | 'by'> {
  if (at) return { offset: at, by: 'given' };
  const { width, height, dieLines, trim } = content;
  const drawn = dieLines.filter((box) => sameSize(box, blank));
  if (drawn.length === 1) return { offset: onto(drawn[0]!, blank), by: 'die line' };
  const facts = { widthMm: blank.maxX, heightMm: blank.maxY };
  if (drawn.length === 0 && dieLines.length > 0) {
    const [{ minX, minY, maxX, maxY }] = dieLines as [Box];
    throw inputError('artwork-other-die-line', { where, facts: { ...facts, foundWidthMm: maxX - minX, foundHeightMm: maxY - minY } });
  }
  if (trim && sameSize(trim, blank)) return { offset: onto(trim, blank), by: 'trim box' };
  const [beyondX, beyondY] = [width - blank.maxX, height - blank.maxY];
  const page = { minX: 0, minY: 0, maxX: width, maxY: height };
  if (Math.abs(beyondX - beyondY) <= 2 * SAME_SIZE_MM && beyondX >= -SAME_SIZE_MM && beyondX <= WIDEST_BORDER_MM) return { offset: onto(page, blank), by: 'page' };
  const found = trim ?? page;
  const isTurned = Math.abs(found.maxX - found.minX - blank.maxY) < Math.abs(found.maxX - found.minX - blank.maxX);
  throw inputError(isTurned ? 'artwork-turned' : 'artwork-size', { where, facts: { ...facts, foundWidthMm: found.maxX - found.minX, foundHeightMm: found.maxY - found.minY } });
}

/** Both borders together of a page that is the blank with its bleed and marks, mm. */
const WIDEST_BORDER_MM = 60;

function sameSize(a: Box, b: Box): boolean {
  return Math.abs(a.maxX - a.minX - (b.maxX - b.minX)) <= SAME_SIZE_MM && Math.abs(a.maxY - a.minY - (b.maxY - b.minY)) <= SAME_SIZE_MM;
}

/** Brings the middle of one box onto that of the other. */
function onto(box: Box, blank: Box): Point {
  return { x: (blank.minX + blank.maxX - box.minX - box.maxX) / 2, y: (blank.minY + blank.maxY - box.minY - box.maxY) / 2 };
}

const EDGES = ['left', 'right', 'lower', 'upper'] as const;

/**
 * Bleed is missing on an edge where the page ends too early, or where ink reaches the edge, or nearly, but not far enough
 * beyond; an edge that ink stays well clear of is unprinted and wants none.
 */
function missingBleed({ width, height, bleed: declared, ink }: ArtworkContent, blank: Box, offset: Point, bleed: number, where: string): Issue[] {
  const page = beyond({ minX: 0, minY: 0, maxX: width, maxY: height }, blank, offset);
  const box = declared && beyond(declared, blank, offset);
  const printed = ink && beyond(ink, blank, offset);
  return EDGES.flatMap((edge, i): Issue[] => {
    const inked = printed ? printed[i]! : Infinity;
    if (inked < -LIVE_MATTER_MM) return [];
    const missing = bleed - Math.min(page[i]!, box ? box[i]! : Infinity, inked);
    return missing > SHORT_BY_MM ? [{ code: 'artwork-bleed-missing', severity: 'warning', where, facts: { edge, missingMm: missing, bleedMm: bleed } }] : [];
  });
}

/** Less is rounding, mm. */
const SHORT_BY_MM = 0.05;

/** How far a box on the page reaches beyond the blank's, in the order of `EDGES`. */
function beyond(box: Box, blank: Box, { x, y }: Point): number[] {
  return [blank.minX - box.minX - x, box.maxX + x - blank.maxX, blank.minY - box.minY - y, box.maxY + y - blank.maxY];
}

function nearKnives({ texts }: ArtworkContent, design: Design, offset: Point, where: string): Issue[] {
  const knives = knivesOf(design);
  const blank = boxOf(design.outline.map(([x, y]) => ({ x, y })));
  const near = texts.flatMap(({ content, place, heightMm }): Issue[] => {
    const at = { x: place.x + offset.x, y: place.y + offset.y };
    if (at.x < blank.minX || at.x > blank.maxX || at.y < blank.minY || at.y > blank.maxY) return [];
    const points = [at, { x: at.x, y: at.y + CAPITALS * heightMm }];
    const mm = Math.min(...knives.flatMap(([from, to]) => points.map((point) => segmentDistance(point, point, from, to).distance)));
    return mm < LIVE_MATTER_MM ? [{ code: 'artwork-text-near-knife', severity: 'warning', where, facts: { text: content.slice(0, 40), mm, leastMm: LIVE_MATTER_MM } }] : [];
  });
  const rest = near.length - LISTED;
  return rest > 0 ? [...near.slice(0, LISTED), { code: 'more-of-the-same', severity: 'warning', facts: { count: rest, code: 'artwork-text-near-knife' } }] : near;
}

/** Height of capitals as a share of a font's size. */
const CAPITALS = 0.7;

/** Chords of all lines that are cut, mm. */
function knivesOf({ outline, openings, drawing }: Design): [Point, Point][] {
  const cut = (drawing?.paths ?? []).filter(({ role }) => cutsThrough(role as Role)).flatMap(({ d }) => readPathData(d)).map((path) => flattenPath(path, CHORD_MM));
  const rings = [outline, ...openings].map((ring) => [...ring, ring[0]!].map(([x, y]) => ({ x, y })));
  return [...rings, ...cut].flatMap((points) => points.slice(1).map((to, i): [Point, Point] => [points[i]!, to]));
}

const CHORD_MM = 0.05;
