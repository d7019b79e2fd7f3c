import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import about from './package.json' with { type: 'json' };

/** Everything from here, nothing from elsewhere; inline styles because the parameter panel and the scene set them. */
const CONTENT_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Only the built page carries the policy: hot reload needs an inline script. */
const contentPolicy = (): Plugin => ({
  name: 'content-policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY },
      injectTo: 'head-prepend',
    },
  ],
});

/** Every part of the program is kept at the first visit; a newer version waits until the person takes it. */
const offline = VitePWA({
  registerType: 'prompt',
  injectRegister: false,
  includeAssets: ['icon.svg', 'notices.txt', 'project.schema.json', 'demos/*.json'],
  manifest: {
    name: 'Parterre',
    short_name: 'Parterre',
    description: 'See and hear every seat of a home cinema before anything is bought.',
    display: 'standalone',
    background_color: '#14110F',
    theme_color: '#14110F',
    icons: [
      { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any maskable' },
    ],
  },
  workbox: {
    globPatterns: ['**/*.{js,css,html,woff2,svg,png,json,txt,md,wasm}'],
    maximumFileSizeToCacheInBytes: 6_000_000,
    cleanupOutdatedCaches: true,
  },
});

export default defineConfig({
  base: './',
  define: { __APP_VERSION__: JSON.stringify(about.version) },
  plugins: [react(), contentPolicy(), offline],
  worker: { format: 'es' },
  build: {
    target: 'es2023',
    license: { fileName: 'licences.md' },
    chunkSizeWarningLimit: 800,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'three', test: /node_modules\/three\/build\// },
            { name: 'react', test: /node_modules\/(react|react-dom|scheduler)\// },
            { name: 'fiber', test: /node_modules\/(@react-three|camera-controls|three-stdlib)/ },
            { name: 'zod', test: /node_modules\/zod\// },
          ],
        },
      },
    },
  },
  preview: { port: 4173 },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**', 'tests/long/**', 'node_modules/**'],
    testTimeout: 20_000,
  },
});
