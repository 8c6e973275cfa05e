import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const core = fileURLToPath(new URL('../core/src/index.ts', import.meta.url));

/** What the built page may load: its own files and what it makes itself, nothing else. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "worker-src 'self' blob:",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/**
 * A browser refuses module scripts and credentialed links on a page opened from disk, so the one script is a
 * classic one, deferred, and no tag asks for credentials.
 */
function openFromDisk(): Plugin {
  return {
    name: 'open-from-disk',
    apply: 'build',
    enforce: 'post',
    transformIndexHtml: {
      order: 'post',
      handler: (html) =>
        html
          .replace(/<script type="module" crossorigin/g, '<script defer')
          .replace(/<link rel="stylesheet" crossorigin/g, '<link rel="stylesheet"')
          .replace(
            '<meta charset="utf-8" />',
            `<meta charset="utf-8" />\n    <meta http-equiv="Content-Security-Policy" content="${POLICY}" />`,
          ),
    },
  };
}

export default defineConfig({
  base: './',
  resolve: { alias: { '@sternline/core': core } },
  plugins: [openFromDisk()],
  worker: { format: 'iife' },
  build: {
    target: 'es2022',
    modulePreload: false,
    cssCodeSplit: false,
    chunkSizeWarningLimit: 2000,
    assetsInlineLimit: (path) => path.endsWith('.woff2'),
    rolldownOptions: { output: { format: 'iife', codeSplitting: false } },
  },
  server: { port: 5173 },
  preview: { port: 4173, strictPort: false },
});
