import { faultIssue } from '../../layout/fault-issue.ts';
import { judge, type Judgement } from '../../layout/judge.ts';
import { readLayoutFile } from '../../layout/layout-file.ts';
import { checkStatedLimit } from '../../pipeline/check-stated-limit.ts';
import type { Checked } from '../../proof/check.ts';
import { english } from '../../render/messages/english.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { readJson, refuseOverwrite, writeAll } from '../files.ts';
import { checkStripping, readStrippingCheck, strippingCheckText, type StrippingCheck } from '../stripping-check.ts';

interface Options {
  readonly json?: string;
  readonly limit?: string;
  readonly stripping?: string;
  readonly leastStrip?: string;
}

export const registerJudge: RegisterCommand = (program) => {
  program
    .command('judge')
    .description('Judges a layout file from scratch, whoever made it: gaps, overlaps, margins, keep-outs, bleed, rotations.')
    .argument('<layout>', 'a layout file')
    .option('--limit <file>', 'also recompute a limit that `nest --explain-limit` wrote for this sheet and design')
    .option('--stripping <way>', 'also whether it can be stripped by-hand, with-tools or with-blanking: strips and frame on the true curves, straight ways, islands')
    .option('--least-strip <mm>', 'waste between two blanks must be so wide for that, whole millimetres (default 5)')
    .option('--json <file>', 'write the judgement as JSON; - is standard output')
    .addHelpText('after', '\nExit code 0: sound; 1: faulty, or the limit or what stripping asks does not hold; 2: cannot be judged.')
    .action(
      action((path: string, { json, limit: limitPath, ...options }: Options) => {
        const wish = readStrippingCheck(options);
        refuseOverwrite([path, ...(limitPath === undefined ? [] : [limitPath])], [json]);
        const layout = readLayoutFile(readJson(path), path);
        const judgement = judge(layout);
        const limit = limitPath === undefined ? undefined : checkStatedLimit(layout, readJson(limitPath), limitPath);
        const stripped = wish && checkStripping(layout, wish);
        if (json !== undefined) writeAll([{ path: json, content: judgementJson(judgement, limit, stripped) }]);
        if (json !== '-') process.stdout.write(judgementText(judgement, path, layout.placements.length) + (limit ? limitText(limit) : '') + (stripped ? strippingCheckText(stripped) : ''));
        return judgement.state === 'sound' && limit?.ok !== false && (stripped?.broken.length ?? 0) === 0 ? DONE : ASKS;
      }),
    );
};

/** Places to the micrometre, amounts to a tenth of it: finer figures are rounding. */
function judgementJson({ state, faults, cutShort }: Judgement, limit: Checked | undefined, stripping: StrippingCheck | undefined): string {
  const round = (value: number, perMm: number) => Math.round(value * perMm) / perMm + 0;
  const rounded = <Found extends { place: readonly number[]; byMm: number }>(found: Found) => ({ ...found, place: found.place.map((value) => round(value, 1e3)), byMm: round(found.byMm, 1e4) });
  const listed = faults.map(({ kind, blanks, place, byMm }) => rounded({ kind, blanks, place, byMm }));
  const checked = stripping && { mode: stripping.mode, leastStripMm: stripping.leastStrip, kept: stripping.broken.length === 0, broken: stripping.broken, places: stripping.places.map(rounded) };
  return `${JSON.stringify({ format: 'blankwright-judgement', version: 1, state, faults: listed, cutShort, ...(limit && { limit }), ...(checked && { stripping: checked }) }, null, 2)}\n`;
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
