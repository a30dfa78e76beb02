import { sheetScene, type PictureLanguage } from './sheet-scene.ts';
import type { Scene, SceneItem } from './scene.ts';
import type { SheetView } from './sheet-view.ts';

/** The picture of the sheet with areas marked on it, above the blanks and below rules and numbers. */
export function markedSheet(view: SheetView, language: PictureLanguage, name: string, items: readonly SceneItem[]): Scene {
  const scene = sheetScene(view, language);
  const blanks = scene.layers.findIndex((layer) => layer.name === 'Blanks');
  const layers = [...scene.layers.slice(0, blanks + 1), { name, items }, ...scene.layers.slice(blanks + 1)];
  return { ...scene, layers: items.length > 0 ? layers : scene.layers };
}
