import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: [
            'tests/app/**',
            'tests/cli/**',
            'tests/contract/**',
            'tests/proof/**',
            '**/node_modules/**',
          ],
          environment: 'node',
          // The engine has no state of its own, so files may share one load of it.
          isolate: false,
          maxWorkers: 2,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          // Whole plans, followed from their files and sheets by readers of their own; the proofs, reduced.
          name: 'whole',
          include: ['tests/contract/**/*.test.ts', 'tests/proof/**/*.test.ts'],
          environment: 'node',
          isolate: false,
          maxWorkers: 2,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          // The programs as they are started: the app in Chromium, the command line.
          name: 'browser',
          include: ['tests/app/**/*.test.ts', 'tests/cli/**/*.test.ts'],
          environment: 'node',
          testTimeout: 240_000,
          hookTimeout: 240_000,
          fileParallelism: false,
        },
      },
      {
        test: {
          name: 'proof',
          include: ['tests/**/*.proof.ts'],
          environment: 'node',
          testTimeout: 3_600_000,
        },
      },
    ],
  },
});
