import type { LayoutFile } from '../layout/layout-file.ts';
import type { CutSequence } from '../estimate/guillotine/cut-sequence.ts';
import type { Format } from './format.ts';
import type { CuttingWords } from './messages/english-cutting.ts';
import { HATCH, scaleFor } from './scale.ts';
import type { Scene, SceneItem } from './scene.ts';
import { hatch } from './hatch.ts';
import { circle, drawn, label, line, rectangle } from './shapes.ts';
import { placedBoxes } from './step-runs.ts';
import { sceneToSvg } from './svg.ts';
import { viewOfLayout } from './view-of-layout.ts';

/** Room around the sheet for the numbers of the cuts, in units of the body text. */
const ROOM = 2.4;

/** The sheet with its labels and every cut, numbered as in the cut list. */
export function cutPicture(layout: LayoutFile, { lines, strokes }: CutSequence, words: CuttingWords, format: Format, idPrefix = 'cuts-'): string {
  const { width, height } = layout.sheet;
  const scale = scaleFor(layout.sheet);
  const { unit } = scale;
  const boxes = placedBoxes(viewOfLayout(layout, { figures: [] }));
  const room = ROOM * unit;
  const scene: Scene = {
    title: `${words.headings.picture}: ${format.size(width, height)}`,
    description: words.picture(strokes, boxes.length),
    box: { minX: -room, minY: -room, maxX: width + room, maxY: height + room },
    sheet: { width, height },
    symbols: [],
    layers: [
      { name: 'Surround', items: [drawn([rectangle(-room, -room, width + room, height + room)], { fill: 'paper' })] },
      { name: 'Waste', items: [drawn(hatch(0, 0, width, height, unit * HATCH), { stroke: 'hatch', width: scale.fine })] },
      { name: 'Labels', items: [drawn(boxes.map(({ minX, minY, maxX, maxY }) => rectangle(minX, minY, maxX, maxY)), { fill: 'blank', stroke: 'ink', width: scale.thin })] },
      { name: 'Sheet edge', items: [drawn([rectangle(0, 0, width, height)], { stroke: 'ink', width: scale.thin })] },
      { name: 'Cuts', items: lines.map(({ axis, at, from, to, step }) => drawn([axis === 'x' ? line({ x: at, y: from }, { x: at, y: to }) : line({ x: from, y: at }, { x: to, y: at })], { stroke: 'accent', width: step === 0 ? scale.heavy : scale.cut })) },
      { name: 'Numbers', items: numbers(lines, unit, scale.thin) },
    ],
  };
  return sceneToSvg(scene, { idPrefix, size: 'fitted' });
}

/** Beside the sheet where a cut begins at its edge, else a little way along the cut. */
function numbers(lines: CutSequence['lines'], unit: number, thin: number): SceneItem[] {
  const radius = 0.65 * unit;
  const isTwin = (one: CutSequence['lines'][number], other: CutSequence['lines'][number]) => one.step === other.step && one.axis === other.axis && one.from === other.from && Math.abs(one.at - other.at) < 2 * radius;
  // The two cuts on either side of a gap share their number.
  return lines.filter((one, i) => !lines.slice(0, i).some((other) => isTwin(one, other))).flatMap(({ axis, at, from, to, step }) => {
    const along = from === 0 ? -1.2 * unit : from + Math.min(1.2 * unit, (to - from) / 4);
    const centre = axis === 'x' ? { x: at, y: along } : { x: along, y: at };
    const text = label(String(step + 1), { x: centre.x, y: centre.y - 0.3 * unit }, 0.85 * unit, { anchor: 'middle', bold: true, paint: 'accent' });
    return [drawn([circle(centre, radius)], { fill: 'paper', stroke: 'accent', width: thin }), text];
  });
}
