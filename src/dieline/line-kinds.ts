import type { DrawnLine, LineSource } from './drawing.ts';
import { WIDTH_KIND_FACTOR } from './tolerances.ts';

/** How a line is drawn, as far as it may tell lines apart. */
export interface LineKind {
  /** Equal for lines of one kind. */
  readonly key: string;
  readonly pattern: DashPattern;
}

export type DashPattern = 'solid' | 'dashed' | 'dotted' | 'dash-dot';

/** Colour, dash pattern and clearly different widths make kinds; slightly different widths do not. */
export function lineKinds(lines: readonly DrawnLine[]): LineKind[] {
  const widthClass = classifyWidths(lines.map(({ source }) => source.widthMm));
  return lines.map(({ source }) => {
    const pattern = dashPattern(source);
    return { key: `${source.stroke} ${pattern} ${widthClass(source.widthMm)}`, pattern };
  });
}

/** Dots are dashes not longer than the line is wide, by half as much again. More than one length of dash: dash-dot. */
export function dashPattern({ dash, widthMm }: Pick<LineSource, 'dash' | 'widthMm'>): DashPattern {
  if (dash.length === 0) return 'solid';
  const cycle = dash.length % 2 === 0 ? dash : [...dash, ...dash];
  const strokes = cycle.filter((_, i) => i % 2 === 0);
  const longest = Math.max(...strokes);
  if (longest <= 1.5 * widthMm) return 'dotted';
  return strokes.every((length) => length > longest / 2) ? 'dashed' : 'dash-dot';
}

function classifyWidths(widths: readonly number[]): (width: number) => number {
  const firsts: number[] = [];
  for (const width of [...new Set(widths)].sort((a, b) => a - b)) {
    if (firsts.length === 0 || width >= WIDTH_KIND_FACTOR * firsts[firsts.length - 1]) firsts.push(width);
  }
  return (width) => firsts.findLastIndex((first) => width >= first);
}
