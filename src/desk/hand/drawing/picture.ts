import { MICRONS_PER_MM, toMillimetres } from '../../../base/units.ts';
import type { LayoutFile } from '../../../layout/layout-file.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { viewOfLayout } from '../../../render/view-of-layout.ts';
import type { SheetFrame } from '../sheet-frame.ts';
import type { Situation } from '../situation.ts';
import { toScreen, toSheet, type View } from '../view.ts';
import { blanksLayer } from './blanks.ts';
import { designDrawings } from './design-drawings.ts';
import { html, setAttributes, svg } from './elements.ts';
import type { LayerName } from './layers.ts';
import { liftedLayer, underWay } from './lifted.ts';
import { overlayItems } from './overlay.ts';
import { rulers } from './rulers.ts';
import { sheetDrawing } from './sheet-drawing.ts';
import { ticks } from './ticks.ts';

export interface Language {
  readonly words: HandWords;
  readonly format: Format;
}

export interface Picture {
  readonly element: HTMLElement;
  /** The part with the sheet: its upper left corner is the origin of screen points. */
  readonly stage: HTMLElement;
  show(situation: Situation): void;
  setLayers(layers: ReadonlySet<LayerName>): void;
  useLanguage(language: Language): void;
  focus(id: number): void;
  destroy(): void;
}

/** Moves by so many pixels and scales. Nothing is written where nothing is moved, so that letters stay sharp. */
function setTransform(element: SVGSVGElement, dx: number, dy: number, scale: number): void {
  const isStill = Math.abs(dx) < STILL_PX && Math.abs(dy) < STILL_PX && scale === 1;
  element.style.transform = isStill ? '' : `translate(${dx}px, ${dy}px) scale(${scale})`;
}

/** Less than an eye or a screen tells, pixels: roundings of the way there and back. */
const STILL_PX = 1e-3;

let pictures = 0;

/** How long the view must rest, ms, before the sheet is drawn anew for it; until then it is moved as it is. */
const REST_MS = 120;

/**
 * The sheet in the page. Blanks are moved by their own transforms; while the view moves the whole drawing is moved and
 * scaled by CSS and only drawn anew when it rests, since a new view box makes the browser draw every line again.
 */
export function createPicture(layout: LayoutFile, frame: SheetFrame, language: Language): Picture {
  const prefix = `hand${++pictures}`;
  const view = viewOfLayout({ ...layout, placements: [] }, { figures: [] });
  const drawings = designDrawings(view, prefix);
  let { words, format } = language;
  const blanks = blanksLayer(frame, drawings, language);
  const grid = svg('path', { class: 'hand-grid', 'aria-hidden': 'true' });
  const drawing = svg('svg', { class: 'hand-drawing', preserveAspectRatio: 'none' }, [
    svg('defs', {}, drawings.flat().map(({ symbol }) => symbol)),
    svg('g', {}, [sheetDrawing(view), grid, blanks.element]),
  ]);
  const lifted = liftedLayer(drawings);
  const liftedDrawing = svg('svg', { class: 'hand-drawing hand-lifted', preserveAspectRatio: 'none', 'aria-hidden': 'true' }, [svg('g', {}, [lifted.element])]);
  const overlay = svg('svg', { class: 'hand-overlay', 'aria-hidden': 'true' });
  const stage = html('div', { class: 'hand-stage' }, [drawing, liftedDrawing, overlay]);
  const edges = rulers();
  const element = html('div', { class: 'hand-picture' }, [html('div', { class: 'hand-ruler-corner' }), ...edges.elements, stage]);

  let layers: ReadonlySet<LayerName> = new Set();
  let last: Situation | undefined;
  let drawnFor: View | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const drawFor = (now: View) => {
    drawnFor = now;
    const [left, top] = [toMillimetres(now.left), toMillimetres(now.top)];
    const [wide, high] = [now.width / now.zoom, now.height / now.zoom];
    for (const each of [drawing, liftedDrawing]) {
      setAttributes(each, { viewBox: `${now.mirrored ? -left - wide : left} ${-top} ${wide} ${high}`, width: now.width, height: now.height });
      setAttributes(each.lastElementChild!, { transform: `scale(${now.mirrored ? -1 : 1} -1)` });
      each.style.setProperty('--hand-px', String(1 / now.zoom));
    }
    carry(now);
    const [along, away] = [ticks(left - wide, left + 2 * wide, now.zoom, format.unit), ticks(top - 2 * high, top + high, now.zoom, format.unit)];
    const kept = ({ rank }: { rank: number }) => rank < 2;
    grid.setAttribute('d', layers.has('grid') ? [...along.filter(kept).map(({ at }) => `M${at} ${top - 2 * high}v${3 * high}`), ...away.filter(kept).map(({ at }) => `M${left - wide} ${at}h${3 * wide}`)].join('') : '');
  };

  /** The drawings as they were made for another view, carried to where they belong in this one. */
  const carry = (now: View) => {
    const from = drawnFor ?? now;
    const scale = now.zoom / from.zoom;
    // Where the upper left corner of the drawing as it was made lies now.
    const corner = toScreen(now, toSheet(from, { x: 0, y: 0 }));
    setTransform(drawing, corner.x, corner.y, scale);
    const by = last && underWay(last).length > 0 ? last.live!.by : { x: 0, y: 0 };
    const pixels = now.zoom / MICRONS_PER_MM;
    setTransform(liftedDrawing, corner.x + (now.mirrored ? -by.x : by.x) * pixels, corner.y - by.y * pixels, scale);
  };

  const showView = (now: View) => {
    edges.show(now, format);
    if (!drawnFor || drawnFor.width !== now.width || drawnFor.height !== now.height || drawnFor.mirrored !== now.mirrored) return drawFor(now);
    carry(now);
    clearTimeout(resting);
    resting = setTimeout(() => last && drawFor(last.view), REST_MS);
  };

  return {
    element,
    stage,
    show: (situation) => {
      const before = last;
      last = situation;
      if (situation.view !== before?.view) showView(situation.view);
      else if (situation.live !== before.live) carry(situation.view);
      blanks.show(situation, before);
      lifted.show(situation, blanks.stationOf);
      setAttributes(blanks.element, { 'aria-label': words.sheet(format.size(frame.layout.sheet.width, frame.layout.sheet.height), situation.history.present.blanks.length) });
      overlay.replaceChildren(...overlayItems(situation, frame, { words, format, distances: layers.has('distances') }));
    },
    setLayers: (shown) => {
      layers = shown;
      for (const name of ['creases', 'openings', 'bleed', 'marks', 'numbers'] as const) stage.style.setProperty(`--hand-${name}`, shown.has(name) ? 'inline' : 'none');
      if (last) drawFor(last.view);
    },
    useLanguage: (other) => {
      ({ words, format } = other);
      blanks.useLanguage(words, format);
      if (!last) return;
      blanks.show(last, undefined);
      drawFor(last.view);
      edges.show(last.view, format);
    },
    focus: (id) => blanks.elementOf(id)?.focus({ preventScroll: true }),
    destroy: () => {
      clearTimeout(resting);
      element.remove();
    },
  };
}
