import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { brotliCompress, gzip } from 'node:zlib';
import sharp from 'sharp';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const web = fileURLToPath(new URL('src/web', import.meta.url));
const built = fileURLToPath(new URL('dist/client', import.meta.url));

/** The icon in the sizes that phones want as pixels. */
const icons: Plugin = {
  name: 'icons',
  apply: 'build',
  async generateBundle() {
    const drawing = await readFile(`${web}/public/icon.svg`);
    for (const size of [192, 512]) {
      const source = await sharp(drawing, { density: 300 }).resize(size, size).png().toBuffer();
      this.emitFile({ type: 'asset', fileName: `icon-${size}.png`, source });
    }
  },
};

/** Every text file once more in brotli and gzip, so that the server compresses nothing while somebody waits. */
const compressed = (folder = built): Plugin => ({
  name: 'compressed',
  apply: 'build',
  enforce: 'post',
  configResolved: ({ build }) => {
    folder = build.outDir;
  },
  closeBundle: {
    sequential: true,
    order: 'post',
    async handler() {
      for (const name of await readdir(folder, { recursive: true })) {
        if (!/\.(js|css|svg|webmanifest)$/.test(name)) continue;
        const path = join(folder, name);
        const bytes = await readFile(path);
        await writeFile(`${path}.br`, await promisify(brotliCompress)(bytes));
        await writeFile(`${path}.gz`, await promisify(gzip)(bytes, { level: 9 }));
      }
    },
  },
});

export default defineConfig({
  root: web,
  base: '/',
  clearScreen: false,
  logLevel: 'warn',
  esbuild: { jsx: 'automatic', jsxImportSource: 'preact' },
  build: {
    outDir: built,
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: false,
    // No inline data and no inline script, for the Content-Security-Policy's sake.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    manifest: 'assets/manifest.json',
    // Files name each other: without their own names in it, a first load is a kilobyte smaller (the manifest has them).
    rollupOptions: { output: { chunkFileNames: 'assets/[hash].js' } },
  },
  plugins: [
    icons,
    VitePWA({
      strategies: 'generateSW',
      injectRegister: false,
      registerType: 'prompt',
      manifestFilename: 'manifest.webmanifest',
      manifest: {
        id: '/',
        name: 'Halfsplit',
        short_name: 'Halfsplit',
        description: 'Service tickets for signal-chain faults: one change at a time.',
        start_url: '/',
        scope: '/',
        display: 'standalone',
        background_color: '#f6f5f1',
        theme_color: '#1f3d46',
        icons: [
          { src: '/icon.svg', type: 'image/svg+xml', sizes: 'any', purpose: 'any' },
          { src: '/icon-192.png', type: 'image/png', sizes: '192x192', purpose: 'any' },
          { src: '/icon-512.png', type: 'image/png', sizes: '512x512', purpose: 'maskable' },
        ],
      },
      workbox: {
        globPatterns: ['index.html', 'assets/**/*.{js,css}', 'icon.svg'],
        navigateFallback: '/index.html',
        // Only the client's own addresses; the API, its reference and packets' summaries go to the server.
        navigateFallbackAllowlist: [/^\/$/, /^\/app(\/|$)/],
        cleanupOutdatedCaches: true,
        inlineWorkboxRuntime: true,
        sourcemap: false,
      },
    }),
    compressed(),
  ],
});
