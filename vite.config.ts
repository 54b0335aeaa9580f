import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

const projectRoot = fileURLToPath(new URL('.', import.meta.url));

/** The app is built from src/ into dist/; unit tests live in test/, end-to-end tests have a configuration of their own beside them. */
export default defineConfig({
  root: `${projectRoot}src`,
  base: './',
  plugins: [react()],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    sourcemap: true,
    // Everything is a file of this origin: the page's content security policy knows no inline data.
    assetsInlineLimit: 0,
  },
  worker: { format: 'es' },
  server: { host: '127.0.0.1' },
  test: {
    root: projectRoot,
    include: ['test/**/*.test.{ts,tsx}'],
    env: { TZ: 'UTC' },
  },
});
