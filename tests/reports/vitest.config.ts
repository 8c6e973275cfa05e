import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Reports: run on demand, never among the tests, because they write into docs/. */
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  resolve: {
    alias: { '@sternline/core': fileURLToPath(new URL('../../packages/core/src/index.ts', import.meta.url)) },
  },
  test: { include: ['tests/reports/**/*.report.ts'], testTimeout: 3_600_000 },
});
