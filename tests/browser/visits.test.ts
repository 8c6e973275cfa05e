import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import {
  accessibilityFaults,
  launchBrowser,
  NARROW,
  openPage,
  readText,
  sidewaysOverflow,
  WIDE,
} from '../support/browser/open-page.js';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
});

async function leaf(page: Page, name: string): Promise<void> {
  await page.getByRole('tab', { name, exact: true }).click();
  await page.getByRole('tabpanel', { name, exact: true }).waitFor();
}

/** Wave bytes of a steady tone: 16-bit PCM, one channel, written here and not by the code under test. */
function toneWav({ frequency, rate, seconds }: { frequency: number; rate: number; seconds: number }): Buffer {
  const count = rate * seconds;
  const bytes = Buffer.alloc(44 + 2 * count);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + 2 * count, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(2 * rate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * count, 40);
  for (let i = 0; i < count; i++) {
    const noise = Math.sin(i * 12.9898) * 43758.5453;
    const value =
      0.3 * Math.sin((2 * Math.PI * frequency * i) / rate) + 0.01 * (noise - Math.floor(noise) - 0.5);
    bytes.writeInt16LE(Math.round(32767 * value), 44 + 2 * i);
  }
  return bytes;
}

describe.each([
  ['wide', WIDE],
  ['narrow', NARROW],
] as const)('the three visits, %s', (_, viewport) => {
  it('will it whip? A thicker shaft changes the verdict, and undo brings the old one back', async () => {
    const { page, complaints, strangers, close } = await openPage(browser, { viewport });
    const answer = page.getByRole('region', { name: 'Will it whip?' });
    await expect
      .poll(() => readText(answer))
      .toContain('runs inside the band of the first whirl driven by the joints');
    await page.getByRole('button', { name: '7 Propeller shaft' }).first().click();
    const diameter = page.getByRole('textbox', { name: 'Diameter', exact: true });
    await diameter.fill('6,0');
    await diameter.press('Enter');
    await expect
      .poll(() => readText(answer))
      .not.toContain('inside the band of the first whirl driven by the joints');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect
      .poll(() => readText(answer))
      .toContain('inside the band of the first whirl driven by the joints');
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    expect(strangers).toEqual([]);
    await close();
  });

  it('what is this buzz? A WAV dropped in is read, its speed asked for, and its strongest order found', async () => {
    const { page, complaints, close } = await openPage(browser, { viewport });
    await leaf(page, 'Trials');
    const wav = toneWav({ frequency: 55, rate: 8000, seconds: 4 });
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Choose a recording' }).click(),
    ]);
    await chooser.setFiles({ name: 'bath.wav', mimeType: 'audio/wav', buffer: wav });
    await page.getByRole('heading', { name: 'bath', level: 3, exact: true }).waitFor();
    const speed = page.getByRole('textbox', { name: 'Shaft speed in this trial' });
    await speed.fill('3300');
    await speed.press('Enter');
    const panel = page.getByRole('tabpanel', { name: 'Trials' });
    // 3 300 rpm is 55 Hz: the tone is the first order, 0.3 of full scale.
    await expect.poll(() => readText(panel), { timeout: 20_000 }).toContain('out of balance');
    await expect.poll(() => readText(panel)).toMatch(/55\.0 Hz/);
    await expect.poll(() => readText(panel)).toMatch(/0\.300 ± [\d.]+ of full scale/);
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it('which layout? Two set side by side, with a sentence that names the better', async () => {
    const { page, complaints, close } = await openPage(browser, { viewport });
    await leaf(page, 'Side by side');
    const panel = page.getByRole('tabpanel', { name: 'Side by side' });
    await expect.poll(() => readText(panel)).toContain('“One joint, 6 mm” is clear');
    for (const name of ['Two joints, 5 mm', 'One joint, 5 mm, middle bush']) {
      await panel.getByRole('checkbox', { name, exact: true }).uncheck();
    }
    const table = panel.getByRole('table', { name: /Layouts side by side/ });
    await expect.poll(() => table.getByRole('columnheader').count()).toBe(2);
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('the page as built', () => {
  it('opens from a folder on the disk, reads a trial in its worker, and asks no one for anything', async () => {
    const url = pathToFileURL(`${inject('folder')}/index.html`).href;
    const { page, complaints, strangers, close } = await openPage(browser, { url });
    await leaf(page, 'Trials');
    const panel = page.getByRole('tabpanel', { name: 'Trials' });
    await expect.poll(() => readText(panel), { timeout: 20_000 }).toContain('Why, and what to try next');
    expect(complaints).toEqual([]);
    expect(strangers).toEqual([]);
    await close();
  });

  it('keeps the project over a reload', async () => {
    const { page, close } = await openPage(browser);
    const wanted = page.getByRole('textbox', { name: 'Wanted shaft speed' });
    await wanted.fill('2 500');
    await wanted.press('Enter');
    await expect
      .poll(() => readText(page.getByRole('region', { name: 'Will it whip?' })))
      .toContain('2 500 rpm');
    await page.waitForTimeout(1500);
    await page.reload();
    await expect
      .poll(() => page.getByRole('textbox', { name: 'Wanted shaft speed' }).inputValue())
      .toMatch(/2.?500/);
    await close();
  });

  it('says what is wrong with a field and keeps the last good verdict', async () => {
    const { page, close } = await openPage(browser);
    const answer = page.getByRole('region', { name: 'Will it whip?' });
    await expect.poll(() => readText(answer)).toContain('3 300 rpm');
    await page.getByRole('button', { name: '7 Propeller shaft' }).first().click();
    const bore = page.getByRole('textbox', { name: 'Bore of the shaft', exact: true });
    await bore.fill('6');
    await bore.press('Enter');
    // A bore of 6 mm in a shaft of 5 mm: refused, and the old verdict stays.
    await expect
      .poll(() => readText(page.getByRole('tabpanel', { name: 'Line' })))
      .toMatch(/[Mm]ust be (less|under|below|smaller)/);
    expect(await readText(answer)).toContain('3 300 rpm');
    await close();
  });

  it('is worked by keyboard: tabs by arrows, the wanted speed by its slider', async () => {
    const { page, close } = await openPage(browser);
    await page.getByRole('tab', { name: 'Line' }).focus();
    await page.keyboard.press('ArrowRight');
    await expect
      .poll(() => page.getByRole('tab', { name: 'Turning' }).getAttribute('aria-selected'))
      .toBe('true');
    const slider = page.getByRole('slider', { name: 'Wanted speed' });
    await slider.focus();
    const before = Number(await slider.getAttribute('aria-valuenow'));
    await page.keyboard.press('ArrowRight');
    await expect.poll(async () => Number(await slider.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
    await close();
  });

  it.each(['light', 'dark'] as const)('has no fault that axe finds, %s', async (colorScheme) => {
    for (const viewport of [WIDE, NARROW]) {
      const { page, close } = await openPage(browser, { viewport, colorScheme, reducedMotion: 'reduce' });
      for (const name of await page.getByRole('tab').allInnerTexts()) {
        await leaf(page, name);
        if (name === 'Trials')
          await page.getByRole('heading', { name: 'Why, and what to try next' }).waitFor();
        expect(await accessibilityFaults(page), `${name} at ${viewport.width}`).toEqual([]);
      }
      await close();
    }
  });
});
