import { describe, expect, test } from 'vitest';
import { betterThan, FROM_FILE } from '../../src/desk/job/layouts.ts';
import type { KeptLayout } from '../../src/desk/job/job.ts';

const layout = (id: string, ups: number, inputs = 'now') => ({ id, inputs, state: 'sound', file: { placements: new Array(ups).fill(0) } }) as unknown as KeptLayout;

describe('a better layout than the one handed over', () => {
  const shown = layout('shown', 10);

  test('the most ups for the same inputs, in whatever order they stand; none where none has more', () => {
    expect(betterThan(shown, [layout('a', 11), layout('b', 12), shown], 'now')?.id).toBe('b');
    expect(betterThan(shown, [shown, layout('a', 10), layout('b', 9)], 'now')).toBeUndefined();
  });

  test('what a near miss or a file brought is no better, and hides nothing that is', () => {
    expect(betterThan(shown, [layout('miss', 14, FROM_FILE), shown], 'now')).toBeUndefined();
    expect(betterThan(shown, [layout('miss', 14, FROM_FILE), layout('found', 11), shown], 'now')?.id).toBe('found');
    // Nor is one of them held against another.
    expect(betterThan(layout('file', 10, FROM_FILE), [layout('miss', 14, FROM_FILE)], 'now')).toBeUndefined();
  });

  test('of earlier inputs nothing is said, nor while they cannot be read', () => {
    expect(betterThan(layout('old', 10, 'before'), [layout('a', 12, 'before'), layout('b', 12)], 'now')).toBeUndefined();
    expect(betterThan(shown, [layout('a', 12, 'before')], 'now')).toBeUndefined();
    expect(betterThan(shown, [layout('a', 12)], undefined)).toBeUndefined();
  });
});
