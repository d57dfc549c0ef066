import { defineConfig } from 'vitest/config';

/** What `npm run mutants` looks for changes with: some tests only, and none that tell little for their time. */
const forMutants = process.env['HEMLEDGER_MUTANTS'];
const SLOW_ALONE = ['tests/functions/{bad-input,bare}.test.ts', 'tests/core/floor/floor-cuts.test.ts'];
/** What `npm run test:fast` goes without. */
const SLOW = [...SLOW_ALONE, 'tests/core/window/reader/tables.test.ts'];

/** They put another module in a real one's place, so they share no modules with other files; all others do. */
const MOCKING = ['tests/core/window/figures.test.tsx', 'tests/file/xlsx/replacing.test.ts'];
const ALL = ['tests/**/*.test.{ts,tsx}'];

export default defineConfig({
  test: {
    globalSetup: ['tests/setup.ts'],
    pool: 'threads',
    maxWorkers: '100%',
    // No test measures time: these bounds are for what hangs, also on a machine with other work.
    testTimeout: forMutants === undefined ? 300_000 : 600_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 120_000 } },
    ...(forMutants !== undefined
      ? { include: forMutants.split(' '), exclude: SLOW_ALONE }
      : {
          projects: [
            { extends: true, test: { name: 'alone', include: MOCKING } },
            { extends: true, test: { name: 'slow', include: SLOW, isolate: false } },
            {
              extends: true,
              test: { name: 'together', include: ALL, exclude: [...MOCKING, ...SLOW], isolate: false },
            },
          ],
        }),
  },
});
