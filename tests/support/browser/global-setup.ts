import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { findBrowser } from './find-browser.js';
import { serveFolder } from './serve-folder.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Program file of the browser. */
    browser: string;
    /** Where the built page is served, under a sub-path. */
    page: string;
    /** Folder of the built page. */
    folder: string;
  }
}

/** Builds the page as it ships and serves it under a sub-path. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const browser = findBrowser();
  const demo = fileURLToPath(new URL('../../../packages/demo/', import.meta.url));
  buildPage(demo);
  const served = await serveFolder(`${demo}dist`, '/harbour/bench/');
  project.provide('browser', browser);
  project.provide('page', served.url);
  project.provide('folder', `${demo}dist`);
  return served.close;
}

/** In a process of its own: in the test runner's, the page would be built with the libraries' development halves. */
function buildPage(demo: string): void {
  const vite = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js');
  const { status } = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: demo,
    stdio: 'inherit',
    env: { ...process.env, NODE_ENV: 'production' },
  });
  if (status !== 0) throw new Error('The page could not be built; see the lines above.');
}
