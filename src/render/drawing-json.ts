import type { Issue } from '../base/issue.ts';
import { pathLength } from '../dieline/curve-part.ts';
import type { Blank, Dieline } from '../dieline/dieline.ts';
import type { ReadOptions } from '../dieline/options.ts';
import { ruleLengths } from '../dieline/rule-lengths.ts';
import { CHORD_TOLERANCE_MM, JOIN_TOLERANCE_MM } from '../dieline/tolerances.ts';
import { mapPath, scaling } from '../geometry/affine.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { loopArea } from '../geometry/loop-area.ts';
import { writePathData } from '../geometry/path-data.ts';
import { english } from './messages/english.ts';

/** Decimals of millimetres in the JSON: micrometres, and as much of areas. */
const DECIMALS = 3;

function rounded(value: number): number {
  return Math.round(value * 10 ** DECIMALS) / 10 ** DECIMALS + 0;
}

/**
 * The drawing as understood, format `blankwright-drawing` version 1. Lengths in mm. Places and paths are in the drawing's
 * own axes as its program shows them, `yAxis` saying which way y grows: down from the page's upper left corner, or up from
 * the origin. The figures at the top are those of the chosen blank, null where it is open which one is meant.
 */
export function drawingJson(file: string, dieline: Dieline, chosen: Blank | undefined, options: ReadOptions): string {
  const content = {
    format: 'blankwright-drawing',
    version: 1,
    units: 'mm',
    file,
    fingerprint: dieline.fingerprint,
    yAxis: dieline.yAxis,
    scale: { mmPerUnit: dieline.scale.mmPerUnit, from: dieline.scale.from },
    grain: dieline.grain ?? null,
    tolerances: { joinMm: JOIN_TOLERANCE_MM, closeGapsMm: options.closeGaps, chordMm: CHORD_TOLERANCE_MM },
    blank: chosen?.number ?? null,
    ...(chosen ? figures(chosen, dieline.yAxis) : { areaMm2: null, widthMm: null, heightMm: null, ruleLengthMm: null, openings: [], rules: [] }),
    blanks: dieline.blanks.map((blank) => ({ number: blank.number, ...figures(blank, dieline.yAxis) })),
    issues: dieline.issues.map(issueEntry),
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}

function figures(blank: Blank, yAxis: Dieline['yAxis']) {
  const { box } = blank;
  const path = (curves: CurvePath) => writePathData(yAxis === 'up' ? curves : mapPath(scaling(1, -1), curves), DECIMALS);
  const lengths = Object.entries(ruleLengths(blank)).map(([role, length]) => [role, rounded(length)]);
  return {
    areaMm2: rounded(blank.areaMm2),
    widthMm: rounded(box.maxX - box.minX),
    heightMm: rounded(box.maxY - box.minY),
    box: { x: rounded(box.minX), y: rounded(yAxis === 'up' ? box.minY : -box.maxY), width: rounded(box.maxX - box.minX), height: rounded(box.maxY - box.minY) },
    ruleLengthMm: Object.fromEntries(lengths) as Record<string, number>,
    outline: path(blank.outline),
    openings: blank.openings.map((opening) => ({ areaMm2: rounded(Math.abs(loopArea(opening))), path: path(opening) })),
    rules: blank.rules.map(({ role, reason, curves, closed, source }) => ({ role, reason, lengthMm: rounded(pathLength(curves)), closed, source, path: path(curves) })),
  };
}

function issueEntry(issue: Issue) {
  const { code, severity, place, where } = issue;
  return { code, severity, ...(place ? { place } : {}), ...(where ? { where } : {}), message: english.sentence(issue) };
}
