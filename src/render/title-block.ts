import { hatch } from './hatch.ts';
import { HATCH, type Scale } from './scale.ts';
import type { Look, SceneItem } from './scene.ts';
import { drawn, label, line, rectangle } from './shapes.ts';
import { textWidth } from './text-width.ts';

export interface Cell {
  readonly label: string;
  readonly value: string;
}

/** A kind of line on the picture, or of hatched area, and what it stands for. */
export interface LegendEntry {
  readonly look: Look;
  readonly text: string;
  readonly hatched?: boolean;
  /** An area: its sample is a filled box. */
  readonly area?: boolean;
}

export interface TitleBlock {
  readonly items: readonly SceneItem[];
  readonly depth: number;
}

const ROW = 2.7;
const LABEL_SIZE = 0.68;
const VALUE_SIZE = 1;
const PAD = 0.6;
const SAMPLE = 3;

/**
 * The table of figures under a sheet: the first cell large at its left, the others in rows beside it, then the kinds of
 * lines. Cells are as wide as their texts; each row is stretched to the full width.
 */
export function titleBlock(cells: readonly Cell[], legend: readonly LegendEntry[], left: number, top: number, width: number, scale: Scale): TitleBlock {
  const { unit } = scale;
  const items: SceneItem[] = [];
  const lines = [];
  const [lead, ...others] = cells;
  const leadWidth = lead ? Math.max(textWidth(lead.value, unit * 2.3, true), textWidth(lead.label, unit * LABEL_SIZE)) + 2 * PAD * unit : 0;
  const rows = intoRows(others, (cell) => cellWidth(cell, unit), width - leadWidth);
  const cellsDepth = Math.max(rows.length, lead ? 1.5 : 0) * ROW * unit;
  const rowDepth = cellsDepth / rows.length;

  if (lead) {
    items.push(label(lead.label, { x: left + PAD * unit, y: top - 0.95 * unit }, unit * LABEL_SIZE, { paint: 'grey' }));
    items.push(label(lead.value, { x: left + PAD * unit, y: top - cellsDepth + 0.75 * unit }, unit * 2.3, { bold: true }));
    lines.push(line({ x: left + leadWidth, y: top }, { x: left + leadWidth, y: top - cellsDepth }));
  }
  rows.forEach((row, r) => {
    const natural = row.reduce((sum, cell) => sum + cellWidth(cell, unit), 0);
    const stretch = (width - leadWidth) / natural;
    const y = top - r * rowDepth;
    let x = left + leadWidth;
    if (r > 0) lines.push(line({ x, y }, { x: left + width, y }));
    row.forEach((cell, c) => {
      const cellSpan = cellWidth(cell, unit) * stretch;
      const room = cellSpan - 2 * PAD * unit;
      if (c > 0) lines.push(line({ x, y }, { x, y: y - rowDepth }));
      items.push(label(cell.label, { x: x + PAD * unit, y: y - 0.95 * unit }, shrunk(cell.label, unit * LABEL_SIZE, room), { paint: 'grey' }));
      items.push(label(cell.value, { x: x + PAD * unit, y: y - rowDepth + 0.75 * unit }, shrunk(cell.value, unit * VALUE_SIZE, room, true), { bold: true }));
      x += cellSpan;
    });
  });

  const legendRows = intoRows(legend, (entry) => entryWidth(entry, unit), width);
  const legendStep = 1.5 * unit;
  legendRows.forEach((row, r) => {
    const y = top - cellsDepth - (r + 1) * legendStep;
    let x = left + PAD * unit;
    for (const entry of row) {
      const sample = entry.area ? [rectangle(x, y - 0.1 * unit, x + SAMPLE * unit, y + 0.7 * unit)] : entry.hatched ? hatch(x, y - 0.1 * unit, x + SAMPLE * unit, y + 0.7 * unit, unit * HATCH) : [line({ x, y: y + 0.25 * unit }, { x: x + SAMPLE * unit, y: y + 0.25 * unit })];
      items.push(drawn(sample, entry.look));
      items.push(label(entry.text, { x: x + (SAMPLE + 0.5) * unit, y }, unit * 0.75));
      x += entryWidth(entry, unit);
    }
  });
  const legendDepth = legendRows.length > 0 ? legendRows.length * legendStep + 0.7 * unit : 0;
  if (legendDepth > 0) lines.push(line({ x: left, y: top - cellsDepth }, { x: left + width, y: top - cellsDepth }));

  const depth = cellsDepth + legendDepth;
  items.push(drawn(lines, { stroke: 'grey', width: scale.fine }));
  items.push(drawn([rectangle(left, top - depth, left + width, top)], { stroke: 'ink', width: scale.thin }));
  return { items, depth };
}

function cellWidth(cell: Cell, unit: number): number {
  return Math.max(textWidth(cell.label, unit * LABEL_SIZE), textWidth(cell.value, unit * VALUE_SIZE, true)) + 2 * PAD * unit;
}

function entryWidth(entry: LegendEntry, unit: number): number {
  return (SAMPLE + 0.5 + 1.2) * unit + textWidth(entry.text, unit * 0.75);
}

/** Fills rows in order; a thing wider than a row has one to itself. Rows are then evened out, so that none is nearly empty. */
function intoRows<T>(things: readonly T[], widthOf: (thing: T) => number, width: number): T[][] {
  const fill = (room: number) => {
    const rows: T[][] = [];
    let used = Infinity;
    for (const thing of things) {
      if (used + widthOf(thing) > room) {
        rows.push([]);
        used = 0;
      }
      rows.at(-1)!.push(thing);
      used += widthOf(thing);
    }
    return rows;
  };
  const count = fill(width).length;
  for (let room = width * 0.5; room < width; room += width * 0.05) {
    const rows = fill(room);
    if (rows.length === count) return rows;
  }
  return fill(width);
}

function shrunk(text: string, size: number, room: number, bold = false): number {
  return Math.min(size, (size * room) / textWidth(text, size, bold));
}
