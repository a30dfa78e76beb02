import { describe, expect, test } from 'vitest';
import { dielineOfStyle } from '../../src/dieline/styles/dieline-of-style.ts';
import { machinesOf } from '../../src/desk/engine/answers/machines-of.ts';
import { EMPTY_JOB, type Job, type LimitFields } from '../../src/desk/job/job.ts';
import { layingOf } from '../../src/desk/job/laying.ts';
import { besideFields, withChange } from '../../src/desk/job/with-change.ts';
import { layoutOf } from '../../src/layout/layout-of.ts';
import { changesOf } from '../../src/pipeline/near-miss-changes.ts';
import { prepareNest, type NestJob } from '../../src/pipeline/nest.ts';

const STYLE = 'straight-tuck';
const VALUES = { length: 60, width: 30, depth: 110 };
/** An invented press with a bar of its own in the centre. */
const PRESS = { name: 'Invented press', maxSheet: '1040x740', gripper: 14, tail: 18, sideMargins: [9, 7], inkGripper: 9, inkTail: 6, inkSides: 4, bar: 'centre:8', gap: 7, bleed: 3 };

/** A job of the desk and what is laid out for it: the search's own way from fields to rules. */
function laidOut(job: Job, press: object | undefined): NestJob {
  const asked = layingOf(job, { press });
  if ('faults' in asked) throw new Error(asked.faults.join());
  const { blanks, fingerprint, grain } = dielineOfStyle(STYLE, (job.drawing as unknown as { values: typeof VALUES }).values);
  return { ...asked.laying, machines: machinesOf(asked.laying.machines), id: 'carton', blank: blanks[0]!, drawing: { fingerprint, ...(grain && { grain }) }, layouts: 1 };
}

/** Taking a change must lay out by the very rules under which the near miss was found. */
describe.each([
  ['with usual values', undefined, {}],
  ['with what a press brings', PRESS, {}],
  ['with a bar at the tail and limits typed', undefined, { bar: 'tail', barHeight: '8', gap: '8', sideLeft: '10', sideRight: '12', tail: '24', gripper: '15' }],
] satisfies [string, object | undefined, Partial<LimitFields>][])('a change put into the fields, %s', (_, press, limits) => {
  const { bar }: Partial<LimitFields> = limits;
  const job: Job = { ...EMPTY_JOB, name: 'straight-tuck 60 30 110', drawing: { kind: 'style', style: STYLE, values: VALUES }, limits: { ...EMPTY_JOB.limits, ...limits } };
  const now = laidOut(job, press);
  const changes = changesOf(now, prepareNest(now).problem, { id: STYLE, values: VALUES });
  const held = changes.filter(({ thing }) => besideFields(thing) === undefined);

  test('every kind of change is among them', () => {
    const kinds = new Set(held.map(({ thing }) => thing.replace(/:.*/, '')));
    expect([...kinds]).toEqual(expect.arrayContaining(['gap', 'gripper', 'tail', 'sides', 'sheet-width', 'sheet-height', 'flap']));
    if (press || bar) expect([...kinds]).toEqual(expect.arrayContaining(['bar-height', 'bar-none', 'bar-gripper']));
    expect(changes.map(({ thing }) => thing)).toContain('common-knife');
  });

  test.each(held.map((change) => [change.thing, change] as const))('%s', (thing, change) => {
    const byMm = change.most === undefined ? 0 : Math.floor(change.most * 5) / 10;
    const { problem, design } = prepareNest(change.at(byMm));
    const to = change.from === undefined ? undefined : Math.round((change.from + change.sign * byMm) * 1000) / 1000;
    const taken = withChange(job, { thing, ...(change.from !== undefined && { from: change.from, to: to! }) }, layoutOf(problem, [design], []));
    expect(taken).not.toEqual(job);
    expect(taken.name).toBe(thing.startsWith('flap:') ? ['straight-tuck', ...Object.values((taken.drawing as unknown as { values: object }).values)].join(' ') : job.name);
    const anew = prepareNest(laidOut(taken, press));
    expect(anew.problem).toEqual(problem);
    expect(anew.design).toEqual(design);
  });
});
