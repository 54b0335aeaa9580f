import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** `npm run e2e`: the built app in a real browser. One file after the other: the browser needs the machine to itself. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../../', import.meta.url)),
    include: ['test/e2e/**/*.spec.ts'],
    globalSetup: ['test/e2e/setup.ts'],
    environment: 'node',
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
