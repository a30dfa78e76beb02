import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fewestPressings, pressingsByQuantity, type FormRun } from '../../src/estimate/gang/run-lengths.ts';
import { createWorkMeter } from '../../src/estimate/gang/work-meter.ts';

// Cat food: CSPLib problem 002, Proll and Smith, INFORMS J. Comput. 10 (1998) 265–275, optimal values there.
// Herbs: optimal values computed apart, exact. Covers: Romero (published 139 280.96; the optimum 136 472 equals the bound).
interface Instance {
  readonly name: string;
  readonly slots: number;
  readonly demands: readonly number[];
}
const instances = (JSON.parse(readFileSync(new URL('./gang-run.json', import.meta.url), 'utf8')) as { instances: Instance[] }).instances;
const instance = (name: string) => instances.find((one) => one.name.startsWith(name))!;

const total = (forms: readonly FormRun[] | undefined) => forms?.reduce((sum, form) => sum + form.pressings, 0);

function expectDemandMet(forms: readonly FormRun[], { slots, demands }: Instance): void {
  for (const form of forms) expect(form.counts.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(slots);
  demands.forEach((demand, version) => {
    expect(forms.reduce((made, form) => made + form.counts[version]! * form.pressings, 0)).toBeGreaterThanOrEqual(demand);
  });
}

describe('gang runs with proved optima', () => {
  test.each([
    ['catfood', 1, 550],
    ['catfood', 2, 418],
    ['catfood', 3, 408],
    ['herbs', 1, 115],
    ['herbs', 2, 87],
    ['herbs', 3, 84],
  ])('%s on %i forms: %i pressings', (name, forms, pressings) => {
    const { slots, demands } = instance(name);
    const result = fewestPressings({ stations: slots, quantities: demands }, forms, 1e6, createWorkMeter(1e9));
    expect(total(result.forms)).toBe(pressings);
    expect(result.lowerBound).toBe(pressings);
    expectDemandMet(result.forms!, instance(name));
  });

  test('covers: two forms at the bound of the quantities', () => {
    const problem = { stations: 4, quantities: [4500, 9000, 16000] };
    const result = fewestPressings(problem, 2, 1e6, createWorkMeter(1e8));
    expect(total(result.forms)).toBe(pressingsByQuantity(problem));
    expect(2 * 18676 + 13.44 * total(result.forms)!).toBeCloseTo(136472, 6);
  });

  // Computed from published inputs; 8/3/1 × 6 226 + 1/7/4 × 194 was the best pair known, and is the best there is.
  test('three languages on 12 up: 7 000 with one form, 6 420 with two, and no pair is better', () => {
    const problem = { stations: 12, quantities: [50000, 20000, 7000] };
    expect(total(fewestPressings(problem, 1, 1e6, createWorkMeter(1e8)).forms)).toBe(7000);
    const two = fewestPressings(problem, 2, 1e6, createWorkMeter(1e8));
    expect(total(two.forms)).toBe(6420);
    expect(two.lowerBound).toBe(6420);
  });
});
