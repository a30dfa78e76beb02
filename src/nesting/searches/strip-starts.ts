import type { Random } from '../../base/random.ts';
import type { Crowd } from './guided-crowd.ts';
import { copyInto, DISTURBANCES, scatter, scatterOne, type Standing } from './guided-starts.ts';

/**
 * Fills a crowd on a shortened strip: from the best layout, squeezed or with what sticks out put elsewhere, or from the
 * layout that came nearest at this length, disturbed. Returns the kind's name.
 */
export function makeStripStart(crowd: Crowd, best: readonly Standing[] | undefined, failed: readonly Standing[] | undefined, random: Random): string {
  const kinds: [string, () => void][] = [];
  if (!best) kinds.push(['random', () => scatter(crowd, 0, random)]);
  else if (!failed) kinds.push(['squeezed', () => squeeze(crowd, best)], ['cut', () => cut(crowd, best, random)]);
  if (failed) {
    kinds.push(['exchanged', () => exchange(crowd, failed, random)]);
    for (const [name, disturb] of DISTURBANCES) kinds.push([name, () => disturb(crowd, failed, random)]);
  }
  const [name, start] = kinds[random.below(kinds.length)];
  start();
  crowd.refresh();
  return name;
}

/** Every centre brought nearer to the strip's start in the same ratio. */
function squeeze(crowd: Crowd, best: readonly Standing[]): void {
  const { area, poses } = crowd.prepared;
  const end = Math.max(...best.map(({ pose, x }) => x + poses[pose].width / 2));
  const ratio = (area.maxX - area.minX) / (end - area.minX);
  best.forEach(({ pose, x, y }, i) => crowd.place(i, pose, area.minX + (x - area.minX) * ratio, y));
}

/** Everything stays but what reaches beyond the end: that goes anywhere. */
function cut(crowd: Crowd, best: readonly Standing[], random: Random): void {
  const { poses } = crowd.prepared;
  best.forEach(({ pose, x, y }, i) => {
    if (x <= poses[pose].maxX) crowd.place(i, pose, x, y);
    else scatterOne(crowd, i, random);
  });
}

/** Two blanks of different parts change places, once or a few times; large ones more often. */
function exchange(crowd: Crowd, failed: readonly Standing[], random: Random): void {
  copyInto(crowd, failed);
  const times = 1 + random.below(3);
  for (let k = 0; k < times; k++) {
    const i = largerOf(crowd, random.below(crowd.movable), random.below(crowd.movable));
    const j = largerOf(crowd, random.below(crowd.movable), random.below(crowd.movable));
    if (crowd.choice[i] === crowd.choice[j]) continue;
    const { x, y } = { x: crowd.x[i], y: crowd.y[i] };
    crowd.place(i, crowd.pose[i], crowd.x[j], crowd.y[j]);
    crowd.place(j, crowd.pose[j], x, y);
  }
}

function largerOf(crowd: Crowd, i: number, j: number): number {
  const { poses } = crowd.prepared;
  const a = poses[crowd.pose[i]];
  const b = poses[crowd.pose[j]];
  return a.width * a.height >= b.width * b.height ? i : j;
}
