import { readFileSync } from 'node:fs';
import type * as Axe from 'axe-core';
import { createRequire } from 'node:module';
import { chromium, type Browser, type BrowserContextOptions, type Locator, type Page } from 'playwright-core';
import { inject } from 'vitest';

export const WIDE = { width: 1280, height: 900 } as const;
export const NARROW = { width: 360, height: 740 } as const;

/** Flags that keep a test browser from asking the network for anything of its own. */
const QUIET = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
];

/** The browser that the set-up found. As root, Chromium runs only without its sandbox. */
export async function launchBrowser(): Promise<Browser> {
  const root = process.getuid?.() === 0;
  return chromium.launch({
    executablePath: inject('browser'),
    args: root ? ['--no-sandbox', ...QUIET] : QUIET,
  });
}

export interface Opened {
  readonly page: Page;
  /** What the page threw or complained of. */
  readonly complaints: readonly string[];
  /** Addresses asked for, other than the page's own. */
  readonly strangers: readonly string[];
  readonly close: () => Promise<void>;
}

/** The page as built, in a fresh profile, at the size given. */
export async function openPage(
  browser: Browser,
  options: BrowserContextOptions & { readonly url?: string } = {},
): Promise<Opened> {
  const { url = inject('page'), ...rest } = options;
  const context = await browser.newContext({ viewport: WIDE, ...rest });
  const page = await context.newPage();
  const complaints: string[] = [];
  const strangers: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('request', (request) => {
    const own = ['data:', 'blob:', new URL('.', url).href];
    if (!own.some((start) => request.url().startsWith(start))) strangers.push(request.url());
  });
  await page.goto(url);
  await page.getByRole('tab', { name: 'Line' }).waitFor();
  return { page, complaints, strangers, close: () => context.close() };
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds against WCAG 2.2 A and AA, a line for each rule and place. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof Axe };
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await axe.run(document, { runOnly: tags });
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  });
}

/** Elements that stick out of the window sideways. */
export async function sidewaysOverflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** What a person reads in a part of the page, through the shadow roots that `innerText` stops at. */
export async function readText(part: Locator): Promise<string> {
  return part.evaluate((element) => {
    const read = (node: Node): string => {
      if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
      if (!(node instanceof Element)) return '';
      if (['STYLE', 'SCRIPT', 'TEMPLATE'].includes(node.tagName) || !node.checkVisibility()) return '';
      const inside =
        node instanceof HTMLSlotElement ? node.assignedNodes() : (node.shadowRoot ?? node).childNodes;
      const text = Array.from(inside, read).join('');
      return getComputedStyle(node).display.startsWith('inline') ? text : `${text}\n`;
    };
    return read(element).replace(/\s+/g, ' ');
  });
}
