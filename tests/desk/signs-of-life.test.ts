import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { judgeLayout } from '../../src/desk/engine/answers/judge.ts';
import { kinshipOf } from '../../src/desk/engine/answers/kinship.ts';
import { openLayout } from '../../src/desk/engine/answers/open-layout.ts';
import { read } from '../../src/desk/engine/answers/read.ts';
import type { DrawingSource } from '../../src/desk/engine/protocol.ts';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

const layout = layoutWith([rectangle('a', 100, 60)], [at('a', 100, 100), at('a', 206, 100)]);
const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, '..', '..', 'samples', 'drawings', 'label-oval.svg')));
const source: DrawingSource = { kind: 'file', name: 'label-oval.svg', bytes, options: { roles: [] } };

/** Answers that ask nothing of the search's control show by themselves that their work goes on. */
describe('signs of life of long work', () => {
  test.each([
    ['a drawing read', (goesOn: () => void) => read({ source, remembered: [] }, { locale: 'en', goesOn })],
    ['a drawing held against layouts', (goesOn) => kinshipOf({ designs: [layout.designs], drawing: { source, remembered: [], drawnFrom: 'printed', name: 'label-oval' } }, { goesOn })],
    ['a layout judged', (goesOn) => judgeLayout(layout, { goesOn })],
    ['a layout file opened', (goesOn) => openLayout({ name: 'sheet.json', bytes: new TextEncoder().encode(writeLayoutFile(layout)) }, { goesOn })],
  ] satisfies [string, (goesOn: () => void) => unknown][])('%s', async (_, work) => {
    let told = 0;
    await work(() => told++);
    expect(told).toBeGreaterThan(2);
  });
});
