import { defineConfig } from 'vitest/config';

const editors = ['test/workbench/**/*.test.ts', 'test/editors/**/*.test.ts'];

export default defineConfig({
  test: {
    reporters: ['default', './server/make/tally.mjs'],
    projects: [
      {
        test: {
          name: 'rooms',
          include: ['test/**/*.test.ts'],
          exclude: ['**/node_modules/**', ...editors],
          // Shared machines are slow at times; a test that measures time sets its own limit.
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'editors',
          include: editors,
          exclude: ['**/node_modules/**'],
          // Each of these starts a whole editor: one at a time.
          fileParallelism: false,
          globalSetup: 'test/workbench/packaged.ts',
          testTimeout: 120_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
});
