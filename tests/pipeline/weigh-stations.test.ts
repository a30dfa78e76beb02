import { describe, expect, test } from 'vitest';
import { countStations, dealStations } from '../../src/estimate/gang/deal-stations.ts';
import { createRandom } from '../../src/base/random.ts';
import { weighStations } from '../../src/pipeline/gang/weigh-stations.ts';

describe('stations settled by hand', () => {
  test('one form: its longest version decides, the others are over', async () => {
    // 3 stations of mint make 300 in 100 pressings; sage on one station needs 120, so mint is over by 60.
    expect(await weighStations({ quantities: [300, 120], counts: [[3, 1]] })).toEqual({ pressings: [120], overs: [60, 0], missing: [], tooMany: [] });
  });

  test('a version that no station prints is named, and wanting by its quantity', async () => {
    expect(await weighStations({ quantities: [10, 7], counts: [[2, 0]] })).toEqual({ pressings: [5], overs: [0, -7], missing: [1], tooMany: [] });
    expect(await weighStations({ quantities: [10], counts: [[0], [0]] })).toEqual({ pressings: [0, 0], overs: [-10], missing: [0], tooMany: [] });
  });

  test('limits of overs: least ones are made, greatest ones kept where some pressings keep them, else named', async () => {
    expect(await weighStations({ quantities: [300, 120], counts: [[3, 1]], limits: [{ least: 0 }, { least: 10 }] })).toEqual({ pressings: [130], overs: [90, 10], missing: [], tooMany: [] });
    expect(await weighStations({ quantities: [300, 120], counts: [[3, 1]], limits: [{ least: 0, greatest: 59 }, { least: 0 }] })).toEqual({ pressings: [120], overs: [60, 0], missing: [], tooMany: [0] });
    // 120 of the first form alone are fewest, but make 60 mint too many; with the second none is over.
    const two = { quantities: [300, 120], counts: [[3, 1], [0, 1]] };
    expect((await weighStations(two)).pressings).toEqual([120, 0]);
    expect(await weighStations({ ...two, limits: [{ least: 0, greatest: 0 }, { least: 0, greatest: 0 }] })).toEqual({ pressings: [100, 20], overs: [0, 0], missing: [], tooMany: [] });
  });

  test('few copies on two or three forms: as few pressings as trying every run gives', async () => {
    const random = createRandom(7);
    for (let round = 0; round < 60; round++) {
      const [forms, versions] = [2 + (round % 2), 3];
      const quantities = Array.from({ length: versions }, () => 1 + random.below(25));
      const counts = Array.from({ length: forms }, () => Array.from({ length: versions }, () => random.below(4)));
      const { pressings, overs, missing } = await weighStations({ quantities, counts });
      expect(overs.every((over, version) => over >= 0 || missing.includes(version))).toBe(true);
      const wanted = quantities.map((quantity, version) => (missing.includes(version) ? 0 : quantity));
      expect(sum(pressings), JSON.stringify({ quantities, counts })).toBe(byTrying(wanted, counts));
    }
  });

  test('stations are dealt as counted, and a version keeps those it has', () => {
    const forms = [[4, 2, 0], [1, 2, 2]];
    const dealt = dealStations(forms, 6);
    expect(countStations(dealt, 3)).toEqual(forms);
    expect(dealt[0]).toEqual([0, 0, 0, 0, 1, 1]);
    // Four plates stay or go; only the stations that version 0 gave up change, one of them staying empty.
    expect(dealt[1]).toEqual([0, 2, 2, undefined, 1, 1]);
  });
});

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** The fewest pressings by trying all runs up to the largest quantity. */
function byTrying(quantities: readonly number[], counts: readonly (readonly number[])[]): number {
  const most = Math.max(...quantities);
  let best = Infinity;
  const tryFrom = (form: number, runs: readonly number[]): void => {
    if (sum(runs) >= best) return;
    if (quantities.every((quantity, version) => runs.reduce((made, run, f) => made + run * counts[f]![version]!, 0) >= quantity)) best = sum(runs);
    else if (form < counts.length) for (let run = 0; run <= most; run++) tryFrom(form + 1, [...runs, run]);
  };
  tryFrom(0, []);
  return best;
}
