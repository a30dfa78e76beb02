import { inputError, type Issue } from '../base/issue.ts';
import { toMicrons } from '../base/units.ts';
import { intersect } from '../geometry/boolean.ts';
import { boxOf, shiftRing, type Box, type Point, type Polygon, type Ring } from '../geometry/point.ts';
import { locatePoint } from '../geometry/predicates.ts';
import { missingBleed } from './artwork-bleed.ts';
import type { Design } from './layout-file.ts';
import { knivesOf, LIVE_MATTER_MM, nearestKnife, type Knife } from './live-matter.ts';
import { micronRing } from './rings.ts';

/** What is known of a page of artwork. Millimetres from the page's lower left corner as it is looked at, y up. */
export interface ArtworkContent {
  readonly width: number;
  readonly height: number;
  /** As the page declares them. */
  readonly trim: Box | undefined;
  readonly bleed: Box | undefined;
  /** Boxes of the die lines that are drawn in it under a name. */
  readonly dieLines: readonly Box[];
  /** Filled areas and images, element by element, whole µm; undefined where they were not looked at: then all of the page counts. */
  readonly printed: readonly (readonly Polygon[])[] | undefined;
  /** Lines of text: where they begin, how far they reach; without content where their font tells none. */
  readonly texts: readonly { readonly content: string; readonly place: Point; readonly heightMm: number; readonly widthMm?: number; readonly direction?: Point }[];
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

/** Of one matter so many are listed one by one. */
const LISTED = 10;

/**
 * Lays a page of artwork on a design: by the place given, by the die line drawn in it, by its trim box, or by the middle of
 * its page where that is the blank with one and the same bleed all round. Says what bleed is missing where, and
 * what stands too near a knife. Throws InputError `artwork-other-die-line` or `artwork-size`.
 */
export function fitArtwork(content: ArtworkContent, design: Design, { bleed, at, where }: { readonly bleed: number; readonly at?: Point | undefined; readonly where: string }): ArtworkFit {
  const blank = boxOf(design.outline.map(([x, y]) => ({ x, y })));
  const { offset, by } = placed(content, blank, at, where);
  return { offset, by, issues: checked(content, design, offset, bleed, where) };
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

/** Bleed stretch by stretch, then live matter: texts, and what is printed without reaching the outline anywhere. */
function checked(content: ArtworkContent, design: Design, offset: Point, bleedMm: number, where: string): Issue[] {
  const outline = micronRing(design.outline);
  const shift = { x: toMicrons(offset.x), y: toMicrons(offset.y) };
  const placed = content.printed?.map((polygons) => polygons.map(({ outer, holes }): Polygon => ({ outer: shiftRing(outer, shift), holes: holes.map((hole) => shiftRing(hole, shift)) })));
  const reaching = placed?.filter((polygons) => reaches(polygons, outline));
  const page = shownOf(content, shift);
  const printed = reaching ? reaching.flatMap((polygons) => intersect(polygons, page)) : page;
  const knives = knivesOf(design);
  const within = placed?.filter((polygons) => !reaching!.includes(polygons)) ?? [];
  return [
    ...listed(missingBleed(outline, printed, { bleed: toMicrons(bleedMm), reach: toMicrons(LIVE_MATTER_MM) }).map(({ edge, from, to, lengthMm, missingMm }): Issue => ({
      code: 'artwork-bleed-missing', severity: 'warning', where,
      facts: { edge, missingMm: short(missingMm), bleedMm, lengthMm: short(lengthMm), fromX: short(from.x), fromY: short(from.y), toX: short(to.x), toY: short(to.y) },
    }))),
    ...listed(textsNear(content.texts, outline, offset, knives.flat(), where)),
    ...listed(within.flatMap((polygons): Issue[] => {
      const found = knives.flatMap((line) => polygons.flatMap(({ outer }) => nearestKnife(outer, line) ?? []));
      // Print that a cut runs through is meant to be cut.
      const nearest = found.filter(({ mm }) => mm > 0).toSorted((a, b) => a.mm - b.mm)[0];
      return nearest ? [{ code: 'artwork-area-near-knife', severity: 'warning', where, facts: { mm: short(nearest.mm), leastMm: LIVE_MATTER_MM, x: short(nearest.place.x), y: short(nearest.place.y) } }] : [];
    })),
  ];
}

/** As people measure. */
function short(mm: number): number {
  return Math.round(mm * 100) / 100 + 0;
}

function listed(issues: readonly Issue[]): readonly Issue[] {
  const rest = issues.length - LISTED;
  return rest > 0 ? [...issues.slice(0, LISTED), { code: 'more-of-the-same', severity: 'warning', facts: { count: rest, code: issues[0]!.code } }] : issues;
}

/** What the page shows of its print: all of it, or what its bleed box says. Whole µm of the design's axes. */
function shownOf({ width, height, bleed }: ArtworkContent, shift: Point): Polygon[] {
  const { minX, minY, maxX, maxY } = bleed ?? { minX: 0, minY: 0, maxX: width, maxY: height };
  const corners = [[minX, minY], [maxX, minY], [maxX, maxY], [minX, maxY]] as const;
  return [{ outer: corners.map(([x, y]) => ({ x: toMicrons(x) + shift.x, y: toMicrons(y) + shift.y })), holes: [] }];
}

/** Whether print goes on to the outline or beyond it at any place. */
function reaches(polygons: readonly Polygon[], outline: Ring): boolean {
  const blank = boxOf(outline);
  const beyond = ({ x, y }: Point) => x < blank.minX + TOUCHES_MICRONS || x > blank.maxX - TOUCHES_MICRONS || y < blank.minY + TOUCHES_MICRONS || y > blank.maxY - TOUCHES_MICRONS;
  return polygons.some(({ outer }) => outer.some((point) => beyond(point) || locatePoint(point, outline) !== 'inside'));
}

/** So near to the outline is at it, µm. */
const TOUCHES_MICRONS = 50;

function textsNear(texts: ArtworkContent['texts'], outline: Ring, offset: Point, knives: readonly Knife[], where: string): Issue[] {
  return texts.flatMap(({ content, place, heightMm, widthMm = 0, direction: { x: dx, y: dy } = { x: 1, y: 0 } }): Issue[] => {
    const at = { x: place.x + offset.x, y: place.y + offset.y };
    const rise = CAPITALS * heightMm;
    const corner = (along: number, up: number): Point => ({ x: toMicrons(at.x + along * dx - up * dy), y: toMicrons(at.y + along * dy + up * dx) });
    const ring = [corner(0, 0), corner(widthMm, 0), corner(widthMm, rise), corner(0, rise)];
    if (ring.every((point) => locatePoint(point, outline) === 'outside')) return [];
    const nearest = nearestKnife(ring, knives);
    if (!nearest) return [];
    const facts = { mm: short(nearest.mm), leastMm: LIVE_MATTER_MM, x: short(at.x), y: short(at.y) };
    if (content === '') return [{ code: 'artwork-unread-text-near-knife', severity: 'warning', where, facts }];
    return [{ code: 'artwork-text-near-knife', severity: 'warning', where, facts: { ...facts, text: content.slice(0, 40) } }];
  });
}

/** Height of capitals as a share of a font's size. */
const CAPITALS = 0.7;
