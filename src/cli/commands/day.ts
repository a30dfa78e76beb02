import { resolve } from 'node:path';
import { planDay } from '../../pipeline/day.ts';
import { readDayJob } from '../../pipeline/day-job.ts';
import { dayJson } from '../../render/day-json.ts';
import { dayPictures } from '../../render/day-pictures.ts';
import { dayReport } from '../../render/day-report.ts';
import { reportHtml } from '../../render/report-html.ts';
import { action, ASKS, DONE, type RegisterCommand } from '../command.ts';
import { refuseOverwrite, writeAll, type Output } from '../files.ts';
import { openJob } from '../job-files.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { printReport } from '../print-report.ts';

interface Options {
  readonly json?: string;
  readonly html?: string;
  readonly changeover?: string;
  readonly language: string;
}

export const registerDay: RegisterCommand = (program) => {
  program
    .command('day')
    .description('One day’s forms on one press: the order that costs least changeover, minutes by cause, a crew ticket per form.')
    .argument('<job>', 'a job file (JSON); paths in it are relative to it')
    .option('--changeover <file>', 'minutes by cause (JSON); else the job’s, else invented ones, named so')
    .option('--json <file>', 'write the order as JSON; - is standard output')
    .option('--html <file>', 'write the page: timeline, order, a crew ticket for every form')
    .option('--language <tag>', `language of report, tickets and chart: ${LANGUAGE_TAGS}`, 'en')
    .addHelpText('after', '\nExit code 0: done; 1: done, but a speed is missing, a form comes late or something is in doubt; 2: the job cannot be used.')
    .action(
      action((path: string, { json, html, changeover, language: tag }: Options) => {
        const language = languageValue(tag);
        const files = openJob(path);
        const job = readDayJob(files.json, path, files.load, changeover === undefined ? undefined : resolve(changeover));
        refuseOverwrite(files.read, [json, html]);
        const facts = planDay(job);
        const outputs: Output[] = [];
        if (json !== undefined) outputs.push({ path: json, content: dayJson(facts) });
        if (html !== undefined) outputs.push({ path: html, content: reportHtml(dayReport(facts, { tickets: true }, language), dayPictures(facts, language)) });
        writeAll(outputs);
        if (json !== '-') printReport(dayReport(facts, { tickets: false }, language));
        return facts.missing.length > 0 || facts.late > 0 || facts.notes.some(({ severity }) => severity === 'warning') ? ASKS : DONE;
      }),
    );
};
