import { InputError, inputError } from '../../../base/issue.ts';
import { writeLayoutFile } from '../../../layout/layout-file.ts';
import { judgeForProduction, type SoundLayout } from '../../../layout/sound.ts';
import { handover } from '../../../pipeline/handover.ts';
import type { HandoverDetails } from '../../../render/handover-facts.ts';
import { sceneToPdf } from '../../../render/pdf.ts';
import { sheetScene } from '../../../render/sheet-scene.ts';
import { sceneToSvg } from '../../../render/svg.ts';
import { viewOfLayout } from '../../../render/view-of-layout.ts';
import type { HandoverAnswer, HandoverAsk, OutputFile } from '../protocol.ts';

/** Judged here once more: files for production come from nothing else. Pictures and data do not wait for roles that are open. */
export async function handOver({ file, details }: HandoverAsk): Promise<HandoverAnswer> {
  const { judgement, sound } = judgeForProduction(file);
  if (!sound) throw inputError('handover-faulty', { where: 'layout', facts: { faults: judgement.faults.length } });
  const scene = sheetScene(viewOfLayout(sound, { grain: details.grain, figures: [] }));
  const pdf = { name: 'sheet.pdf', content: await sceneToPdf(scene) };
  const production = await productionFiles(sound, details);
  if (!(production instanceof InputError)) return { files: [...production, pdf], waiting: [] };
  return { files: [{ name: 'layout.json', content: writeLayoutFile(sound) }, { name: 'sheet.svg', content: sceneToSvg(scene) }, pdf], waiting: production.issues };
}

async function productionFiles(sound: SoundLayout, details: HandoverDetails): Promise<readonly OutputFile[] | InputError> {
  try {
    return (await handover(sound, details)).files;
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}
