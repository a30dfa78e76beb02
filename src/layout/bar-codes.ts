import { inputError, type Issue } from '../base/issue.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { readPathData } from '../geometry/path-data.ts';
import { boxOf, type Box } from '../geometry/point.ts';
import { samePoint } from '../geometry/vector.ts';
import type { Design, LayoutFile } from './layout-file.ts';

/** Which way the bars of a code run, in the axes of its design. */
export type BarAxis = 'x' | 'y';

/** The box of a bar code as the job says it, millimetres of the design. */
export interface GivenBarCode {
  /** Name of the design; undefined for a layout of one. */
  readonly design: string | undefined;
  readonly box: Box;
  readonly bars: BarAxis | undefined;
}

/** How it is known which way the bars run, surest first. */
export type BarsKnownBy = 'said' | 'seen in the artwork' | 'assumed along the shorter side of the box';

export interface BarCode {
  readonly design: string;
  readonly box: Box;
  readonly bars: BarAxis;
  readonly by: BarsKnownBy;
}

/**
 * Bar codes of a layout: boxes that the job names, and areas that the drawings mark as positions of codes. `seen` tells which
 * way the bars of the artwork within a box of a design run, where there are any. Throws InputError where the job names a box
 * of no design or outside of it.
 */
export function barCodesOf({ designs }: LayoutFile, given: readonly GivenBarCode[], seen: (design: string, box: Box) => BarAxis | undefined): BarCode[] {
  const said = given.map(({ design: name, box, bars }) => {
    const design = name === undefined && designs.length === 1 ? designs[0]! : designs.find(({ id }) => id === name);
    const facts = { design: name ?? '', designs: designs.map(({ id }) => id).join(', ') };
    if (!design) throw inputError('bar-code-of-no-design', { where: '--bar-code', facts });
    const blank = boxOf(design.outline.map(([x, y]) => ({ x, y })));
    if (box.minX < blank.minX || box.minY < blank.minY || box.maxX > blank.maxX || box.maxY > blank.maxY) throw inputError('bar-code-outside', { where: '--bar-code', facts: { design: design.id, widthMm: blank.maxX, heightMm: blank.maxY } });
    return { design: design.id, box, bars };
  });
  const marked = designs.flatMap((design) => markedBoxes(design).map((box) => ({ design: design.id, box, bars: undefined })));
  const all = [...said, ...marked.filter(({ design, box }) => !said.some((other) => other.design === design && overlap(other.box, box)))];
  return all.map(({ design, box, bars }): BarCode => {
    if (bars) return { design, box, bars, by: 'said' };
    const found = seen(design, box);
    if (found) return { design, box, bars: found, by: 'seen in the artwork' };
    return { design, box, bars: box.maxX - box.minX >= box.maxY - box.minY ? 'y' : 'x', by: 'assumed along the shorter side of the box' };
  });
}

function markedBoxes({ drawing }: Design): Box[] {
  const areas = (drawing?.paths ?? []).filter(({ role }) => role === 'Positions').flatMap(({ d }) => readPathData(d));
  return areas.filter((path) => samePoint(path[0]!.from, path.at(-1)!.to)).map((path) => boxOf(flattenPath(path, 0.1)));
}

function overlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/**
 * Says of each code on which stations its bars run with the press and on which across it. The sheet travels gripper first, so
 * bars along y of the sheet stand like a picket fence and their thickness keeps; bars across, like the rungs of a ladder, grow
 * with slur and with the stretch of the plate round its cylinder. GS1 General Specifications: print with the height of the
 * bars in the direction of printing. `stations`: how numbers of stations, counted from 1, are written.
 */
export function barCodeIssues({ placements }: Pick<LayoutFile, 'placements'>, codes: readonly BarCode[], stations: (numbers: readonly number[]) => string): Issue[] {
  return codes.flatMap(({ design, box, bars, by }): Issue[] => {
    const of = placements.flatMap((placement, i) => (placement.design === design ? [{ number: i + 1, isAlong: (bars === 'y') === (placement.rotation % 180 === 0) }] : []));
    if (of.length === 0) return [];
    const [along, across] = [true, false].map((wanted) => of.filter(({ isAlong }) => isAlong === wanted).map(({ number }) => number)) as [number[], number[]];
    const facts = { design, x: box.minX, y: box.minY, widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY, by };
    if (across.length === 0) return [{ code: 'bar-code-along', severity: 'note', facts: { ...facts, stations: stations(along) } }];
    if (along.length === 0) return [{ code: 'bar-code-across', severity: 'warning', facts: { ...facts, stations: stations(across) } }];
    return [{ code: 'bar-code-turned', severity: 'warning', facts: { ...facts, along: stations(along), across: stations(across) } }];
  });
}
