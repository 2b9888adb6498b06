import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**'],
    setupFiles: ['test/support/seed.ts'],
    testTimeout: 60_000,
    maxWorkers: 2,
  },
});
