import { render } from 'preact';
import { App } from './app.tsx';
import { createDesk, PANELS, whenChanged } from './desk.ts';
import { pageFiles } from './files/page-files.ts';
import { servedFiles } from './files/served-files.ts';
import { servedLibrary } from './library/served-library.ts';
import { keepJudging } from './judging.ts';
import { keepKin } from './kin.ts';
import { keepReading } from './reading.ts';
import { keepOffline, takeWaitingVersion } from './offline/new-version.ts';
import { keepSaving } from './saving.ts';
import { keepSearching } from './searching.ts';
import { takeOpened } from './taking.ts';
import { preferredLocale } from './words/preferred.ts';

/** A notice stays as long as it takes to read it, milliseconds. */
const NOTICE_MS = 9000;

/** Puts the desk on the page. */
const isServed = document.documentElement.dataset['served'] === 'yes';
const isKeptOffline = !isServed && 'serviceWorker' in navigator;
if (isKeptOffline) await takeWaitingVersion();
const desk = createDesk(preferredLocale());
const library = document.documentElement.dataset['library'] === 'yes' ? servedLibrary() : undefined;
const files = isServed ? await servedFiles() : pageFiles();
const saving = await keepSaving(desk);
desk.panel.value = PANELS.find((panel) => desk.chosen.value && panel === 'layouts') ?? 'drawing';
keepReading(desk);
whenChanged(desk.notice, NOTICE_MS, () => (desk.notice.value = ''));
keepJudging(desk);
keepKin(desk);
const searching = keepSearching(desk);
render(<App parts={{ desk, searching, saving, files, library }} />, document.getElementById('desk')!);
// Thread and code are there before the first drawing is.
desk.engine.warm('read');
desk.searcher.warm('search');
await takeOpened(desk, files);
if (isKeptOffline) await keepOffline(desk.newVersion);
