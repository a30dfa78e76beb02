import { chooseBlank } from '../../dieline/choose-blank.ts';
import type { Blank, Dieline } from '../../dieline/dieline.ts';
import { drawingJson } from '../../render/drawing-json.ts';
import { drawingSvg } from '../../render/drawing-svg.ts';
import { drawingText } from '../../render/drawing-text.ts';
import { action, ASKS, DONE, REFUSED, sentence, type RegisterCommand } from '../command.ts';
import { addDrawingOptions, readDrawingOptions } from '../drawing-options.ts';
import { refuseOverwrite, writeAll } from '../files.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { createOptionReader } from '../option-reader.ts';
import { readDrawing } from '../read-drawing.ts';

export const registerRead: RegisterCommand = (program) => {
  const command = program
    .command('read')
    .description('Reads a drawing and says what it holds: blanks, outline, openings, rules by role and length, faults with their places.')
    .argument('<drawing>', 'a dieline as SVG, DXF or PDF');
  addDrawingOptions(command)
    .option('--json <file>', 'write what was read as JSON; - is standard output')
    .option('--svg <file>', 'write a picture of the drawing as understood, faults numbered as in the list')
    .option('--language <tag>', `language of list and picture: ${LANGUAGE_TAGS}`, 'en')
    .addHelpText('after', '\nExit code 0: read; 1: read, but repaired or in doubt (see the warnings); 2: no blank was found.')
    .action(
      action(async (path: string, raw: Readonly<Record<string, unknown>>) => {
        const reader = createOptionReader(raw);
        const options = readDrawingOptions(raw, reader);
        reader.finish();
        const language = languageValue(String(raw['language']));
        const { json, svg } = raw as { json?: string; svg?: string };
        refuseOverwrite([path, ...(raw.roles === undefined ? [] : [String(raw.roles)])], [json, svg]);
        const dieline = await readDrawing(path, options);
        const chosen = dieline.blanks.length === 0 ? undefined : onlyOrChosen(dieline, options.blank);
        const content = drawingJson(path, dieline, chosen, options);
        if (dieline.blanks.length === 0) return refuse(dieline, json === '-' ? content : drawingText(path, { ...dieline, issues: dieline.issues.filter(({ severity }) => severity !== 'error') }, options, language));
        writeAll([...(json === undefined ? [] : [{ path: json, content }]), ...(svg === undefined ? [] : [{ path: svg, content: drawingSvg(path, dieline, language) }])]);
        if (json !== '-') process.stdout.write(drawingText(path, dieline, options, language));
        return dieline.issues.some(({ severity }) => severity !== 'note') ? ASKS : DONE;
      }),
    );
};

/** Reading lists several blanks without asking for a choice; a number that does not exist is a mistake all the same. */
function onlyOrChosen(dieline: Dieline, number: number | undefined): Blank | undefined {
  return number === undefined && dieline.blanks.length > 1 ? undefined : chooseBlank(dieline, number);
}

/** What was found helps to mend the drawing, so it is printed, the errors once, at the end; no file is written. */
function refuse({ issues }: Dieline, found: string): number {
  process.stdout.write(found);
  for (const issue of issues) if (issue.severity === 'error') process.stderr.write(`${sentence(issue)}\n`);
  return REFUSED;
}
