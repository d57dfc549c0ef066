import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: ['tests/trial/folder.ts'],
    pool: 'threads',
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
