import { describe, expect, test } from 'vitest';
import type { Dieline } from '../../src/dieline/dieline.ts';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { mapPath, rotation } from '../../src/geometry/affine.ts';
import { flattenPath } from '../../src/geometry/flatten.ts';
import { boxOf } from '../../src/geometry/point.ts';
import { preparePart } from '../../src/layout/part.ts';
import { judgeForProduction } from '../../src/layout/sound.ts';
import { handover } from '../../src/pipeline/handover.ts';
import { at, layoutWith } from '../support/layouts.ts';
import { distanceToOutline } from '../support/outline-distance.ts';
import { readSample, sampleDrawings } from '../support/sample-figures.ts';

/** Our own files read back must hold the blank that was laid out: the bound that users are promised, mm. */
const PROMISED_MM = 0.01;

/** Much finer than the promise, so that the chords themselves do not decide. */
const CHORD_MM = 0.0005;

/** Largest distance of either outline from the other, mm, boxes put on one another by their lower left corners. */
function apart(a: Dieline['blanks'][number], b: Dieline['blanks'][number]): number {
  const [p, q] = [a, b].map(({ outline, box }) => flattenPath(outline, CHORD_MM).map(({ x, y }) => ({ x: x - box.minX, y: y - box.minY })));
  return Math.max(...p!.map((point) => distanceToOutline(point, q!)), ...q!.map((point) => distanceToOutline(point, p!)));
}

/** The blank turned by half a turn. */
function upsideDown(blank: Dieline['blanks'][number]): Dieline['blanks'][number] {
  const outline = mapPath(rotation(180), blank.outline);
  return { ...blank, outline, box: boxOf(flattenPath(outline, CHORD_MM)) };
}

describe.each(sampleDrawings().filter((name) => readSample(name).blanks[0]!.rules.every(({ role }) => role !== 'Unknown')))('%s', (name) => {
  const dieline = readSample(name);
  const [blank] = dieline.blanks;
  const { design } = preparePart(blank!, { id: 'it', turns: [0, 2], fingerprint: dieline.fingerprint });
  const width = blank!.box.maxX - blank!.box.minX;
  const height = blank!.box.maxY - blank!.box.minY;
  const size = { width: 2 * width + 60, height: height + 40 };
  const whole = { x: 0, y: 0, ...size };
  const layout = layoutWith([design], [at('it', 20, 20), at('it', 40 + 2 * width, 20 + height, 180)], { sheet: size, usable: whole, printable: whole });

  test.each(['die-printed-side.dxf', 'sheet-steps.pdf'])('%s read back is the same blank, upright and turned', async (file) => {
    const { sound } = judgeForProduction(layout);
    const { files } = await handover(sound!, {});
    const { content } = files.find((candidate) => candidate.name === file)!;
    const read = await readDrawing(typeof content === 'string' ? new TextEncoder().encode(content) : content);
    expect(read.blanks).toHaveLength(2);
    const [left, right] = read.blanks.toSorted((a, b) => a.box.minX - b.box.minX);
    expect(apart(left!, blank!)).toBeLessThan(PROMISED_MM);
    expect(apart(right!, upsideDown(blank!))).toBeLessThan(PROMISED_MM);
    for (const found of [left!, right!]) {
      expect(found.openings).toHaveLength(blank!.openings.length);
      expect(Math.abs(found.areaMm2 - blank!.areaMm2)).toBeLessThan(PROMISED_MM * 4 * (width + height));
      expect([...new Set(found.rules.map(({ role }) => role))].toSorted()).toEqual([...new Set(blank!.rules.map(({ role }) => role))].toSorted());
    }
  });
});
