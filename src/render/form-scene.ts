import type { Scene } from './scene.ts';
import { scaleFor } from './scale.ts';
import { label } from './shapes.ts';
import { sheetScene, type PictureLanguage } from './sheet-scene.ts';
import type { SheetView } from './sheet-view.ts';
import { stationNumbers } from './stations.ts';

/** Height of a version's letter and of the station's number below it, in heights of the number alone. */
const LETTER = 2;
const NUMBER = 0.9;

/** The picture of a form whose stations print different versions: the letter of its version on each, its number below. */
export function formScene(view: SheetView, letters: readonly string[], language: PictureLanguage): Scene {
  const items = stationNumbers(view, scaleFor(view.sheet)).flatMap(({ at: { x, y }, size }, station) => [
    label(letters[station] ?? '', { x, y: y - size * 0.5 }, size * LETTER, { anchor: 'middle', bold: true }),
    label(String(station + 1), { x, y: y - size * 1.5 }, size * NUMBER, { anchor: 'middle' }),
  ]);
  const scene = sheetScene(view, language);
  return { ...scene, layers: scene.layers.map((layer) => (layer.name === 'Stations' ? { ...layer, items } : layer)) };
}
