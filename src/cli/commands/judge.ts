import { faultIssue } from '../../layout/fault-issue.ts';
import { judge, type Judgement } from '../../layout/judge.ts';
import { readLayoutFile } from '../../layout/layout-file.ts';
import { english } from '../../render/messages/english.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { readJson, refuseOverwrite, writeAll } from '../files.ts';

interface Options {
  readonly json?: string;
}

export const registerJudge: RegisterCommand = (program) => {
  program
    .command('judge')
    .description('Judges a layout file from scratch, whoever made it: gaps, overlaps, margins, keep-outs, bleed, rotations.')
    .argument('<layout>', 'a layout file')
    .option('--json <file>', 'write the judgement as JSON; - is standard output')
    .addHelpText('after', '\nExit code 0: sound; 1: faulty; 2: cannot be judged.')
    .action(
      action((path: string, { json }: Options) => {
        refuseOverwrite([path], [json]);
        const layout = readLayoutFile(readJson(path), path);
        const judgement = judge(layout);
        if (json !== undefined) writeAll([{ path: json, content: judgementJson(judgement) }]);
        if (json !== '-') process.stdout.write(judgementText(judgement, path, layout.placements.length));
        return judgement.state === 'sound' ? DONE : ASKS;
      }),
    );
};

/** Places to the micrometre, amounts to a tenth of it: finer figures are rounding. */
function judgementJson({ state, faults, cutShort }: Judgement): string {
  const round = (value: number, perMm: number) => Math.round(value * perMm) / perMm + 0;
  const listed = faults.map(({ kind, blanks, place, byMm }) => ({ kind, blanks, place: place.map((value) => round(value, 1e3)), byMm: round(byMm, 1e4) }));
  return `${JSON.stringify({ format: 'blankwright-judgement', version: 1, state, faults: listed, cutShort }, null, 2)}\n`;
}

/** Enough to start mending by; the rest is in the JSON. */
const MOST_LINES = 20;

function judgementText({ state, faults }: Judgement, file: string, ups: number): string {
  const say = (code: string, facts: Record<string, string | number>) => english.sentence({ code, severity: 'note', facts });
  if (state === 'sound') return `${say('judged-sound', { file, ups })}\n`;
  const lines = [say('judged-faulty', { file, ups, faults: faults.length }), ...faults.slice(0, MOST_LINES).map((fault) => `  ${sentence(faultIssue(fault))}`)];
  if (faults.length > MOST_LINES) lines.push(say('judged-more-faults', { listed: faults.length }));
  return `${lines.join('\n')}\n`;
}
