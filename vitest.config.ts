import { defineConfig } from 'vitest/config';

const times = { testTimeout: 180_000, hookTimeout: 180_000 };
const inBrowser = 'tests/browser/**/*.test.ts';

export default defineConfig({
  test: {
    projects: [
      { test: { ...times, name: 'node', include: ['tests/**/*.test.ts'], exclude: [inBrowser], maxWorkers: 2, sequence: { groupOrder: 0 } } },
      // A page and its threads take both cores: one file at a time, when the others are done.
      { test: { ...times, name: 'browser', include: [inBrowser], maxWorkers: 1, sequence: { groupOrder: 1 } } },
    ],
  },
});
