import { createFormat } from '../../render/format.ts';
import type { BatchFacts } from '../../render/batch-facts.ts';
import { englishLanguage } from '../../render/messages/english-language.ts';
import type { Language } from '../../render/messages/language.ts';
import type { ReportPicture } from '../../render/report-html.ts';
import { sheetScene } from '../../render/sheet-scene.ts';
import { sceneToSvg } from '../../render/svg.ts';
import { viewOfLayout } from '../../render/view-of-layout.ts';
import { keptAnswer } from '../answers/kept-answers.ts';
import { named } from '../answers/task-fingerprint.ts';
import type { Library } from '../library/open-library.ts';

/** Pictures of the best layouts of some cartons, from the answers in the library; one at a time is in memory as a layout. */
export function batchPictures(library: Library, { cartons }: BatchFacts, places: readonly number[], { locale, picture: words }: Language = englishLanguage): ReportPicture[] {
  const format = createFormat(locale);
  return places.flatMap((place) => {
    const { id, cells, best } = cartons[place]!;
    const cell = best === undefined ? undefined : cells[best];
    const answer = cell?.key === undefined ? undefined : keptAnswer(library, cell.key);
    if (!cell || !answer) return [];
    const [{ file }] = answer.layouts;
    const layout = named(file, { ...file.designs[0]!, id });
    const view = viewOfLayout(layout, { grain: cell.sheet.grain, figures: [] });
    return [{ section: `carton-${place}`, svg: sceneToSvg(sheetScene(view, { words, format })), onPaper: true }];
  });
}
