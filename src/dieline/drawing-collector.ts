import type { Issue } from '../base/issue.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Drawing, DrawnLine, DrawnText, LineSource } from './drawing.ts';
import { READING_LIMITS } from './limits.ts';
import type { ReadOptions } from './options.ts';
import { limitPassed } from './xml.ts';

/**
 * What a reader of any format finds while it goes through a file: every line counted against the limits, every flaw said
 * once. Its methods throw InputError `drawing-limit`. `onWork`: of `ReadOptions`.
 */
export function collectDrawing(onWork?: ReadOptions['onWork']) {
  const lines: DrawnLine[] = [];
  const fills: DrawnLine[] = [];
  const texts: DrawnText[] = [];
  const unreadTexts: DrawnText[] = [];
  const issues: Issue[] = [];
  let drawn = 0;
  let curves = 0;

  const said = new Map<string, number>();
  const once = (code: string, severity: Issue['severity'], where: string, facts: Issue['facts'] = {}) => {
    const count = (said.get(code) ?? 0) + (said.has(`${code} ${where}`) ? 0 : 1);
    if (count > MOST_OF_ONE_CODE || said.has(`${code} ${where}`)) return;
    said.set(code, count).set(`${code} ${where}`, 1);
    issues.push({ code, severity, where, facts });
  };

  /** The number of the element that is drawn next, from 1. */
  const nextElement = (): number => {
    onWork?.();
    if (++drawn > READING_LIMITS.drawnElements) throw limitPassed('drawn elements', READING_LIMITS.drawnElements);
    return drawn;
  };

  const addPath = (to: 'lines' | 'fills', path: DrawnLine): void => {
    if (!withinRange(path.curves)) return once('coordinates-out-of-range', 'warning', path.source.described, { limit: READING_LIMITS.coordinateMm });
    curves += path.curves.length;
    if (curves > READING_LIMITS.curves) throw limitPassed('curves', READING_LIMITS.curves);
    (to === 'lines' ? lines : fills).push(path);
  };

  const finish = (rest: Pick<Drawing, 'page' | 'scale' | 'fingerprint' | 'yAxis'>): Drawing => ({ lines, fills, texts, unreadTexts, issues, ...rest });
  return { lines, fills, texts, unreadTexts, issues, once, nextElement, elements: () => drawn, addPath, finish };
}

export type DrawingCollector = ReturnType<typeof collectDrawing>;

/** What all subpaths of one element are drawn with. */
export type Painting = Pick<LineSource, 'stroke' | 'dash' | 'widthMm' | 'filled' | 'marked'>;

/** Elements with one and the same flaw that are listed; more are as one. */
const MOST_OF_ONE_CODE = 20;

function withinRange(path: CurvePath): boolean {
  const within = (value: number) => Math.abs(value) <= READING_LIMITS.coordinateMm;
  return path.every((curve) => {
    const points = curve.kind === 'cubic' ? [curve.from, curve.control1, curve.control2, curve.to] : [curve.from, curve.to];
    const radii = curve.kind === 'arc' ? [curve.radiusX, curve.radiusY] : [];
    return points.every(({ x, y }) => within(x) && within(y)) && radii.every(within);
  });
}
