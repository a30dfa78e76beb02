import type { FlatBlank } from '../../src/dieline/styles/lay-flat.ts';
import { flattenPath } from '../../src/geometry/flatten.ts';
import type { CurvePath } from '../../src/geometry/curve.ts';
import type { Point } from '../../src/geometry/point.ts';

export type Place = readonly [x: number, y: number, z: number];

/** Points of a path on the flat blank. */
export const pointsOf = (path: CurvePath): Point[] => flattenPath(path, 0.05);

/**
 * The blank folded: every panel turned up about its hinge by the angle that `angleOf` gives it, degrees, 180 being flat on the
 * panel it hangs on. `put` takes a place on a panel's flat plane to where it is then, `lift` the other way.
 */
export function fold({ panels }: Pick<FlatBlank, 'panels'>, angleOf: (id: string) => number) {
  const index = (id: string) => panels.findIndex((panel) => panel.id === id);
  const turned = (panel: number, [x, y, z]: Place, sign: 1 | -1): Place => {
    const { hinge } = panels[panel]!.hangsOn!;
    const length = Math.hypot(hinge.to.x - hinge.from.x, hinge.to.y - hinge.from.y);
    const [ux, uy] = [(hinge.to.x - hinge.from.x) / length, (hinge.to.y - hinge.from.y) / length];
    const along = (x - hinge.from.x) * ux + (y - hinge.from.y) * uy;
    // To the left of the hinge; the panel lies to its right and comes up.
    const aside = -(x - hinge.from.x) * uy + (y - hinge.from.y) * ux;
    const angle = (-sign * angleOf(panels[panel]!.id) * Math.PI) / 180;
    const [left, up] = [aside * Math.cos(angle) - z * Math.sin(angle), aside * Math.sin(angle) + z * Math.cos(angle)];
    return [hinge.from.x + along * ux - left * uy, hinge.from.y + along * uy + left * ux, up];
  };
  const put = (panel: number, place: Place): Place => {
    const { hangsOn } = panels[panel]!;
    return hangsOn ? put(hangsOn.panel, turned(panel, place, 1)) : place;
  };
  const lift = (panel: number, place: Place): Place => {
    const { hangsOn } = panels[panel]!;
    return hangsOn ? turned(panel, lift(hangsOn.panel, place), -1) : place;
  };
  /** Where points of one panel's plane are, seen in the flat plane of another: z is how far above it they are. */
  const seenFrom = (onto: string, on: string, points: readonly Point[]): Place[] => points.map(({ x, y }) => lift(index(onto), put(index(on), [x, y, 0])));
  return { seenFrom };
}
