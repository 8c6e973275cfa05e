import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { chromium } from 'playwright-core';

const PLACES: Partial<Record<NodeJS.Platform, readonly string[]>> = {
  linux: [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/microsoft-edge',
    '/snap/bin/chromium',
  ],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
    'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

/**
 * Where a browser for the tests is: the one named in STERNLINE_BROWSER, one that is installed, or one fetched now by
 * Playwright's installer.
 */
export function findBrowser(): string {
  const named = process.env['STERNLINE_BROWSER'];
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`STERNLINE_BROWSER names ${named}, and there is no such file.`);
  }
  const fetched = chromium.executablePath();
  const found = [...(PLACES[process.platform] ?? []), fetched].find((path) => existsSync(path));
  if (found) return found;
  console.log('No Chromium, Chrome or Edge found: fetching Chromium for the browser tests …');
  const cli = join(dirname(createRequire(import.meta.url).resolve('playwright-core/package.json')), 'cli.js');
  spawnSync(process.execPath, [cli, 'install', 'chromium'], { stdio: 'inherit' });
  if (existsSync(fetched)) return fetched;
  throw new Error(
    'The browser tests need Chromium, Chrome or Edge, and none was found or could be fetched: ' +
      'install one, or set STERNLINE_BROWSER to its program file, and run the tests again.',
  );
}
