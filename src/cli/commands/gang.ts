import { gangVersions } from '../../pipeline/gang.ts';
import { readVersionsJob } from '../../pipeline/gang-job.ts';
import { gangJson } from '../../render/gang-json.ts';
import { gangReport } from '../../render/gang-report.ts';
import { reportHtml } from '../../render/report-html.ts';
import { action, DONE, type RegisterCommand } from '../command.ts';
import { refuseOverwrite, writeAll, type Output } from '../files.ts';
import { openJob } from '../job-files.ts';
import { printReport } from '../print-report.ts';

interface Options {
  readonly json?: string;
  readonly html?: string;
}

export const registerGang: RegisterCommand = (program) => {
  program
    .command('gang')
    .description('Several designs or versions and their quantities: how many of each on which forms, how often each form is pressed.')
    .argument('<job>', 'a job file (JSON); paths in it are relative to it')
    .option('--json <file>', 'write the plan as JSON; - is standard output')
    .option('--html <file>', 'write the report as a page')
    .addHelpText('after', '\nExit code 0: done; 2: the job cannot be used, or the forms cannot hold all versions.')
    .action(
      action((path: string, { json, html }: Options) => {
        const files = openJob(path);
        refuseOverwrite(files.read, [json, html]);
        const facts = gangVersions(readVersionsJob(files.json, path));
        const report = gangReport(facts);
        const outputs: Output[] = [];
        if (json !== undefined) outputs.push({ path: json, content: gangJson(facts) });
        if (html !== undefined) outputs.push({ path: html, content: reportHtml(report) });
        writeAll(outputs);
        if (json !== '-') printReport(report);
        return DONE;
      }),
    );
};
