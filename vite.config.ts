import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';

const projectRoot = fileURLToPath(new URL('.', import.meta.url));

/**
 * The app can be installed and works without a network: everything it is made of is fetched once and kept. A new version
 * waits until it is taken (src/app/updates.ts); nothing is reloaded by itself.
 */
const offline = VitePWA({
  registerType: 'prompt',
  injectRegister: false,
  manifest: {
    name: 'Rimwise',
    short_name: 'Rimwise',
    description: 'Chairside assistant for making complete dentures',
    lang: 'en',
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#faf7f0',
    theme_color: '#0b4550',
    icons: [
      { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{js,css,html,svg,png,woff2,ttf,otf,wasm,json}'],
    maximumFileSizeToCacheInBytes: 8_000_000,
    cleanupOutdatedCaches: true,
    // The very first page is served by the worker too, so that what it fetches later is there without a network.
    clientsClaim: true,
    sourcemap: false,
  },
});

/** The app is built from src/ into dist/; unit tests live in test/, end-to-end tests have a configuration of their own beside them. */
export default defineConfig({
  root: `${projectRoot}src`,
  base: './',
  plugins: [react(), offline],
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
