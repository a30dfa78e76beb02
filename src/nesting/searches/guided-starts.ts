import type { Random } from '../../base/random.ts';
import { addTurns, turnPoint } from '../../geometry/turn.ts';
import type { Cell, Placement } from '../../layout/problem.ts';
import type { Prepared } from '../prepare.ts';
import type { Crowd } from './guided-crowd.ts';

/** A blank by the centre of its box. */
export interface Standing {
  readonly pose: number;
  readonly x: number;
  readonly y: number;
}

/** What starts are made from. */
export interface Seeds {
  /** The best layouts known, fixed blanks left out. */
  readonly bases: readonly (readonly Standing[])[];
  /** The least overlapping layout of the wanted number so far. */
  readonly failed: readonly Standing[] | undefined;
  readonly cells: readonly Cell[];
}

/** From this many blanks on a random start takes too long to settle. */
const TOO_MANY_FOR_RANDOM = 80;
/** Places looked at for the least deep one. */
const PLACES_TRIED = 400;
/** Phases of a cell tried for the one that needs the least enlargement. */
const PHASES_TRIED = 60;

/** Fills the crowd by one of the kinds of start that are possible, drawn at random. Returns the kind's name. */
export function makeStart(crowd: Crowd, seeds: Seeds, random: Random): string {
  const kinds: [string, () => void][] = [];
  if (crowd.movable < TOO_MANY_FOR_RANDOM || seeds.bases.length === 0) kinds.push(['random', () => scatter(crowd, 0, random)]);
  if (seeds.bases.length > 0) {
    const base = seeds.bases[random.below(seeds.bases.length)];
    kinds.push(['inserted', () => insertAnywhere(crowd, base, random)]);
    kinds.push(['inserted', () => insertLeastDeep(crowd, base, random)]);
  }
  if (seeds.cells.length > 0) kinds.push(['pressed', () => pressCell(crowd, seeds.cells[Math.min(random.below(seeds.cells.length), random.below(seeds.cells.length))], random)]);
  const { failed } = seeds;
  if (failed) for (const [name, disturb] of DISTURBANCES) kinds.push([name, () => disturb(crowd, failed, random)]);
  const [name, start] = kinds[random.below(kinds.length)];
  start();
  crowd.refresh();
  return name;
}

/** Ways to start anew from a layout that still overlaps. */
export const DISTURBANCES: readonly (readonly [name: string, disturb: (crowd: Crowd, from: readonly Standing[], random: Random) => void])[] = [
  ['relocated', relocate],
  ['turned', turnSome],
  ['strip refilled', refillStrip],
  ['side moved', moveSide],
];

export function standingOf({ poses, poseOfTurn }: Prepared, { part, turn, x, y }: Placement): Standing {
  const pose = poseOfTurn[part][turn];
  // The centre is that of the placement's own turn, even where another pose stands for it.
  const centre = turnPoint(poses[pose].centre, addTurns(turn, -poses[pose].turn));
  return { pose, x: x + centre.x, y: y + centre.y };
}

export function copyInto(crowd: Crowd, standing: readonly Standing[]): void {
  standing.forEach(({ pose, x, y }, i) => {
    if (i < crowd.movable) crowd.place(i, pose, x, y);
  });
}

/** Puts a blank down anywhere, in any of its poses. */
export function scatterOne(crowd: Crowd, i: number, random: Random): void {
  const allowed = crowd.posesFor(i);
  const pose = allowed[random.below(allowed.length)];
  const { minX, minY, maxX, maxY } = crowd.prepared.poses[pose];
  crowd.place(i, pose, minX + random.unit() * (maxX - minX), minY + random.unit() * (maxY - minY));
}

/** Scatters blank `from` and all after it. */
export function scatter(crowd: Crowd, from: number, random: Random): void {
  for (let i = from; i < crowd.movable; i++) scatterOne(crowd, i, random);
}

function insertAnywhere(crowd: Crowd, best: readonly Standing[], random: Random): void {
  copyInto(crowd, best);
  scatter(crowd, best.length, random);
}

function insertLeastDeep(crowd: Crowd, best: readonly Standing[], random: Random): void {
  copyInto(crowd, best);
  for (let i = best.length; i < crowd.movable; i++) {
    let least = Infinity;
    let chosen: Standing | undefined;
    for (let k = 0; k < PLACES_TRIED; k++) {
      scatterOne(crowd, i, random);
      const cost = crowd.costAt(i, crowd.pose[i], crowd.x[i], crowd.y[i], least);
      if (cost >= least) continue;
      least = cost;
      chosen = { pose: crowd.pose[i], x: crowd.x[i], y: crowd.y[i] };
    }
    if (chosen) crowd.place(i, chosen.pose, chosen.x, chosen.y);
  }
}

/**
 * A lattice of the cell on a sheet just enough longer, wider or both to hold the wanted number, shrunk onto the real
 * sheet: recovers fits that are exact to the hundredth and layouts a little beyond what the lattice allows.
 */
function pressCell(crowd: Crowd, cell: Cell, random: Random): void {
  const { poses } = crowd.prepared;
  // How an enlargement e is shared: the sheet grows by e·shareX and e·shareY.
  const [shareX, shareY] = [[1, 0.01], [0.01, 1], [1, 1]][random.below(3)];
  const members = cell.blanks.map((placement) => standingOf(crowd.prepared, placement));
  let least = Infinity;
  let chosen: Needing[] = [];
  for (let phase = 0; phase < PHASES_TRIED; phase++) {
    const a = random.unit();
    const b = random.unit();
    const needing = latticeNeeds(crowd, cell, members, a, b, shareX, shareY);
    if (needing.length < crowd.movable) continue;
    needing.sort((p, q) => p.need - q.need);
    const need = needing[crowd.movable - 1].need;
    if (need >= least) continue;
    least = need;
    chosen = needing.slice(0, crowd.movable);
  }
  chosen.forEach(({ pose, x, y }, i) => {
    const { minX, minY, maxX, maxY } = poses[pose];
    crowd.place(i, pose, shrink(x, minX, maxX, least * shareX), shrink(y, minY, maxY, least * shareY));
  });
  scatter(crowd, chosen.length, random);
}

interface Needing extends Standing {
  /** Enlargement from which this lattice place is on the sheet. */
  readonly need: number;
}

function latticeNeeds(crowd: Crowd, { vectors: [u, v] }: Cell, members: readonly Standing[], a: number, b: number, shareX: number, shareY: number): Needing[] {
  const { area, poses } = crowd.prepared;
  const middleX = (area.minX + area.maxX) / 2;
  const middleY = (area.minY + area.maxY) / 2;
  const halfX = (area.maxX - area.minX) / 2;
  const halfY = (area.maxY - area.minY) / 2;
  const determinant = Math.abs(u.x * v.y - u.y * v.x);
  if (determinant === 0) return [];
  // Lattice coordinates of the sheet's box, by the dual basis, with one cell to spare.
  const reachI = Math.ceil((Math.abs(v.y) * halfX + Math.abs(v.x) * halfY) / determinant) + 2;
  const reachJ = Math.ceil((Math.abs(u.y) * halfX + Math.abs(u.x) * halfY) / determinant) + 2;
  const needing: Needing[] = [];
  const origin = members[0];
  for (let i = -reachI; i <= reachI; i++) {
    for (let j = -reachJ; j <= reachJ; j++) {
      const atX = middleX + (i + a) * u.x + (j + b) * v.x - origin.x;
      const atY = middleY + (i + a) * u.y + (j + b) * v.y - origin.y;
      for (const member of members) {
        const { minX, minY, maxX, maxY } = poses[member.pose];
        const x = atX + member.x;
        const y = atY + member.y;
        const need = Math.max(0, minX - x, x - maxX) / shareX;
        needing.push({ pose: member.pose, x, y, need: Math.max(need, Math.max(0, minY - y, y - maxY) / shareY) });
      }
    }
  }
  return needing;
}

/** From [min − by, max + by] linearly onto [min, max]. */
function shrink(value: number, min: number, max: number, by: number): number {
  const size = max - min + 2 * by;
  return size <= 0 ? min : min + ((value - min + by) * (max - min)) / size;
}

function relocate(crowd: Crowd, failed: readonly Standing[], random: Random): void {
  copyInto(crowd, failed);
  const count = 1 + random.below(Math.max(1, Math.floor(crowd.movable / 6)));
  for (let k = 0; k < count; k++) scatterOne(crowd, random.below(crowd.movable), random);
}

function turnSome(crowd: Crowd, failed: readonly Standing[], random: Random): void {
  copyInto(crowd, failed);
  const count = Math.max(1, Math.floor(crowd.movable / 5));
  for (let k = 0; k < count; k++) {
    const i = random.below(crowd.movable);
    const allowed = crowd.posesFor(i);
    crowd.place(i, allowed[random.below(allowed.length)], crowd.x[i], crowd.y[i]);
  }
}

/** Empties a strip about one blank wide and refills it at random. */
function refillStrip(crowd: Crowd, failed: readonly Standing[], random: Random): void {
  copyInto(crowd, failed);
  const { area } = crowd.prepared;
  const { width, height } = crowd.prepared.poses[crowd.pose[0]];
  const upright = random.word() >= 0x8000_0000;
  const from = upright ? area.minX + random.unit() * (area.maxX - area.minX - width) : area.minY + random.unit() * (area.maxY - area.minY - height);
  const to = from + (upright ? width : height);
  for (let i = 0; i < crowd.movable; i++) {
    const place = upright ? crowd.x[i] : crowd.y[i];
    if (place < from || place > to) continue;
    scatterOne(crowd, i, random);
    if (upright) crowd.place(i, crowd.pose[i], from + random.unit() * width, crowd.y[i]);
    else crowd.place(i, crowd.pose[i], crowd.x[i], from + random.unit() * height);
  }
}

/** Shifts everything on one side of a line, or half-turns it about the middle of that side. */
function moveSide(crowd: Crowd, failed: readonly Standing[], random: Random): void {
  copyInto(crowd, failed);
  const { area, poses } = crowd.prepared;
  const upright = random.word() >= 0x8000_0000;
  const lineX = area.minX + random.unit() * (area.maxX - area.minX);
  const lineY = area.minY + random.unit() * (area.maxY - area.minY);
  const halfTurn = random.word() >= 0x8000_0000;
  const { width, height } = poses[crowd.pose[0]];
  const byX = (random.unit() - 0.5) * width;
  const byY = (random.unit() - 0.5) * height;
  const middleX = upright ? (lineX + area.maxX) / 2 : (area.minX + area.maxX) / 2;
  const middleY = upright ? (area.minY + area.maxY) / 2 : (lineY + area.maxY) / 2;
  for (let i = 0; i < crowd.movable; i++) {
    if (upright ? crowd.x[i] < lineX : crowd.y[i] < lineY) continue;
    const { shape, turn } = poses[crowd.pose[i]];
    const opposite = poses.findIndex((pose) => pose.shape === shape && (pose.turn - turn + 4) % 4 === 2);
    if (!halfTurn) crowd.place(i, crowd.pose[i], crowd.x[i] + byX, crowd.y[i] + byY);
    else crowd.place(i, crowd.posesFor(i).includes(opposite) ? opposite : crowd.pose[i], 2 * middleX - crowd.x[i], 2 * middleY - crowd.y[i]);
  }
}
