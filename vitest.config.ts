import { defineConfig } from 'vitest/config';

/** What `npm run mutants` looks for changes with: some tests only, and none of the slow ones. */
const forMutants = process.env['HEMLEDGER_MUTANTS'];
const SLOW = [
  'tests/functions/{bad-input,bare}.test.ts',
  'tests/core/window/reader/tables.test.ts',
  'tests/core/floor/floor-cuts.test.ts',
];

export default defineConfig({
  test: {
    include: forMutants?.split(' ') ?? ['tests/**/*.test.{ts,tsx}'],
    ...(forMutants !== undefined && { exclude: SLOW }),
    globalSetup: ['tests/trial/folder.ts'],
    pool: 'threads',
    testTimeout: forMutants === undefined ? 60_000 : 600_000,
    hookTimeout: 120_000,
  },
});
