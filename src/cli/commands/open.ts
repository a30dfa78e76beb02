import { homedir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { english } from '../../render/messages/english.ts';
import { openLibrary } from '../../shop/library/open-library.ts';
import { action, DONE, type RegisterCommand } from '../command.ts';
import { openFiles } from '../desk-files.ts';
import { serveDesk, usualPort } from '../desk-server.ts';
import { createOptionReader, wholeNumber } from '../option-reader.ts';
import { libraryAnswers } from '../serving/library-answers.ts';
import { createQuestions } from '../serving/questions.ts';

export const registerOpen: RegisterCommand = (program) => {
  program
    .command('open')
    .description('Serves the desk, the page to see, move, judge and decide on, to this machine only.')
    .argument('[files...]', 'drawings (SVG, DXF, PDF), layouts and records to begin with, or one folder to read and write in')
    .option('--library <file>', 'show this library on the desk, to this machine only; jobs can be kept in it')
    .option('--port <n>', 'a port of your choice (default: one of your own, or any free one; a browser keeps jobs by port)')
    .addHelpText('after', '\nPrints the address; open it in a browser on this machine. Ctrl-C ends it.')
    .action(
      action(async (paths: readonly string[], raw: Readonly<Record<string, unknown>>) => {
        const reader = createOptionReader(raw);
        const port = reader.read('--port', wholeNumber(1, 65_535), 'a whole number from 1 to 65535 is wanted');
        reader.finish();
        // Compiled or not, the built page lies in dist/desk.
        const pages = fileURLToPath(new URL('../../../dist/desk', import.meta.url));
        const opened = openFiles(paths);
        const library = raw['library'] === undefined ? undefined : openLibrary(String(raw['library']), { create: false });
        const questions = createQuestions();
        try {
          const server = await serveDesk(pages, opened, port === undefined ? { like: usualPort(homedir()) } : { must: port }, { ...questions.answers, ...(library && libraryAnswers(library)) });
          process.stdout.write(`${english.sentence({ code: 'desk-at', severity: 'note', facts: { url: server.url } })}\n`);
          await interrupted();
          await server.close();
        } finally {
          await questions.close();
          library?.close();
        }
        return DONE;
      }),
    );
};

function interrupted(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}
