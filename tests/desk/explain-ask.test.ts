import { expect, test } from 'vitest';
import { explainAskOf } from '../../src/desk/job/explain-ask.ts';
import type { KeptLayout } from '../../src/desk/job/job.ts';
import type { LayoutFile } from '../../src/layout/layout-file.ts';

test('why the search stopped is asked of what came at its end alone', () => {
  const layout: KeptLayout = { id: 'a', file: { designs: [{ id: 'mint' }] } as unknown as LayoutFile, state: 'sound', source: 'rows', inputs: '', limit: undefined, stopped: 'effort', seconds: 16, notes: [], history: [], limits: [] };
  expect(explainAskOf(layout).stopped).toBe('effort');
  expect(explainAskOf({ ...layout, seconds: undefined }).stopped).toBeUndefined();
});
