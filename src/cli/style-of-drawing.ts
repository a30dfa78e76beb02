import { InputError } from '../base/issue.ts';
import type { Blank } from '../dieline/dieline.ts';
import { dielineOfStyle } from '../dieline/styles/dieline-of-style.ts';
import type { StyledSource } from '../pipeline/near-miss-changes.ts';
import { readText } from './files.ts';

/** Two boxes or areas that agree to this are of one blank, mm: three decimals are written. */
const SAME_MM = 0.01;

/**
 * Style and values that `blank` wrote onto a drawing; undefined where there are none, or where the drawing was changed
 * since and is another blank than they give.
 */
export function styleOfDrawing(path: string, blank: Blank): StyledSource | undefined {
  const root = /<svg\b[^>]*>/.exec(readText(path))?.[0] ?? '';
  const [id, values] = [attribute(root, 'data-style'), attribute(root, 'data-values')];
  if (id === undefined || values === undefined) return undefined;
  try {
    const source = { id, values: JSON.parse(values) as StyledSource['values'] };
    const [drawn] = dielineOfStyle(source.id, source.values).blanks;
    return isSame(drawn, blank) ? source : undefined;
  } catch (error) {
    if (error instanceof InputError || error instanceof SyntaxError || error instanceof TypeError) return undefined;
    throw error;
  }
}

function attribute(tag: string, name: string): string | undefined {
  return new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1].replaceAll('&quot;', '"').replaceAll('&amp;', '&');
}

function isSame(a: Blank, b: Blank): boolean {
  const sides = ({ box }: Blank) => [box.maxX - box.minX, box.maxY - box.minY];
  const perimeter = sides(a)[0] + sides(a)[1];
  return sides(a).every((side, i) => Math.abs(side - sides(b)[i]) <= SAME_MM) && Math.abs(a.areaMm2 - b.areaMm2) <= SAME_MM * 2 * perimeter;
}
