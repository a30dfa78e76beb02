import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createJudge } from '../../../src/layout/judge.ts';
import { layoutOfDocument } from '../../../src/desk/hand/document.ts';
import { faultsOf } from '../../../src/desk/hand/facts/live-faults.ts';
import type { Pointer } from '../../../src/desk/hand/interaction/interaction.ts';
import { nudgeStep } from '../../../src/desk/hand/interaction/nudge-steps.ts';
import { HAND_KEYS, meaningOf } from '../../../src/desk/hand/keys.ts';
import { respond, type HandEvent } from '../../../src/desk/hand/respond.ts';
import { beginSituation, shown, type Situation } from '../../../src/desk/hand/situation.ts';
import { panBy, resized, toScreen, toSheet, zoomAt } from '../../../src/desk/hand/view.ts';
import { createFormat } from '../../../src/render/format.ts';
import { englishHand } from '../../../src/render/messages/english-hand.ts';
import { germanHand } from '../../../src/render/messages/german-hand.ts';
import { LAYERS } from '../../../src/desk/hand/drawing/layers.ts';
import { at } from '../../support/layouts.ts';
import { ids, rectangles, type Laid } from './frames.ts';

/** One pixel a millimetre: thresholds in pixels are millimetres on the sheet. */
const VIEW = { zoom: 1, left: 0, top: 700_000, width: 1000, height: 700 };

function start({ document, frame }: Laid): Situation {
  return beginSituation(document, frame, VIEW);
}

function pointer(xMm: number, yMm: number, more: Partial<Pointer> = {}): Pointer {
  const point = { x: xMm * 1000, y: yMm * 1000 };
  return { at: point, screen: toScreen(VIEW, point), over: undefined, shift: false, alt: false, control: false, pans: false, ...more };
}

function play(laid: Laid, events: readonly HandEvent[], from = start(laid)): Situation {
  return events.reduce((situation, event) => respond(situation, event, laid.frame), from);
}

const press = (at: Pointer): HandEvent => ({ kind: 'press', pointer: at });
const moveTo = (at: Pointer): HandEvent => ({ kind: 'move', pointer: at });
const lift = (at: Pointer): HandEvent => ({ kind: 'lift', pointer: at });
const command = (name: Extract<HandEvent, { kind: 'command' }>['name']): HandEvent => ({ kind: 'command', name });
const two = () => rectangles([at('card', 20, 20), at('card', 300, 20)]);

describe('the hand', () => {
  test('a drag is one step; undo and redo go there and back', () => {
    const laid = two();
    const dragged = play(laid, [press(pointer(50, 50, { over: 1 })), moveTo(pointer(60, 300)), moveTo(pointer(181, 400)), lift(pointer(181, 400))]);
    expect(dragged.interaction.kind).toBe('idle');
    expect(dragged.history.present.blanks[0]).toMatchObject({ x: 151_000, y: 370_000 });
    const undone = play(laid, [command('undo')], dragged);
    expect(undone.history.present).toBe(laid.document);
    expect(play(laid, [command('redo')], undone).history.present).toBe(dragged.history.present);
  });

  test('a drag is computed from where it began: a way round comes back to the same place', () => {
    const laid = two();
    const there = [press(pointer(50, 50, { over: 1 })), moveTo(pointer(700, 600)), moveTo(pointer(512.3, 333.3)), moveTo(pointer(50, 50))];
    expect(shown(play(laid, there)).blanks).toEqual(laid.document.blanks);
  });

  test('Escape in the middle of a drag goes back to the mark and leaves no step', () => {
    const laid = two();
    const after = play(laid, [press(pointer(50, 50, { over: 1 })), moveTo(pointer(300, 400)), command('release')]);
    expect(shown(after)).toBe(laid.document);
    expect(after.history.past).toBeUndefined();
    expect(after.selected).toEqual(ids(1));
  });

  test('faults appear while dragging and go again; the neighbour is named too', () => {
    const laid = two();
    const over = play(laid, [press(pointer(50, 50, { over: 1 })), moveTo(pointer(330, 60, { alt: true }))]);
    expect(over.faults.map(({ kind, blanks }) => [kind, [...blanks].sort()])).toEqual([['overlap', [1, 2]]]);
    expect(play(laid, [moveTo(pointer(330, 400, { alt: true }))], over).faults).toEqual([]);
  });

  test('Control drags a copy, Shift along one axis, Alt without being drawn to anything', () => {
    const laid = two();
    const copied = play(laid, [press(pointer(50, 50, { over: 1, control: true })), moveTo(pointer(50, 250)), lift(pointer(50, 250))]);
    expect(copied.history.present.blanks.map(({ x, y }) => [x, y])).toEqual([[20_000, 20_000], [300_000, 20_000], [20_000, 220_000]]);
    const straight = play(laid, [press(pointer(50, 50, { over: 1 })), moveTo(pointer(63, 350, { shift: true }))]);
    expect(shown(straight).blanks[0]).toMatchObject({ x: 20_000, y: 320_000 });
    const free = play(laid, [press(pointer(50, 50, { over: 1 })), moveTo(pointer(51.2345, 52.0004, { alt: true })), moveTo(pointer(57.2345, 52.0004, { alt: true }))]);
    expect(shown(free).blanks[0]).toMatchObject({ x: 27_235, y: 22_000 });
  });

  test('locked blanks are not dragged', () => {
    const laid = two();
    const locked = play(laid, [{ kind: 'select', ids: ids(1) }, command('lock')]);
    const after = play(laid, [press(pointer(50, 50, { over: 1 })), moveTo(pointer(300, 400))], locked);
    expect(shown(after)).toBe(locked.history.present);
    expect(after.notice).toBe('all-locked');
  });

  test('click, Shift click and marquees choose', () => {
    const laid = rectangles([at('card', 20, 20), at('card', 300, 20), at('card', 300, 200)]);
    const clicked = play(laid, [press(pointer(50, 50, { over: 1 })), lift(pointer(50, 50))]);
    expect(clicked.selected).toEqual(ids(1));
    const both = play(laid, [press(pointer(330, 50, { over: 2, shift: true })), lift(pointer(330, 50, { shift: true }))], clicked);
    expect(both.selected).toEqual(ids(1, 2));
    const one = play(laid, [press(pointer(330, 50, { over: 2, shift: true })), lift(pointer(330, 50, { shift: true }))], both);
    expect(one.selected).toEqual(ids(1));
    const inside = play(laid, [press(pointer(290, 10)), moveTo(pointer(410, 230)), lift(pointer(410, 230))]);
    expect(inside.selected).toEqual(ids(2));
    const touching = play(laid, [press(pointer(410, 230)), moveTo(pointer(290, 10)), lift(pointer(290, 10))]);
    expect(touching.selected).toEqual(ids(2, 3));
  });

  test('a run of arrow keys is one step, which Escape takes back while it lasts', () => {
    const laid = two();
    const arrow = (direction: 'left' | 'right' | 'gripper' | 'tail', amount: number | 'step' | 'contact'): HandEvent => ({ kind: 'arrow', direction, amount });
    const begun = play(laid, [{ kind: 'select', ids: ids(1) }, arrow('right', 1000), arrow('right', 100), arrow('tail', 'step')]);
    expect(shown(begun).blanks[0]).toMatchObject({ x: 21_100, y: 86_000 });
    expect(play(laid, [command('release')], begun).history.past).toBeUndefined();
    const done = play(laid, [{ kind: 'arrow-up' }], begun);
    expect(done.history.past?.next).toBeUndefined();
    expect(done.history.present.blanks[0]).toMatchObject({ x: 21_100, y: 86_000 });
    const slid = play(laid, [{ kind: 'select', ids: ids(1) }, arrow('right', 'contact')]);
    // Up to the gap before its neighbour: 300 − 6 − 100.
    expect(shown(slid).blanks[0].x).toBe(194_000);
    expect(shown(play(laid, [arrow('left', 'contact'), arrow('gripper', 'contact')], slid)).blanks[0]).toMatchObject({ x: 10_000, y: 10_000 });
  });

  test('with nothing chosen the arrows go from blank to blank', () => {
    const laid = rectangles([at('card', 20, 20), at('card', 300, 20), at('card', 300, 200)]);
    const arrow = (direction: 'left' | 'right' | 'gripper' | 'tail'): HandEvent => ({ kind: 'arrow', direction, amount: 1000 });
    const first = play(laid, [arrow('right')]);
    expect(first.selected).toEqual(ids(1));
    const next = play(laid, [command('select-none'), arrow('right')], first);
    expect(next.selected).toEqual(ids(2));
    expect(play(laid, [command('select-none'), arrow('tail')], next).selected).toEqual(ids(3));
  });

  test('panning, zooming and choosing are no steps and are never undone', () => {
    const laid = two();
    const looked = play(laid, [{ kind: 'pinch', at: { x: 100, y: 100 }, factor: 2, by: { x: 0, y: 0 } }, { kind: 'select', ids: ids(2) }, press(pointer(10, 600, { pans: true })), moveTo(pointer(60, 560)), lift(pointer(60, 560))]);
    expect(looked.history.past).toBeUndefined();
    expect(looked.view.zoom).toBe(2);
    const moved = play(laid, [{ kind: 'arrow', direction: 'right', amount: 1000 }, { kind: 'arrow-up' }, command('undo')], looked);
    expect(moved.view).toEqual(looked.view);
    expect(moved.selected).toEqual(ids(2));
  });

  test('measuring is drawn to corners and edges, and Escape puts the tool away', () => {
    const laid = two();
    const measured = play(laid, [command('measure'), press(pointer(121, 81)), moveTo(pointer(298, 50)), lift(pointer(298, 50))]);
    expect(measured.measured).toEqual({ from: { x: 120_000, y: 80_000 }, to: { x: 300_000, y: 50_000 } });
    expect(measured.interaction.kind).toBe('ready-to-measure');
    expect(play(laid, [command('release')], measured)).toMatchObject({ measured: undefined, interaction: { kind: 'idle' } });
  });

  test('after any course of events the faults are those of the whole document, and undoing all of it comes back to the start', () => {
    const event = fc.oneof(
      fc.record({ kind: fc.constant('select' as const), ids: fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { maxLength: 4 }).map((list) => new Set(list) as ReadonlySet<number>) }),
      fc.record({ kind: fc.constant('arrow' as const), direction: fc.constantFrom('left' as const, 'right' as const, 'gripper' as const, 'tail' as const), amount: fc.constantFrom(100, 1000, 127, 1270, 'step' as const, 'contact' as const) }),
      fc.constantFrom('turn-next', 'duplicate', 'remove', 'lock', 'gather', 'equal-steps', 'align-left', 'align-tail', 'undo', 'redo', 'release', 'select-next').map((name) => command(name as 'undo')),
      fc.record({ x: fc.integer({ min: -200, max: 200 }), y: fc.integer({ min: -200, max: 200 }), id: fc.integer({ min: 1, max: 4 }) }).map((by) => by),
    );
    fc.assert(
      fc.property(fc.array(event, { maxLength: 14 }), (events) => {
        const laid = rectangles([at('card', 20, 20), at('card', 130, 20), at('card', 300, 20), at('card', 300, 200, 90)]);
        const judge = createJudge(laid.layout);
        let situation = start(laid);
        for (const happened of events) {
          const list: HandEvent[] = 'kind' in happened ? [happened] : [press(pointer(100, 100, { over: happened.id })), moveTo(pointer(100 + happened.x, 100 + happened.y)), lift(pointer(100 + happened.x, 100 + happened.y))];
          if (!('kind' in happened) && !shown(situation).blanks.some(({ id }) => id === happened.id)) continue;
          situation = play(laid, list, situation);
          const known = situation.faults.map(({ kind, blanks }) => `${kind} ${[...blanks].sort()}`).sort();
          expect(known).toEqual(faultsOf(shown(situation), laid.frame).map(({ kind, blanks }) => `${kind} ${[...blanks].sort()}`).sort());
        }
        situation = play(laid, [command('release'), command('release')], situation);
        const { layout } = layoutOfDocument(situation.history.present, laid.frame);
        if (layout.placements.length > 0) expect(judge(layout.placements).faults).toHaveLength(situation.faults.length);
        while (situation.history.past) situation = play(laid, [command('undo')], situation);
        expect(situation.history.present).toBe(laid.document);
      }),
      { numRuns: 150 },
    );
  });
});

describe('keys', () => {
  const pressed = (key: string, more = {}) => meaningOf({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, ...more });

  test('mean what the list says, with Command as well as Control', () => {
    expect(pressed('z', { ctrlKey: true })).toBe('undo');
    expect(pressed('Z', { metaKey: true, shiftKey: true })).toBe('redo');
    expect(pressed('ArrowUp', { altKey: true })).toBe('nudge-fine');
    expect(pressed('®', { altKey: true, code: 'KeyR' })).toBe('turn-quarter');
    expect(pressed('?', { shiftKey: true })).toBe('keys');
    expect(pressed('+', { shiftKey: true })).toBe('zoom-in');
    expect(pressed('q')).toBeUndefined();
  });

  test('arrow keys move by whole µm in either unit, ten fine ones as far as a plain one', () => {
    expect((['mm', 'in'] as const).map((unit) => [nudgeStep('fine', unit), nudgeStep('plain', unit)])).toEqual([[100, 1000], [127, 1270]]);
  });

  test('no key stands twice, and all have words', () => {
    const all = HAND_KEYS.flatMap(({ keys }) => keys);
    expect(new Set(all).size).toBe(all.length);
    for (const { does } of HAND_KEYS) expect(englishHand.commands[does]?.does, does).toBeTruthy();
  });
});

describe('words', () => {
  test('a gap too small is told by what is missing, what is there and what must be', () => {
    const format = createFormat('en', 'mm');
    expect(englishHand.fault('gap', 0.32, 6, format)).toBe('knives 0.32 mm too near (5.68 of 6 mm)');
    expect(germanHand.fault('gap', 0.32, 6, createFormat('de', 'mm'))).toBe('Messer um 0,32 mm zu nah beieinander (5,68 von 6 mm)');
  });

  test('every language has words for every command, layer and notice', () => {
    for (const part of ['commands', 'layers', 'notices', 'keyNames'] as const) expect(Object.keys(germanHand[part]).sort()).toEqual(Object.keys(englishHand[part]).sort());
    expect(Object.keys(englishHand.layers).sort()).toEqual([...LAYERS].sort());
    expect(germanHand.gestures).toHaveLength(englishHand.gestures.length);
  });
});

describe('the view', () => {
  const view = fc.record({ zoom: fc.double({ min: 0.05, max: 800, noNaN: true }), left: fc.integer({ min: -1e6, max: 1e6 }), top: fc.integer({ min: -1e6, max: 2e6 }), width: fc.integer({ min: 100, max: 3000 }), height: fc.integer({ min: 100, max: 2000 }), mirrored: fc.boolean() });
  const screen = fc.record({ x: fc.integer({ min: 0, max: 3000 }), y: fc.integer({ min: 0, max: 2000 }) });
  const isNear = (a: { x: number; y: number }, b: { x: number; y: number }, by: number) => Math.abs(a.x - b.x) <= by && Math.abs(a.y - b.y) <= by;

  test('screen and sheet are each the way back of the other, from both sides', () => {
    fc.assert(fc.property(view, screen, (v, p) => isNear(toScreen(v, toSheet(v, p)), p, 1e-3)));
  });

  test('what lies under the pointer stays there while zooming, and goes with the hand while panning', () => {
    fc.assert(fc.property(view, screen, fc.double({ min: 0.2, max: 5, noNaN: true }), screen, (v, p, factor, by) => {
      const before = toSheet(v, p);
      const panned = panBy(v, by.x - 1500, by.y - 1000);
      return isNear(toScreen(zoomAt(v, p, factor), before), p, 1e-2) && isNear(toScreen(panned, before), { x: p.x + by.x - 1500, y: p.y + by.y - 1000 }, 1e-2);
    }));
  });

  test('a picture of another size keeps its middle', () => {
    fc.assert(fc.property(view, (v) => {
      const other = resized(v, v.width + 300, v.height - 40);
      return isNear(toSheet(v, { x: v.width / 2, y: v.height / 2 }), toSheet(other, { x: other.width / 2, y: other.height / 2 }), 1e-3 * (1000 / v.zoom));
    }));
  });
});
