import { moved, zoomed, type ViewBox } from './view-box.ts';

type SetView = (change: (view: ViewBox) => ViewBox) => void;

interface Place {
  readonly x: number;
  readonly y: number;
}

/** The wheel zooms by `step`, one pointer moves the picture, two fingers do both. Returns how to end it. */
export function listenToPicture(svg: SVGSVGElement, step: number, setView: SetView): () => void {
  const stop = new AbortController();
  const down = new Map<number, Place>();
  const placeOf = ({ x, y }: Place) => new DOMPoint(x, y).matrixTransform(svg.getScreenCTM()!.inverse());
  const screenOf = ({ clientX, clientY }: MouseEvent): Place => ({ x: clientX, y: clientY });

  const listen = <Kind extends 'wheel' | `pointer${'down' | 'move' | 'up' | 'cancel'}`>(kind: Kind, does: (event: SVGElementEventMap[Kind]) => void) =>
    svg.addEventListener(kind, does as EventListener, { passive: false, signal: stop.signal });

  listen('wheel', (event) => {
    event.preventDefault();
    const at = placeOf(screenOf(event));
    setView((view) => zoomed(view, event.deltaY < 0 ? step : 1 / step, at));
  });
  listen('pointerdown', (event) => {
    if (event.button !== 0) return;
    down.set(event.pointerId, screenOf(event));
    svg.setPointerCapture(event.pointerId);
  });
  listen('pointermove', (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const now = screenOf(event);
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    down.set(event.pointerId, now);
    const scale = 1 / (svg.getScreenCTM()?.a ?? 1);
    // Of two fingers each moves the middle by half its way.
    const share = other ? 0.5 : 1;
    const [dx, dy] = [(before.x - now.x) * scale * share, (before.y - now.y) * scale * share];
    const factor = other ? apart(now, other) / apart(before, other) : 1;
    const middle = other && placeOf({ x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 });
    setView((view) => (middle ? moved(zoomed(view, factor, middle), dx / factor, dy / factor) : moved(view, dx, dy)));
  });
  const end = (event: PointerEvent) => void down.delete(event.pointerId);
  listen('pointerup', end);
  listen('pointercancel', end);
  return () => stop.abort();
}

/** At least a pixel, so that fingers that meet do not zoom without end. */
function apart(one: Place, other: Place): number {
  return Math.max(1, Math.sqrt((one.x - other.x) ** 2 + (one.y - other.y) ** 2));
}
