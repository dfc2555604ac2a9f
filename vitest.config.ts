import { defineConfig } from 'vitest/config';
import { WxtVitest } from 'wxt/testing/vitest-plugin';

/** Tests of what knows no browser and no store: they leave nothing behind, and share their workers. */
const PURE = ['model', 'recall', 'syllabus', 'notes', 'exchange', 'papers'].map(
  (folder) => `tests/unit/${folder}/**/*.test.{ts,tsx}`,
);

export default defineConfig({
  test: {
    projects: [
      {
        plugins: [WxtVitest()],
        oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
        test: {
          name: 'unit',
          include: ['tests/unit/**/*.test.{ts,tsx}'],
          exclude: PURE,
          // Pages of two million characters take their time in a simulated document on a busy machine.
          testTimeout: 60_000,
          hookTimeout: 60_000,
          maxWorkers: '100%',
        },
      },
      {
        plugins: [WxtVitest()],
        test: {
          name: 'unit-pure',
          include: PURE,
          isolate: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          maxWorkers: '100%',
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          // Most of their time goes by waiting for a page; each file has browsers of its own.
          maxWorkers: 2,
          // On a busy machine a key or a click can miss a window. What passed only when tried again is marked in the output.
          retry: 1,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // After the unit tests: real browsers need both cores.
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
