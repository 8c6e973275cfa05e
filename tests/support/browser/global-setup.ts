import { fileURLToPath } from 'node:url';
import { build } from 'vite';
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
  await build({ root: demo, configFile: `${demo}vite.config.ts`, logLevel: 'warn' });
  const served = await serveFolder(`${demo}dist`, '/harbour/bench/');
  project.provide('browser', browser);
  project.provide('page', served.url);
  project.provide('folder', `${demo}dist`);
  return served.close;
}
