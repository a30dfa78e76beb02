import type { Point } from '../../geometry/point.ts';
import type { Pointer } from './interaction/interaction.ts';
import type { HandEvent } from './respond.ts';
import type { Situation } from './situation.ts';
import { toSheet } from './view.ts';

/** How strongly a wheel zooms: one notch of 100 units makes things 1.2 times as large. */
const WHEEL_PER_UNIT = Math.log(1.2) / 100;
/** Units in one line of a wheel that counts lines. */
const LINE_UNITS = 33;

/**
 * Turns the browser's pointer events on the stage into the hand's. Moves are handed on once a frame at most; two fingers
 * pinch. Returns a function that takes all listeners away.
 */
export function listenToPointers(stage: HTMLElement, situation: () => Situation, emit: (event: HandEvent) => void): () => void {
  const down = new Map<number, Point>();
  const stop = new AbortController();
  const { signal } = stop;
  let spaceHeld = false;
  let waiting: PointerEvent | undefined;
  let frame = 0;

  let held: Point | undefined;
  /** As long as a pointer is down, the stage counts as where it was then: whatever on the page moves it, a blank stays with the pointer. */
  const origin = (): Point => {
    const { left, top } = stage.getBoundingClientRect();
    return held ?? { x: left, y: top };
  };
  const screenOf = ({ clientX, clientY }: MouseEvent): Point => {
    const { x, y } = origin();
    return { x: clientX - x, y: clientY - y };
  };
  const pointerOf = (event: PointerEvent): Pointer => {
    const screen = screenOf(event);
    const over = blankUnder(event.target);
    const pans = event.button === 1 || (event.buttons & 4) !== 0 || spaceHeld || (event.pointerType === 'touch' && over === undefined);
    return { at: toSheet(situation().view, screen), screen, over, shift: event.shiftKey, alt: event.altKey, control: event.ctrlKey || event.metaKey, pans };
  };
  const flush = () => {
    cancelAnimationFrame(frame);
    frame = 0;
    const event = waiting;
    waiting = undefined;
    if (event) emit({ kind: 'move', pointer: pointerOf(event) });
  };

  stage.addEventListener('pointerdown', (event) => {
    if (event.button > 1) return;
    if (event.button === 1) event.preventDefault();
    stage.setPointerCapture(event.pointerId);
    held ??= origin();
    down.set(event.pointerId, screenOf(event));
    if (down.size === 2) emit({ kind: 'lost' });
    if (down.size === 1) emit({ kind: 'press', pointer: pointerOf(event) });
  }, { signal });
  stage.addEventListener('pointermove', (event) => {
    if (down.size === 2 && down.has(event.pointerId)) return pinch(event);
    if (down.size > 1) return;
    waiting = event;
    frame ||= requestAnimationFrame(flush);
  }, { signal });
  const end = (event: PointerEvent, kind: 'lift' | 'lost') => {
    if (!down.delete(event.pointerId) || down.size > 0) return;
    flush();
    const pointer = pointerOf(event);
    held = undefined;
    emit(kind === 'lift' ? { kind, pointer } : { kind });
  };
  stage.addEventListener('pointerup', (event) => end(event, 'lift'), { signal });
  stage.addEventListener('pointercancel', (event) => end(event, 'lost'), { signal });

  const pinch = (event: PointerEvent) => {
    const other = [...down].find(([id]) => id !== event.pointerId)![1];
    const [before, now] = [down.get(event.pointerId)!, screenOf(event)];
    down.set(event.pointerId, now);
    const spread = (p: Point) => Math.max(1, Math.sqrt((p.x - other.x) ** 2 + (p.y - other.y) ** 2));
    emit({ kind: 'pinch', at: { x: (before.x + other.x) / 2, y: (before.y + other.y) / 2 }, factor: spread(now) / spread(before), by: { x: (now.x - before.x) / 2, y: (now.y - before.y) / 2 } });
  };

  stage.addEventListener('wheel', (event) => {
    event.preventDefault();
    const units = event.deltaMode === 1 ? LINE_UNITS : 1;
    if (event.shiftKey) return emit({ kind: 'pinch', at: screenOf(event), factor: 1, by: { x: -(event.deltaX || event.deltaY) * units, y: 0 } });
    emit({ kind: 'pinch', at: screenOf(event), factor: Math.exp(-event.deltaY * units * WHEEL_PER_UNIT), by: { x: 0, y: 0 } });
  }, { signal, passive: false });

  const space = (event: KeyboardEvent) => {
    if (event.key !== ' ' || isField(event.target)) return;
    spaceHeld = event.type === 'keydown';
    stage.classList.toggle('is-panning', spaceHeld);
    if (stage.contains(event.target as Node)) event.preventDefault();
  };
  addEventListener('keydown', space, { signal });
  addEventListener('keyup', space, { signal });
  addEventListener('blur', () => (spaceHeld = false), { signal });

  return () => {
    stop.abort();
    cancelAnimationFrame(frame);
  };
}

export function blankUnder(target: EventTarget | null): number | undefined {
  const id = target instanceof Element ? target.closest('[data-id]')?.getAttribute('data-id') : undefined;
  return id ? Number(id) : undefined;
}

function isField(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT|BUTTON|SUMMARY)$/.test(target.tagName));
}
