import { createRandom, type Random } from '../../src/base/random.ts';
import { boxOf, doubleArea, shiftRing, type Point, type Ring } from '../../src/geometry/point.ts';
import type { Turn } from '../../src/geometry/turn.ts';
import type { KeepOut, Problem } from '../../src/layout/problem.ts';

/**
 * Made-up cartons and labels with made-up sheets, gaps and rotations: ordinary work of a folding-carton house. Each seed
 * gives one; shapes and proportions are our own. Blanks are drawn in millimetres and rounded to whole micrometres.
 */
export interface GeneratedJob {
  readonly name: string;
  readonly problem: Problem;
}

export function generatedJob(seed: number): GeneratedJob {
  const random = createRandom(seed * 7919 + 13);
  const [name, draw] = SHAPES[seed % SHAPES.length];
  const outline = toRing(draw(random));
  const sheet = pick(random, SHEETS);
  const gap = pick(random, [0, 2, 3, 3, 5, 6, 6, 8]) * 1000;
  const turns = pick(random, ROTATIONS);
  const usable = { minX: 6000, minY: 12000, maxX: sheet.width - 6000, maxY: sheet.height - 10000 };
  const problem: Problem = {
    sheet,
    usable,
    printable: { minX: 0, minY: 0, maxX: sheet.width, maxY: sheet.height },
    lay: 'left',
    keepOuts: seed % 9 === 4 ? [centreBar(sheet)] : seed % 23 === 7 ? [spoiledCorner(sheet)] : [],
    rules: { gap, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    parts: [{ id: name, outline, openings: [], turns }],
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
  };
  return { name, problem };
}

const SHEETS = [
  [1020, 720],
  [1060, 760],
  [740, 520],
  [700, 500],
  [1000, 700],
  [450, 320],
].map(([width, height]) => ({ width: width * 1000, height: height * 1000 }));

const ROTATIONS: readonly (readonly Turn[])[] = [[0, 2], [0, 2], [0, 2], [1, 3], [0, 1, 2, 3], [0, 1, 2, 3], [0], [0, 1]];

function centreBar({ width, height }: { width: number; height: number }): KeepOut {
  const [low, high] = [height / 2 - 3000, height / 2 + 3000];
  return { kind: 'colour-bar', clearance: 3000, ring: rectangle(0, low, width, high) };
}

function spoiledCorner({ width, height }: { width: number; height: number }): KeepOut {
  return { kind: 'spoiled', clearance: 1000, ring: rectangle(width - 90_000, height - 70_000, width, height) };
}

function rectangle(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

function pick<T>(random: Random, list: readonly T[]): T {
  return list[random.below(list.length)];
}

function between(random: Random, from: number, to: number): number {
  return from + random.unit() * (to - from);
}

/** Rounds to whole micrometres, drops repeats, puts the box's lower left corner at the origin, counter-clockwise. */
function toRing(points: readonly Point[]): Ring {
  const whole = points.map(({ x, y }) => ({ x: Math.round(x * 1000), y: Math.round(y * 1000) }));
  const ring = whole.filter((p, i) => {
    const q = whole[(i + whole.length - 1) % whole.length];
    return p.x !== q.x || p.y !== q.y;
  });
  const { minX, minY } = boxOf(ring);
  const placed = shiftRing(ring, { x: -minX, y: -minY });
  return doubleArea(placed) > 0 ? placed : placed.toReversed();
}

type Draw = (random: Random) => Point[];

/** A pen that walks along a blank's outline; millimetres, corners may be rounded by arcs of a few points. */
class Pen {
  readonly points: Point[] = [];

  to(x: number, y: number): this {
    this.points.push({ x, y });
    return this;
  }

  arc(cx: number, cy: number, rx: number, ry: number, fromDegrees: number, toDegrees: number, steps = 8): this {
    for (let k = 0; k <= steps; k++) {
      const angle = ((fromDegrees + ((toDegrees - fromDegrees) * k) / steps) * Math.PI) / 180;
      this.to(cx + rx * Math.cos(angle), cy + ry * Math.sin(angle));
    }
    return this;
  }
}

interface Flap {
  readonly kind: 'tuck' | 'dust' | 'plain' | 'none';
  readonly length: number;
}

/** Four panels and a glue flap; `top` and `bottom` name what stands at each panel, from the left. */
function folding(random: Random, kindsTop: readonly Flap['kind'][], kindsBottom: readonly Flap['kind'][]): Point[] {
  const length = between(random, 30, 110);
  const width = between(random, 15, Math.min(70, length));
  const depth = between(random, 40, 170);
  const glue = between(random, 9, 16);
  const tuck = between(random, 10, 20);
  const dust = width * between(random, 0.4, 0.9);
  const plain = between(random, 0.4, 0.7) * width;
  const panels = [length, width, length, width - 0.5];
  const flap = (kind: Flap['kind']): Flap => ({ kind, length: kind === 'tuck' ? width + tuck : kind === 'dust' ? dust : kind === 'plain' ? plain : 0 });
  const pen = new Pen();
  let x = glue;
  const edges = panels.map((panel) => ({ from: x, to: (x += panel) }));
  edges.forEach(({ from, to }, i) => drawFlap(pen, flap(kindsBottom[i]), from, to, 0, -1));
  edges.toReversed().forEach(({ from, to }, i) => drawFlap(pen, flap(kindsTop[3 - i]), to, from, depth, 1));
  pen.to(glue, depth - 1).to(0, depth - between(random, 4, 12)).to(0, between(random, 4, 12)).to(glue, 1);
  return pen.points;
}

/** From one end of a panel's edge to the other, with the flap that stands on it; `side` 1 upwards. */
function drawFlap(pen: Pen, { kind, length }: Flap, from: number, to: number, y: number, side: 1 | -1): void {
  const way = Math.sign(to - from);
  const end = y + side * length;
  if (kind === 'none') pen.to(from, y).to(to, y);
  else if (kind === 'plain') pen.to(from + way * 0.5, y).to(from + way * 0.5, end).to(to - way * 0.5, end).to(to - way * 0.5, y);
  else if (kind === 'tuck') {
    const r = Math.min(9, length / 3);
    pen.to(from + way * 0.5, y).to(from + way, end - side * r);
    corner(pen, { x: from + way, y: end - side * r }, { x: from + way, y: end }, { x: from + way * (1 + r), y: end });
    corner(pen, { x: to - way * (1 + r), y: end }, { x: to - way, y: end }, { x: to - way, y: end - side * r });
    pen.to(to - way * 0.5, y);
  } else {
    pen.to(from + way * 0.5, y).to(from + way * 0.5, y + side * Math.min(4, length / 4)).to(from + way * 4, end);
    corner(pen, { x: to - way * 9, y: end }, { x: to - way * 3, y: end }, { x: to - way * 3, y: end - side * Math.min(6, length / 3) });
    pen.to(to - way * 0.5, y);
  }
}

/** A round corner as a parabola through a few points. */
function corner(pen: Pen, from: Point, tip: Point, to: Point, steps = 6): void {
  for (let k = 0; k <= steps; k++) {
    const t = k / steps;
    const [a, b, c] = [(1 - t) * (1 - t), 2 * t * (1 - t), t * t];
    pen.to(a * from.x + b * tip.x + c * to.x, a * from.y + b * tip.y + c * to.y);
  }
}

const SHAPES: readonly (readonly [string, Draw])[] = [
  ['reverse tuck', (random) => folding(random, ['tuck', 'dust', 'none', 'dust'], ['none', 'dust', 'tuck', 'dust'])],
  ['straight tuck', (random) => folding(random, ['tuck', 'dust', 'none', 'dust'], ['tuck', 'dust', 'none', 'dust'])],
  ['crash bottom', (random) => folding(random, ['tuck', 'dust', 'none', 'dust'], ['plain', 'dust', 'plain', 'dust'])],
  ['sleeve', (random) => folding(random, ['none', 'none', 'none', 'none'], ['none', 'none', 'none', 'none'])],
  ['seal end', (random) => folding(random, ['plain', 'plain', 'plain', 'plain'], ['plain', 'plain', 'plain', 'plain'])],
  ['tray', tray],
  ['cup fan', cupFan],
  ['pillow', pillow],
  ['hanging card', hangingCard],
  ['round label', (random) => new Pen().arc(0, 0, ...twice(between(random, 18, 60)), 0, 357, 119).points],
  ['oval label', (random) => new Pen().arc(0, 0, between(random, 25, 70), between(random, 15, 40), 0, 356, 89).points],
  ['rounded label', roundedLabel],
  ['rectangular label', (random) => oblong(between(random, 30, 130), between(random, 20, 90))],
  ['wrap', (random) => oblong(between(random, 120, 240), between(random, 30, 60))],
  ['trapezoid', trapezoid],
  ['L card', lCard],
  ['hexagonal carton', hexagonal],
];

function twice(value: number): [number, number] {
  return [value, value];
}

function oblong(width: number, height: number): Point[] {
  return new Pen().to(0, 0).to(width, 0).to(width, height).to(0, height).points;
}

function tray(random: Random): Point[] {
  const [w, h, wall] = [between(random, 60, 160), between(random, 50, 120), between(random, 12, 35)];
  const tab = between(random, 8, wall - 1);
  const pen = new Pen();
  pen.to(wall + 0.5, 0).to(wall + w - 0.5, 0).to(wall + w - 0.5, wall).to(wall + w, wall - tab).to(wall + w + tab, wall - tab + 3).to(wall + w + wall - 1, wall);
  pen.to(2 * wall + w, wall + 0.5).to(2 * wall + w, wall + h - 0.5).to(wall + w + tab, wall + h + tab - 3).to(wall + w, wall + h + tab).to(wall + w - 0.5, wall + h);
  pen.to(wall + w - 0.5, 2 * wall + h).to(wall + 0.5, 2 * wall + h).to(wall + 0.5, wall + h).to(0, wall + h - 0.5).to(0, wall + 0.5).to(wall, wall);
  return pen.points;
}

function cupFan(random: Random): Point[] {
  const inner = between(random, 90, 220);
  const outer = inner + between(random, 50, 110);
  const half = between(random, 14, 32);
  return new Pen().arc(0, 0, outer, outer, 90 - half, 90 + half, 30).arc(0, 0, inner, inner, 90 + half, 90 - half, 24).points;
}

function pillow(random: Random): Point[] {
  const [w, h, bow] = [between(random, 50, 110), between(random, 60, 140), between(random, 8, 18)];
  const glue = between(random, 8, 14);
  const pen = new Pen();
  corner(pen, { x: 0, y: 0 }, { x: w / 2, y: -2 * bow }, { x: w, y: 0 }, 12);
  corner(pen, { x: w, y: 0 }, { x: 1.5 * w, y: -2 * bow }, { x: 2 * w, y: 0 }, 12);
  pen.to(2 * w + glue, 5).to(2 * w + glue, h - 5);
  corner(pen, { x: 2 * w, y: h }, { x: 1.5 * w, y: h + 2 * bow }, { x: w, y: h }, 12);
  corner(pen, { x: w, y: h }, { x: w / 2, y: h + 2 * bow }, { x: 0, y: h }, 12);
  return pen.points;
}

function hangingCard(random: Random): Point[] {
  const [w, h] = [between(random, 50, 100), between(random, 50, 110)];
  const [stem, neck] = [between(random, 12, 30), between(random, 20, 60)];
  const left = (w - stem) / 2;
  return new Pen().to(0, 0).to(w, 0).to(w, h).to(left + stem, h).to(left + stem, h + neck - 5).arc(w / 2, h + neck - 5, stem / 2, 5, 0, 180).to(left, h).to(0, h).points;
}

function roundedLabel(random: Random): Point[] {
  const [w, h] = [between(random, 35, 120), between(random, 25, 90)];
  const r = between(random, 2, Math.min(w, h) / 3);
  return new Pen().arc(w - r, r, r, r, -90, 0).arc(w - r, h - r, r, r, 0, 90).arc(r, h - r, r, r, 90, 180).arc(r, r, r, r, 180, 270).points;
}

function trapezoid(random: Random): Point[] {
  const [foot, head, height] = [between(random, 40, 120), between(random, 20, 100), between(random, 30, 90)];
  const shift = between(random, -20, 30);
  return new Pen().to(0, 0).to(foot, 0).to(shift + head, height).to(shift, height).points;
}

function lCard(random: Random): Point[] {
  const [w, h] = [between(random, 60, 130), between(random, 60, 130)];
  const [arm, leg] = [between(random, 18, 50), between(random, 18, 50)];
  return new Pen().to(0, 0).to(w, 0).to(w, arm).to(leg, arm).to(leg, h).to(0, h).points;
}

function hexagonal(random: Random): Point[] {
  const [side, depth, flap] = [between(random, 20, 45), between(random, 50, 130), between(random, 15, 30)];
  const glue = 12;
  const pen = new Pen();
  for (let i = 0; i < 6; i++) pen.to(glue + i * side + 1, 0).to(glue + i * side + 5, -flap).to(glue + (i + 1) * side - 5, -flap).to(glue + (i + 1) * side - 1, 0);
  for (let i = 5; i >= 0; i--) pen.to(glue + (i + 1) * side - 1, depth).to(glue + (i + 1) * side - 5, depth + flap).to(glue + i * side + 5, depth + flap).to(glue + i * side + 1, depth);
  pen.to(glue, depth - 1).to(0, depth - 8).to(0, 8).to(glue, 1);
  return pen.points;
}
