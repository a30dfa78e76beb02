import { faultIssue } from '../../layout/fault-issue.ts';
import { judge, type Judgement } from '../../layout/judge.ts';
import { readLayoutFile } from '../../layout/layout-file.ts';
import { checkStatedLimit } from '../../pipeline/check-stated-limit.ts';
import type { Checked } from '../../proof/check.ts';
import { english } from '../../render/messages/english.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { readJson, refuseOverwrite, writeAll } from '../files.ts';

interface Options {
  readonly json?: string;
  readonly limit?: string;
}

export const registerJudge: RegisterCommand = (program) => {
  program
    .command('judge')
    .description('Judges a layout file from scratch, whoever made it: gaps, overlaps, margins, keep-outs, bleed, rotations.')
    .argument('<layout>', 'a layout file')
    .option('--limit <file>', 'also recompute a limit that `nest --explain-limit` wrote for this sheet and design')
    .option('--json <file>', 'write the judgement as JSON; - is standard output')
    .addHelpText('after', '\nExit code 0: sound; 1: faulty; 2: cannot be judged.')
    .action(
      action((path: string, { json, limit: limitPath }: Options) => {
        refuseOverwrite([path, ...(limitPath === undefined ? [] : [limitPath])], [json]);
        const layout = readLayoutFile(readJson(path), path);
        const judgement = judge(layout);
        const limit = limitPath === undefined ? undefined : checkStatedLimit(layout, readJson(limitPath), limitPath);
        if (json !== undefined) writeAll([{ path: json, content: judgementJson(judgement, limit) }]);
        if (json !== '-') process.stdout.write(judgementText(judgement, path, layout.placements.length) + (limit ? limitText(limit) : ''));
        return judgement.state === 'sound' && limit?.ok !== false ? DONE : ASKS;
      }),
    );
};

/** Places to the micrometre, amounts to a tenth of it: finer figures are rounding. */
function judgementJson({ state, faults, cutShort }: Judgement, limit: Checked | undefined): string {
  const round = (value: number, perMm: number) => Math.round(value * perMm) / perMm + 0;
  const listed = faults.map(({ kind, blanks, place, byMm }) => ({ kind, blanks, place: place.map((value) => round(value, 1e3)), byMm: round(byMm, 1e4) }));
  return `${JSON.stringify({ format: 'blankwright-judgement', version: 1, state, faults: listed, cutShort, ...(limit && { limit }) }, null, 2)}\n`;
}

function limitText(limit: Checked): string {
  const issue = limit.ok ? ({ code: 'limit-holds', facts: { ups: limit.ups } } as const) : ({ code: 'limit-refused', facts: { reason: limit.reason } } as const);
  return `${english.sentence({ severity: 'note', ...issue })}\n`;
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
