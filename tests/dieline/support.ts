import type { Dieline } from '../../src/dieline/dieline.ts';
import type { ReadOptions } from '../../src/dieline/options.ts';
import { readSvgDrawing } from '../../src/dieline/read-svg.ts';
import { ruleLengths } from '../../src/dieline/rule-lengths.ts';

/** A drawing in millimetres, y down, on a page of 300 × 300 mm. */
export function page(content: string, attributes = 'width="300mm" height="300mm" viewBox="0 0 300 300"'): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${content}</svg>`;
}

export function read(svg: string, options: Partial<ReadOptions> = {}): Dieline {
  return readSvgDrawing(new TextEncoder().encode(svg), options);
}

export function codes({ issues }: Dieline): string[] {
  return [...new Set(issues.map(({ code }) => code))].sort();
}

/** Width, height, area, number of openings and rule lengths of each blank, rounded to micrometres. */
export function figures(dieline: Dieline) {
  const round = (value: number) => Math.round(value * 1000) / 1000;
  return dieline.blanks.map((blank) => ({
    size: [round(blank.box.maxX - blank.box.minX), round(blank.box.maxY - blank.box.minY)],
    area: round(blank.areaMm2),
    openings: blank.openings.length,
    rules: Object.fromEntries(Object.entries(ruleLengths(blank)).map(([role, length]) => [role, round(length)])),
  }));
}
