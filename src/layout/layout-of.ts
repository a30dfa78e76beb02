import { inputError } from '../base/issue.ts';
import { toMicrons, toMillimetres } from '../base/units.ts';
import { degreesOf, turnOfDegrees } from '../geometry/turn.ts';
import type { Design, LayoutFile } from './layout-file.ts';
import type { Part, Placement, Problem } from './problem.ts';
import { mmArea, mmRing } from './rings.ts';
import { stationOrder } from './station-order.ts';

/** The layout file's content for a search's placements, put in station order. `designs` run parallel to `problem.parts`. */
export function layoutOf(problem: Problem, designs: readonly Design[], placements: readonly Placement[], result?: LayoutFile['result']): LayoutFile {
  const { sheet, rules, lay, parts } = problem;
  return {
    sheet: { width: toMillimetres(sheet.width), height: toMillimetres(sheet.height) },
    usable: mmArea(problem.usable),
    printable: mmArea(problem.printable),
    lay,
    keepOut: problem.keepOuts.map(({ kind, ring }) => ({ kind, ring: mmRing(ring) })),
    rules: { gap: toMillimetres(rules.gap), bleed: toMillimetres(rules.bleed), bleedMeeting: rules.bleedMeeting, commonKnife: rules.commonKnife, ...(rules.commonKnifePairs && { commonKnifePairs: rules.commonKnifePairs }) },
    designs,
    placements: stationOrder(placements, parts, lay).map(({ part, turn, x, y }) => ({
      design: parts[part]!.id,
      rotation: degreesOf(turn),
      x: toMillimetres(x),
      y: toMillimetres(y),
    })),
    ...(result && { result }),
  };
}

/** A layout file's placements for a search over `parts`, which must hold every design placed. */
export function placementsOf(layout: LayoutFile, parts: readonly Part[]): Placement[] {
  const index = new Map(parts.map((part, i) => [part.id, i]));
  return layout.placements.map(({ design, rotation, x, y }, number) => {
    const part = index.get(design);
    const turn = turnOfDegrees(rotation);
    if (part === undefined) throw inputError('design-unknown', { where: `placements[${number}]`, facts: { design } });
    if (turn === undefined) throw inputError('rotation-not-quarter', { where: `placements[${number}]`, facts: { rotation } });
    return { part, turn, x: toMicrons(x), y: toMicrons(y) };
  });
}
