import { ringArea, type Box, type Ring } from '../../geometry/point.ts';
import { requiredGap, type Part, type Placement, type Problem } from '../../layout/problem.ts';
import { keptAtGap } from '../kept-at-gap.ts';
import { createContact, type Contact } from './contact.ts';
import { profileFrom, type Profile } from './profile.ts';
import { differentVersions, type Version } from './versions.ts';

/** A blank of a pattern: version index and the lower left corner of its box. */
export interface Item {
  readonly version: number;
  readonly x: number;
  readonly y: number;
}

/** Width and height of a version's box. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How near two versions of a part may come, asked along one axis; boxes' lower left corners are the references. */
export interface Spacing {
  readonly sizes: readonly Size[];
  readonly gap: number;
  /** Questions asked so far, of all spacings of the part. */
  readonly asked: { count: number };
  /** Least distance up from a's corner to b's, b being `shift` to the right; −Infinity when they cannot meet. */
  up(a: number, b: number, shift: number): number;
  /** Least distance to the right from a's corner to b's, b being `shift` higher. */
  right(a: number, b: number, shift: number): number;
}

/** A part as patterns see it: its different versions, and its spacing along both axes with the sheet's x and y or swapped. */
export interface PatternPart {
  readonly part: number;
  readonly area: number;
  readonly versions: readonly Version[];
  readonly upright: Spacing;
  /** x and y swapped: rows of it are columns of the sheet. */
  readonly swapped: Spacing;
  /** Questions asked so far. */
  readonly asked: { count: number };
}

/**
 * The problem's parts, made once for the same parts and gap: the tables cost milliseconds, every pattern search asks them,
 * and a comparison asks them of many sheets.
 */
export function patternParts({ parts, rules }: Problem): readonly PatternPart[] {
  const gap = requiredGap(rules);
  return parts.map((part, index) => ({ ...patternPart(part, gap), part: index }));
}

const patternPart = keptAtGap((part: Part, gap): Omit<PatternPart, 'part'> => {
  const versions = differentVersions(part);
  const asked = { count: 0 };
  const rings = versions.map((version) => version.ring);
  const mirrored = rings.map((ring) => ring.map(({ x, y }) => ({ x: y, y: x })));
  const up = contactTable(rings, gap, asked);
  const right = contactTable(mirrored, gap, asked);
  return {
    area: ringArea(rings[0]),
    versions,
    upright: { sizes: versions.map(({ width, height }) => ({ width, height })), gap, asked, up, right },
    swapped: { sizes: versions.map(({ width, height }) => ({ width: height, height: width })), gap, asked, up: right, right: up },
    asked,
  };
});

/** Contacts of every ordered pair of rings, each made when it is first asked for. */
function contactTable(rings: readonly Ring[], gap: number, asked: { count: number }) {
  const contacts: (Contact | undefined)[] = [];
  const above: (Profile | undefined)[] = [];
  const below: (Profile | undefined)[] = [];
  return (a: number, b: number, shift: number): number => {
    asked.count++;
    const contact = (contacts[a * rings.length + b] ??= createContact((above[a] ??= profileFrom('above', rings[a])), (below[b] ??= profileFrom('below', rings[b])), gap));
    return contact(shift);
  };
}

/** A field to fill, seen with the sheet's axes or with x and y swapped; items lie in [0, width] × [0, height]. */
export interface Frame {
  readonly owner: PatternPart;
  readonly spacing: Spacing;
  readonly swapped: boolean;
  readonly field: Box;
  readonly width: number;
  readonly height: number;
}

export function createFrame(owner: PatternPart, field: Box, swapped: boolean): Frame {
  const width = field.maxX - field.minX;
  const height = field.maxY - field.minY;
  return swapped
    ? { owner, spacing: owner.swapped, swapped, field, width: height, height: width }
    : { owner, spacing: owner.upright, swapped, field, width, height };
}

/** The frame's items as placements on the sheet. */
export function placeItems({ owner, field, swapped }: Frame, items: readonly Item[]): Placement[] {
  return items.map(({ version, x, y }) => {
    const { turn, offset } = owner.versions[version];
    const across = swapped ? y : x;
    const upwards = swapped ? x : y;
    return { part: owner.part, turn, x: field.minX + across - offset.x, y: field.minY + upwards - offset.y };
  });
}

/** The shortest side of any version's box: no smaller field holds a blank. */
export function leastSide({ versions }: PatternPart): number {
  return Math.min(...versions.map(({ width, height }) => Math.min(width, height)));
}
