import { boxOf, type Box } from '../geometry/point.ts';
import type { Role } from '../dieline/dieline.ts';
import { BLANKS_LAYER, designSymbols, ruleLook } from './design-symbols.ts';
import { dimensionChain } from './dimension.ts';
import type { Format } from './format.ts';
import { createFormat } from './format.ts';
import { hatch } from './hatch.ts';
import { englishPicture } from './messages/english-picture.ts';
import type { PictureWords } from './messages/words.ts';
import { registerMarks } from './register-marks.ts';
import { HATCH, scaleFor, SURROUND, type Scale } from './scale.ts';
import type { Scene, SceneItem, SceneLayer } from './scene.ts';
import { circle, drawn, label, line, polyline, rectangle } from './shapes.ts';
import type { Area, SheetView } from './sheet-view.ts';
import { stations } from './stations.ts';
import { stepRuns } from './step-runs.ts';
import { textWidth } from './text-width.ts';
import { titleBlock, type LegendEntry } from './title-block.ts';

export interface PictureLanguage {
  readonly words: PictureWords;
  readonly format: Format;
}

const ENGLISH: PictureLanguage = { words: englishPicture, format: createFormat('en') };

/**
 * The picture of a laid-out sheet, seen from the printed side, gripper edge at the bottom.
 * `marks`: what is marked on it besides, for its key. Painted from the paper up: waste, limits, keep-outs, blanks, bleed, rules, marks, numbers, dimensions, title block.
 */
export function sheetScene(view: SheetView, { words, format }: PictureLanguage = ENGLISH, marks: readonly LegendEntry[] = []): Scene {
  const scale = scaleFor(view.sheet);
  const { unit } = scale;
  const { width, height } = view.sheet;
  const numbers = stations(view, scale);
  const symbols = view.designs.flatMap((design, index) => designSymbols(design, index, scale));
  const register = view.fromReel ? [] : registerMarks(view);
  const left = -SURROUND.left * unit;
  const right = width + SURROUND.right * unit;
  const title = titleBlock(view.figures, [...marks, ...legend(symbols.map(({ layer }) => layer), view.fromReel === true, words, scale)], left, -SURROUND.bottom * unit, right - left, scale);
  const box: Box = { minX: left - unit, minY: -SURROUND.bottom * unit - title.depth - unit, maxX: right + unit, maxY: height + SURROUND.top * unit };

  const layers: SceneLayer[] = [
    { name: 'Surround', items: [drawn([rectangle(box.minX, box.minY, box.maxX, box.maxY)], { fill: 'paper' })] },
    { name: 'Waste', items: [drawn(hatch(0, 0, width, height, unit * HATCH), wasteLook(scale))] },
    ...(view.fromReel
      ? [{ name: 'Machine direction', items: machineDirection(view, words, scale) }]
      : [{ name: 'Gripper edge', items: gripper(view, words, scale) }, { name: 'Limits', items: limits(view, scale) }]),
    { name: 'Keep-outs', items: view.keepOuts.flatMap((keepOut) => keepOutItems(keepOut.kind, boxOf(keepOut.ring), keepOut.ring, words, scale)) },
    ...designLayers(view, symbols),
    { name: 'Register marks', items: register.flatMap(({ at, size }) => registerMark(at.x, at.y, size / 2, scale)) },
    { name: 'Sheet edge', items: [drawn([rectangle(0, 0, width, height)], { stroke: 'ink', width: scale.thin }), ...(view.fromReel ? [] : [...sideLay(view, words, scale), ...slug(view, { words, format }, scale)])] },
    { name: 'Stations', items: numbers.items },
    { name: 'Faults', items: faults(view, scale) },
    { name: 'Steps', items: dimensions(view, words, format, scale) },
    { name: 'Title block', items: title.items },
  ];
  return {
    title: titleOf(view, { words, format }),
    description: (view.fromReel ? words.reelDescription : words.description)(view.designs.map(({ id }) => id).join(', '), view.placements.length),
    box,
    sheet: view.sheet,
    symbols: [...symbols.map(({ symbol }) => symbol), ...numbers.symbols],
    layers: layers.filter(({ items }) => items.length > 0),
  };
}

/** One layer a role, the blanks' areas first and the knives last, whatever order the designs name them in. */
function designLayers(view: SheetView, symbols: ReturnType<typeof designSymbols>): SceneLayer[] {
  const rank = (layer: string) => (layer === BLANKS_LAYER ? 0 : layer === 'Bleed' ? 1 : layer === 'Cutting' ? 3 : 2);
  const names = [...new Set(symbols.map(({ layer }) => layer))].toSorted((a, b) => rank(a) - rank(b));
  const ids = new Set(symbols.map(({ symbol }) => symbol.id));
  return names.map((name) => ({
    name,
    items: view.placements.flatMap(({ design, turn, x, y }): SceneItem[] => {
      const symbol = `design${design + 1}-${name}`;
      return ids.has(symbol) ? [{ kind: 'use', symbol, at: { x, y }, turn }] : [];
    }),
  }));
}

/** The edge that the press takes hold of: the margin hatched twice, a heavy edge, teeth from below, and the words. */
function gripper({ sheet, usable }: SheetView, words: PictureWords, scale: Scale): SceneItem[] {
  const { unit } = scale;
  const textSize = unit * 1.1;
  const textHalf = textWidth(words.gripperEdge, textSize, true) / 2 + unit;
  const middle = sheet.width / 2;
  const pitch = sheet.width / Math.max(6, 2 * Math.round(sheet.width / (unit * 8)));
  const teeth = [];
  for (let x = pitch / 2; x < sheet.width; x += pitch) {
    if (Math.abs(x - middle) < textHalf + unit * 0.6) continue;
    teeth.push(polyline([{ x: x - unit * 0.6, y: -unit * 1.25 }, { x: x + unit * 0.6, y: -unit * 1.25 }, { x, y: -unit * 0.25 }], true));
  }
  return [
    drawn(hatch(0, 0, sheet.width, usable.y, unit * HATCH, true), wasteLook(scale)),
    drawn([rectangle(0, -scale.heavy, sheet.width, scale.thin)], { fill: 'accent' }),
    drawn(teeth, { fill: 'accent' }),
    label(words.gripperEdge, { x: middle, y: -unit * 1.3 }, textSize, { anchor: 'middle', bold: true, paint: 'accent' }),
  ];
}

/** Which way the reel runs, below its edge. */
function machineDirection({ sheet }: SheetView, words: PictureWords, { unit, thin }: Scale): SceneItem[] {
  const size = unit * 1.1;
  const y = -unit * 1.3;
  const half = textWidth(words.machineDirection, size, true) / 2;
  const [start, end] = [sheet.width / 2 + half + unit, sheet.width / 2 + half + unit * 6];
  const middle = y + size * 0.36;
  return [
    label(words.machineDirection, { x: sheet.width / 2, y }, size, { anchor: 'middle', bold: true, paint: 'accent' }),
    drawn([line({ x: start, y: middle }, { x: end, y: middle })], { stroke: 'accent', width: thin * 1.5 }),
    drawn([polyline([{ x: end, y: middle + unit * 0.45 }, { x: end + unit * 1.1, y: middle }, { x: end, y: middle - unit * 0.45 }], true)], { fill: 'accent' }),
  ];
}

/** A sheet that nothing lies on yet has a size and no count. */
function titleOf({ sheet, placements }: SheetView, { words, format }: PictureLanguage): string {
  const size = format.size(sheet.width, sheet.height);
  return placements.length === 0 ? size : words.title(placements.length, size);
}

/** What the sheet is, written in its gripper margin below the colour bar, so that it stays with the sheet itself. */
function slug(view: SheetView, language: PictureLanguage, scale: Scale): SceneItem[] {
  const { sheet, usable, keepOuts, designs } = view;
  const room = Math.min(usable.y, ...keepOuts.map(({ ring }) => boxOf(ring).minY));
  const size = Math.min(scale.unit * 0.7, room * 0.5);
  if (size < LEAST_SLUG_MM) return [];
  const text = [language.words.gripperEdge, titleOf(view, language), designs.map(({ id }) => id).join(', ')].filter(Boolean).join('  ·  ');
  const fitted = Math.min(size, (size * (sheet.width - 4 * size)) / textWidth(text, size));
  const start = { x: 2 * size, y: room / 2 - fitted * 0.36 };
  return [
    drawn([rectangle(start.x - fitted * 0.5, start.y - fitted * 0.35, start.x + textWidth(text, fitted) + fitted * 0.5, start.y + fitted)], { fill: 'paper' }),
    label(text, start, fitted),
  ];
}

/** Letters lower than that are not worth their place, mm. */
const LEAST_SLUG_MM = 2;

function limits({ usable, printable }: SheetView, scale: Scale): SceneItem[] {
  const frame = ({ x, y, width, height }: Area) => rectangle(x, y, x + width, y + height);
  return [drawn([frame(usable)], knifeLimitLook(scale)), drawn([frame(printable)], inkLimitLook(scale))];
}

const wasteLook = ({ fine }: Scale) => ({ stroke: 'hatch', width: fine }) as const;
const knifeLimitLook = ({ unit, thin }: Scale) => ({ stroke: 'accent', width: thin, dash: [unit * 0.8, unit * 0.25, unit * 0.15, unit * 0.25] }) as const;
const inkLimitLook = ({ unit, thin }: Scale) => ({ stroke: 'grey', width: thin, dash: [unit * 0.3, unit * 0.3] }) as const;

function keepOutItems(kind: string, box: Box, ring: SheetView['keepOuts'][number]['ring'], words: PictureWords, scale: Scale): SceneItem[] {
  if (kind === 'colour-bar') return colourBar(box, scale);
  const { unit } = scale;
  const text = words.keepOuts[kind] ?? kind;
  const size = Math.min(unit, ((box.maxX - box.minX) * 0.8 * unit) / textWidth(text, unit), (box.maxY - box.minY) * 0.6);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 - size * 0.36 };
  return [
    drawn([polyline(ring, true)], { fill: 'light', stroke: 'ink', width: scale.thin, dash: [unit * 0.4, unit * 0.25] }),
    label(text, middle, size, { anchor: 'middle' }),
  ];
}

/** Patches in four depths of grey, repeated over the whole width: seen as a colour bar in black and white too. */
function colourBar({ minX, minY, maxX, maxY }: Box, scale: Scale): SceneItem[] {
  const count = Math.max(8, 4 * Math.round((maxX - minX) / ((maxY - minY) * 1.6) / 4));
  const patch = (maxX - minX) / count;
  const fills = ['ink', 'light', 'grey', 'hatch'] as const;
  const patches = fills.map((fill, f) => {
    const paths = [];
    for (let i = f; i < count; i += fills.length) paths.push(rectangle(minX + i * patch, minY, minX + (i + 1) * patch, maxY));
    return drawn(paths, { fill });
  });
  return [...patches, drawn([rectangle(minX, minY, maxX, maxY)], { stroke: 'ink', width: scale.fine })];
}

function registerMark(x: number, y: number, half: number, scale: Scale): SceneItem[] {
  const cross = [line({ x: x - half, y }, { x: x + half, y }), line({ x, y: y - half }, { x, y: y + half }), circle({ x, y }, half * 0.6)];
  return [drawn([circle({ x, y }, half)], { fill: 'paper' }), drawn(cross, { stroke: 'ink', width: Math.min(scale.thin, half * 0.12) })];
}

/** Where the sheet is pushed against the guide at its side, low enough to be near the gripper edge. */
function sideLay({ sheet, lay }: SheetView, words: PictureWords, scale: Scale): SceneItem[] {
  const { unit } = scale;
  const out = lay === 'left' ? -1 : 1;
  const edge = lay === 'left' ? 0 : sheet.width;
  const y = sheet.height * 0.22;
  const wedge = polyline([{ x: edge + out * unit * 0.1, y }, { x: edge + out * unit * 1.1, y: y + unit * 0.6 }, { x: edge + out * unit * 1.1, y: y - unit * 0.6 }], true);
  const x = edge + out * unit * (lay === 'left' ? 0.45 : 1.1);
  return [
    drawn([wedge], { fill: 'accent' }),
    drawn([line({ x: edge, y: y - unit * 1.6 }, { x: edge, y: y + unit * 1.6 })], { stroke: 'accent', width: scale.heavy }),
    label(words.sideLay, { x, y: y + unit * 1.9 }, unit * 0.8, { turn: 1, bold: true, paint: 'accent' }),
  ];
}

/** Numbered flags at the places of faults, in the order of the list that goes with the picture. */
function faults({ faults: places = [] }: SheetView, { unit, thin }: Scale): SceneItem[] {
  return places.flatMap((at, i): SceneItem[] => {
    const text = String(i + 1);
    const half = Math.max(textWidth(text, unit, true) / 2 + unit * 0.3, unit * 0.7);
    const foot = at.y + unit * 1.4;
    return [
      drawn([circle(at, unit * 0.35), line({ x: at.x, y: at.y + unit * 0.35 }, { x: at.x, y: foot })], { stroke: 'accent', width: thin * 1.5 }),
      drawn([rectangle(at.x - half, foot, at.x + half, foot + unit * 1.3)], { fill: 'accent' }),
      label(text, { x: at.x, y: foot + unit * 0.29 }, unit, { anchor: 'middle', bold: true, paint: 'paper' }),
    ];
  });
}

function dimensions(view: SheetView, words: PictureWords, format: Format, scale: Scale): SceneItem[] {
  const { unit } = scale;
  const { width, height } = view.sheet;
  // ISO 217: (M) stands after the side that runs in the machine's direction, along the fibres.
  const whole = (axis: 'x' | 'y', length: number, at: number) =>
    dimensionChain({ axis, at, edge: 0, runs: [{ from: 0, step: length, count: 1 }], suffix: axis === view.grain ? ' (M)' : '' }, format, scale);
  return [
    ...whole('x', width, -unit * 3.4),
    ...whole('y', height, -unit * 3),
    ...grainArrow(view, words, scale),
    ...dimensionChain({ axis: 'x', at: height + unit * 1.4, edge: height, runs: stepRuns(view, 'x', format, scale) }, format, scale),
    ...dimensionChain({ axis: 'y', at: width + unit * 2, edge: width, runs: stepRuns(view, 'y', format, scale) }, format, scale),
  ];
}

/** An arrow both ways beside the dimension that the fibres run along, with the (M) of ISO 217. */
function grainArrow({ sheet, grain }: SheetView, words: PictureWords, scale: Scale): SceneItem[] {
  if (!grain) return [];
  const { unit } = scale;
  const length = unit * 5;
  const text = words.grain;
  const tip = unit * 0.35;
  const arrow = (place: (along: number, across: number) => { x: number; y: number }) => [
    line(place(0, 0), place(length, 0)),
    polyline([place(tip, tip), place(0, 0), place(tip, -tip)]),
    polyline([place(length - tip, tip), place(length, 0), place(length - tip, -tip)]),
  ];
  if (grain === 'x') {
    const y = -unit * 2.5;
    const start = unit;
    return [drawn(arrow((along, across) => ({ x: start + along, y: y + across })), { stroke: 'ink', width: scale.thin }), label(text, { x: start + length + unit * 0.5, y: y - unit * 0.3 }, unit * 0.85, { bold: true })];
  }
  const x = -unit * 1.9;
  const start = sheet.height - length - unit;
  return [
    drawn(arrow((along, across) => ({ x: x + across, y: start + along })), { stroke: 'ink', width: scale.thin }),
    label(text, { x: x + unit * 0.3, y: start - unit * 0.5 - textWidth(text, unit * 0.85, true) }, unit * 0.85, { turn: 1, bold: true }),
  ];
}

function legend(layers: readonly string[], fromReel: boolean, words: PictureWords, scale: Scale): LegendEntry[] {
  const roles = [...new Set(layers)].filter((layer) => layer !== BLANKS_LAYER) as Role[];
  const cutFirst = roles.toSorted((a, b) => Number(b === 'Cutting') - Number(a === 'Cutting') || Number(a === 'Bleed') - Number(b === 'Bleed'));
  return [
    ...cutFirst.map((role) => ({ look: ruleLook(role, scale), text: role === 'Bleed' ? words.bleed : (words.roles[role] ?? role) })),
    ...(fromReel ? [] : [{ look: knifeLimitLook(scale), text: words.knifeLimit }, { look: inkLimitLook(scale), text: words.inkLimit }]),
    { look: wasteLook(scale), text: words.waste, hatched: true },
  ];
}
