import { sheetScene, type PictureLanguage } from './sheet-scene.ts';
import type { Scene, SceneItem } from './scene.ts';
import type { SheetView } from './sheet-view.ts';
import type { LegendEntry } from './title-block.ts';

/** Areas marked on the picture of a sheet, and what stands for them in its key. */
export interface Marks {
  readonly name: string;
  readonly items: readonly SceneItem[];
  readonly key: readonly LegendEntry[];
}

/** The picture of the sheet with areas marked on it, above the blanks and below rules and numbers. */
export function markedSheet(view: SheetView, language: PictureLanguage, { name, items, key }: Marks): Scene {
  const scene = sheetScene(view, language, key);
  const blanks = scene.layers.findIndex((layer) => layer.name === 'Blanks');
  const layers = [...scene.layers.slice(0, blanks + 1), { name, items }, ...scene.layers.slice(blanks + 1)];
  return { ...scene, layers: items.length > 0 ? layers : scene.layers };
}
