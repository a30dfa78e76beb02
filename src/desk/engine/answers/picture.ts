import { createFormat } from '../../../render/format.ts';
import { sheetScene } from '../../../render/sheet-scene.ts';
import type { Scene } from '../../../render/scene.ts';
import { viewOfLayout } from '../../../render/view-of-layout.ts';
import type { Host } from '../host.ts';
import type { PictureAsk } from '../protocol.ts';
import { languageOf } from './language-of.ts';

/** What stands around the sheet in a picture that is handed over, and would only make a small one smaller. */
const AROUND: ReadonlySet<string> = new Set(['Surround', 'Steps', 'Title block']);
/** Room around the sheet for gripper edge and side lay, as part of its longer side. */
const ROOM = 0.035;

export function picture({ file, grain, faults, small = false }: PictureAsk, { locale, unit }: Pick<Host<'picture'>, 'locale' | 'unit'>): Scene {
  const { picture: words, locale: tag } = languageOf(locale);
  const scene = sheetScene(viewOfLayout(file, { grain, figures: [], ...(faults && { faults }) }), { words, format: createFormat(tag, unit) });
  if (!small) return scene;
  const { width, height } = scene.sheet;
  const room = ROOM * Math.max(width, height);
  return {
    ...scene,
    box: { minX: -room, minY: -room, maxX: width + room, maxY: height + room },
    layers: scene.layers.filter(({ name }) => !AROUND.has(name)),
  };
}
