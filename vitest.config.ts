import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const core = fileURLToPath(new URL('./packages/core/src/index.ts', import.meta.url));
const resolve = { alias: { '@sternline/core': core } };

export default defineConfig({
  test: {
    projects: [
      { resolve, test: { name: 'house', include: ['tests/*.test.ts'], testTimeout: 60_000 } },
      { resolve, test: { name: 'core', include: ['tests/core/**/*.test.ts'], testTimeout: 30_000 } },
      { resolve, test: { name: 'demo', include: ['tests/demo/**/*.test.ts'], testTimeout: 30_000 } },
      {
        resolve,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/browser/global-setup.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
