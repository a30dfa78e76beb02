import { InputError, inputError } from '../../../base/issue.ts';
import { writeLayoutFile } from '../../../layout/layout-file.ts';
import { judgeForProduction, type SoundLayout } from '../../../layout/sound.ts';
import { handover, HANDOVER_FILES, handoverLanguage, type Handover, type HandoverFile } from '../../../pipeline/handover.ts';
import type { HandoverDetails } from '../../../render/handover-facts.ts';
import type { HandoverLanguage } from '../../../render/handover-pages.ts';
import { sceneToPdf } from '../../../render/pdf.ts';
import { sheetScene } from '../../../render/sheet-scene.ts';
import { sceneToSvg } from '../../../render/svg.ts';
import { viewOfLayout } from '../../../render/view-of-layout.ts';
import type { Host } from '../host.ts';
import type { HandoverAnswer, HandoverAsk } from '../protocol.ts';
import { languageOf } from './language-of.ts';
import { versionFiles } from './version-files.ts';

/** Judged here once more: files for production come from nothing else. Pictures and data do not wait for roles that are open. */
export async function handOver({ file, details, versions, besides }: HandoverAsk, { locale }: Pick<Host<'handover'>, 'locale'>): Promise<HandoverAnswer> {
  const { judgement, sound } = judgeForProduction(file);
  if (!sound) throw inputError('handover-faulty', { where: 'layout', facts: { faults: judgement.faults.length } });
  const language = handoverLanguage(languageOf(locale));
  const scene = sheetScene(viewOfLayout(sound, { grain: details.grain, figures: [] }), { words: language.picture, format: language.format });
  const pdf = { name: 'sheet.pdf', content: await sceneToPdf(scene) };
  const more = [pdf, ...(versions ? await versionFiles(sound, details, versions, language) : []), ...besides];
  const production = await productionFiles(sound, details, language, more);
  if (!(production instanceof InputError)) return { files: production.files, missing: [], waiting: production.issues };
  const files = [{ name: 'layout.json', content: writeLayoutFile(sound) }, { name: 'sheet.svg', content: sceneToSvg(scene) }, ...more];
  return { files, missing: HANDOVER_FILES.filter((name) => !files.some((one) => one.name === name)), waiting: production.issues };
}

async function productionFiles(sound: SoundLayout, details: HandoverDetails, language: HandoverLanguage, besides: readonly HandoverFile[]): Promise<Handover | InputError> {
  try {
    return await handover(sound, details, { language, besides });
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}
