import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { createDesk, type Desk } from '../../src/desk/desk.ts';
import { EngineLost, EngineStopped, type Engine } from '../../src/desk/engine/client.ts';
import { read } from '../../src/desk/engine/answers/read.ts';
import type { DrawingSource } from '../../src/desk/engine/protocol.ts';
import { layoutFromFile } from '../../src/desk/job/layouts.ts';
import { isTrying, stopTrying, tryChanges } from '../../src/desk/trying-changes.ts';
import type { NearMissFacts } from '../../src/render/near-miss-facts.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, '..', '..', 'samples', 'drawings', 'label-oval.svg')));
const drawing: DrawingSource = { kind: 'file', name: 'label-oval.svg', bytes, options: { roles: [] } };
const facts = (tried: number): NearMissFacts => ({ ups: 2, sheet: { width: 1000, height: 700 }, yearly: undefined, currency: 'EUR', counts: 'board', found: [], notFound: [], tried, changes: 5, stepMm: 0.1, work: tried });

/** What the desk makes of the progress of near misses; the engine is played. */
describe('changes tried', () => {
  let desk: Desk;
  let told: string[];
  let asked: { readonly resolve: (answer: NearMissFacts) => void; readonly reject: (error: Error) => void; readonly progress: (soFar: NearMissFacts) => void }[];
  const layout = layoutFromFile(layoutWith([rectangle('a', 100, 60)], [at('a', 100, 100), at('a', 206, 100)]), 'sound', '');

  beforeEach(async () => {
    told = [];
    asked = [];
    const ask = (_kind: string, _ask: unknown, progress: (soFar: NearMissFacts) => void) => new Promise((resolve, reject) => void asked.push({ resolve, reject, progress }));
    const helper = { ask, tell: (control: string) => void told.push(control) } as unknown as Engine;
    desk = { ...createDesk('en'), helper };
    desk.change((job) => ({ ...job, drawing }));
    desk.reading.value = { kind: 'answer', of: drawing, answer: await read({ source: drawing, remembered: [] }, { locale: 'en', goesOn: () => undefined }) };
    expect(desk.inputs.value).toBeDefined();
  });

  test('progress stands on the desk at once, with the layout it is about; the answer ends it', async () => {
    const trying = tryChanges(desk, layout, undefined);
    expect(desk.misses.value).toMatchObject({ phase: 'running', file: layout.file, of: desk.inputs.value, facts: undefined });
    asked[0]!.progress(facts(2));
    expect(desk.misses.value).toMatchObject({ phase: 'running', facts: { tried: 2 } });
    asked[0]!.resolve(facts(5));
    await trying;
    expect(desk.misses.value).toMatchObject({ phase: 'ended', facts: { tried: 5 }, issues: [] });
    expect(told).toEqual(['begin']);
  });

  test('stopped: said to the engine; what comes until it hears it still counts', async () => {
    const trying = tryChanges(desk, layout, undefined);
    stopTrying(desk);
    expect(told).toEqual(['begin', 'stop']);
    asked[0]!.progress(facts(1));
    expect(desk.misses.value).toMatchObject({ phase: 'stopping', facts: { tried: 1 } });
    asked[0]!.resolve(facts(1));
    await trying;
    expect(isTrying(desk)).toBe(false);
    stopTrying(desk);
    expect(told).toEqual(['begin', 'stop']);
  });

  test('other settings end it; a look at another layout or panel does not; nothing is begun beside it', async () => {
    const trying = tryChanges(desk, layout, undefined);
    desk.panel.value = 'layouts';
    desk.change((job) => ({ ...job, chosen: 'another' }));
    void tryChanges(desk, layout, undefined);
    expect([asked.length, told]).toEqual([1, ['begin']]);
    desk.change((job) => ({ ...job, limits: { ...job.limits, gap: '4' } }));
    expect(told).toEqual(['begin', 'stop']);
    asked[0]!.resolve(facts(3));
    await trying;
    // Once ended, settings change without a word to the engine.
    desk.change((job) => ({ ...job, limits: { ...job.limits, gap: '5' } }));
    expect(told).toEqual(['begin', 'stop']);
  });

  test('a thread that breaks down is asked once more; broken down again, what was found stays and it is said', async () => {
    const trying = tryChanges(desk, layout, undefined);
    asked[0]!.reject(new EngineLost('gone'));
    await expect.poll(() => asked.length).toBe(2);
    asked[1]!.progress(facts(4));
    asked[1]!.reject(new EngineLost('gone'));
    await trying;
    expect(asked).toHaveLength(2);
    expect(desk.misses.value).toMatchObject({ phase: 'ended', facts: { tried: 4 }, issues: [{ code: 'engine-lost' }] });
  });

  test('a silent thread that the person has stopped is not asked again', async () => {
    const trying = tryChanges(desk, layout, undefined);
    asked[0]!.reject(new EngineStopped('stopped'));
    await trying;
    expect(asked).toHaveLength(1);
    expect(desk.misses.value).toMatchObject({ phase: 'ended', issues: [{ code: 'engine-stopped' }] });
  });
});
