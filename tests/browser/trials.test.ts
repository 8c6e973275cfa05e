import { mkdtempSync, openSync, writeSync, closeSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
import { storedZip } from '../support/stored-zip.js';
import { busiestTask } from '../support/browser/busiest-task.js';

let browser: Browser;
let folder: string;

beforeAll(async () => {
  browser = await launchBrowser();
  folder = mkdtempSync(join(tmpdir(), 'trials-'));
});

afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

async function toTrials(page: Page) {
  await page.getByRole('tab', { name: 'Trials', exact: true }).click();
  const panel = page.getByRole('tabpanel', { name: 'Trials', exact: true });
  await panel.waitFor();
  return panel;
}

type Chosen = string | { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

async function choose(page: Page, file: Chosen): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Choose a recording' }).click(),
  ]);
  await chooser.setFiles(file);
}

const SLOW = { timeout: 45_000 };

/** Deterministic noise, −0.5 … 0.5. */
function noise(): () => number {
  let state = 4711;
  return () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
}

/**
 * A run-up as a logger writes it, made here from its definition: first and second order of a shaft that climbs from 10 to 40 turns a
 * second in 20 s, the first one ringing up where it passes 30 Hz.
 */
function runUp(): string {
  const draw = noise();
  const rows = Array.from({ length: 4000 }, (_, n) => {
    const t = n / 200;
    const turns = 10 * t + 0.75 * t * t;
    const shaft = 10 + 1.5 * t;
    const ring = 1 / Math.hypot(1 - (shaft / 30) ** 2, 0.08 * (shaft / 30));
    const x = 0.4 * ring * Math.sin(2 * Math.PI * turns) + 0.8 * Math.sin(4 * Math.PI * turns) + 0.1 * draw();
    return `${t.toFixed(4)},${x.toFixed(4)},${(0.1 * draw()).toFixed(4)},${(9.81 + 0.1 * draw()).toFixed(4)}`;
  });
  return ['time (s),ax (m/s²),ay (m/s²),az (m/s²)', ...rows].join('\n');
}

const text = (name: string, content: string): Chosen => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(content),
});

describe('recording inside the page', () => {
  it('records the microphone, says what was granted, and reads the recording', async () => {
    const { page, complaints, strangers, close } = await openPage(browser, { permissions: ['microphone'] });
    const panel = await toTrials(page);
    await panel.getByText('Record with this device').click();
    await expect.poll(() => readText(panel)).toContain('the propeller guarded or off');
    await panel.getByLabel('Starts').selectOption('3');
    await panel.getByRole('button', { name: 'Start a recording' }).click();
    await expect
      .poll(() => readText(panel), SLOW)
      .toContain('Echo cancelling, noise suppression and automatic gain are off, as asked.');
    await expect.poll(() => readText(panel), SLOW).toContain('Recording.');
    await panel.getByRole('meter').waitFor();
    await page.waitForTimeout(3000);
    await panel.getByRole('button', { name: 'Stop and read it' }).click();
    await panel.getByRole('heading', { name: /^Sound [\d-]+ [\d.]{5}$/, level: 3 }).waitFor(SLOW);
    // What was granted stands with the trial, and every sample was kept: no word of compression.
    await expect.poll(() => readText(panel), SLOW).toContain('How well it was taken');
    const read = await readText(panel);
    expect(read).toContain('every sample is kept');
    expect(read).not.toContain('Compressed');
    const seconds = Number(/Sound, one channel: ([\d.]+) s/.exec(read)?.[1]);
    // Three seconds and what the clicks took.
    expect(seconds).toBeGreaterThan(2.5);
    expect(seconds).toBeLessThan(20);
    expect(complaints).toEqual([]);
    expect(strangers).toEqual([]);
    await close();
  });

  it('records from a page opened from disk too, where no worklet can be loaded', async () => {
    const url = pathToFileURL(`${inject('folder')}/index.html`).href;
    const { page, close } = await openPage(browser, { url });
    const panel = await toTrials(page);
    await panel.getByText('Record with this device').click();
    await panel.getByLabel('Starts').selectOption('3');
    await panel.getByRole('button', { name: 'Start a recording' }).click();
    await expect.poll(() => readText(panel), SLOW).toContain('Recording.');
    await page.waitForTimeout(2000);
    await panel.getByRole('button', { name: 'Stop and read it' }).click();
    await panel.getByRole('heading', { name: /^Sound [\d-]+ [\d.]{5}$/, level: 3 }).waitFor(SLOW);
    await expect.poll(() => readText(panel), SLOW).toContain('How well it was taken');
    await close();
  });

  it('records motion, counts its rate and says what folds', async () => {
    const { page, complaints, close } = await openPage(browser);
    const panel = await toTrials(page);
    // A sensor of 50 readings a second, as a phone would send them; where the browser asks for it, it is granted.
    await page.evaluate(() => {
      const asking = DeviceMotionEvent as unknown as { requestPermission?: () => Promise<string> };
      asking.requestPermission = () => Promise.resolve('granted');
      let n = 0;
      setInterval(() => {
        const shake = Math.sin((2 * Math.PI * 8 * n) / 50);
        n += 1;
        const event = new DeviceMotionEvent('devicemotion', {
          accelerationIncludingGravity: { x: 2 * shake, y: 0.1 * Math.sin(n * n), z: 9.8 },
          interval: 20,
        });
        window.dispatchEvent(event);
      }, 20);
    });
    await panel.getByText('Record with this device').click();
    await panel.getByLabel('Record', { exact: true }).selectOption('motion');
    await panel.getByLabel('Starts').selectOption('3');
    await panel.getByRole('button', { name: 'Start a recording' }).click();
    await expect
      .poll(() => readText(panel), SLOW)
      .toMatch(/The sensor gives \d+\.\d samples a second, counted/);
    // The wanted 3 300 rpm is 55 Hz, beyond half of any rate that a timer of 20 ms can give.
    await expect
      .poll(() => readText(panel))
      .toMatch(/Order 1 \(55\.0 Hz\) lies above half the sampling rate/);
    await expect.poll(() => readText(panel), SLOW).toContain('Recording.');
    await page.waitForTimeout(4000);
    await panel.getByRole('button', { name: 'Stop and read it' }).click();
    await panel.getByRole('heading', { name: /^Motion [\d-]+ [\d.]{5}$/, level: 3 }).waitFor(SLOW);
    await expect.poll(() => readText(panel), SLOW).toContain('Acceleration on x, y and z');
    expect(complaints).toEqual([]);
    await close();
  });

  it('says what to do instead where there is no sensor', async () => {
    const { page, close } = await openPage(browser);
    const panel = await toTrials(page);
    await panel.getByText('Record with this device').click();
    await panel.getByLabel('Record', { exact: true }).selectOption('motion');
    await panel.getByRole('button', { name: 'Start a recording' }).click();
    await expect.poll(() => readText(panel), SLOW).toContain('Record with a motion logger on the phone');
    await close();
  });

  it('keeps nothing of a recording that is called off before it starts', async () => {
    const { page, close } = await openPage(browser, { permissions: ['microphone'] });
    const panel = await toTrials(page);
    await panel.getByText('Record with this device').click();
    await panel.getByLabel('Starts').selectOption('20');
    await panel.getByRole('button', { name: 'Start a recording' }).click();
    await panel.getByRole('button', { name: 'Do not record' }).click(SLOW);
    await panel.getByRole('button', { name: 'Start a recording' }).waitFor();
    expect(await readText(panel)).not.toMatch(/Sound \d{4}-/);
    await close();
  });
});

describe('files', () => {
  it('reads the accelerometer out of a zip of sensors', async () => {
    const { page, complaints, close } = await openPage(browser);
    const panel = await toTrials(page);
    const gyroscope = 'time (s),x (rad/s),y (rad/s),z (rad/s)\n0,0,0,0\n0.01,0,0,0\n';
    const zip = storedZip({ 'Gyroscope.csv': gyroscope, 'Accelerometer.csv': runUp() });
    await choose(page, { name: 'sensors.zip', mimeType: 'application/zip', buffer: zip });
    await expect
      .poll(() => readText(panel), SLOW)
      .toContain('Acceleration on x, y and z: 20.0 s at 200 samples');
    expect(complaints).toEqual([]);
    await close();
  });

  it.each([
    [
      'an AMR sound file',
      Buffer.from('#!AMR\n<abc'),
      'No browser plays the sound of old phone recorders (AMR)',
    ],
    ['a PDF document', Buffer.from('%PDF-1.7 \n%âãÏÓ\n'), 'Export the recording from there as CSV.'],
    [
      'a file of no known kind',
      Buffer.from([0, 1, 2, 3, 255, 254, 0, 9, 7, 0, 0, 1]),
      'Export the recording as CSV',
    ],
  ])('says what %s is and what to do', async (kind, buffer, advice) => {
    const { page, complaints, close } = await openPage(browser);
    const panel = await toTrials(page);
    await choose(page, { name: 'thing.bin', mimeType: '', buffer });
    await expect.poll(() => readText(panel), SLOW).toContain(`thing.bin is ${kind}.`);
    expect(await readText(panel)).toContain(advice);
    await panel.getByRole('button', { name: 'Put this file aside' }).click();
    await expect.poll(() => readText(panel)).not.toContain('thing.bin');
    expect(complaints).toEqual([]);
    await close();
  });

  it('stays at hand while a ten-minute WAV is read, and stops when told', async () => {
    const path = join(folder, 'long.wav');
    writeLongWav(path, { seconds: 600, rate: 48_000 });
    const { page, complaints, close } = await openPage(browser);
    const panel = await toTrials(page);
    await expect.poll(() => readText(panel), SLOW).toContain('How well it was taken');
    await choose(page, path);
    await panel
      .getByRole('article', { name: 'long.wav' })
      .getByRole('button', { name: 'Cancel' })
      .click(SLOW);
    await expect.poll(() => readText(panel), SLOW).toContain('Reading was cancelled.');
    const busiest = await busiestTask(browser, { page }, async () => {
      await panel.getByRole('button', { name: 'Read it after all' }).click();
      await panel.getByRole('heading', { name: 'long', level: 3, exact: true }).waitFor(SLOW);
      await expect.poll(() => readText(panel), SLOW).toContain('Sound, one channel: 10 min 0 s at 48 000');
      await panel.getByText('Map of sound over time').waitFor(SLOW);
      // Until it is kept on the device, piece by piece.
      await page.waitForTimeout(6000);
    });
    expect(busiest).toBeLessThan(50);
    expect(complaints).toEqual([]);
    await close();
  }, 180_000);

  it('stays at hand while 300 000 rows are read', async () => {
    const path = join(folder, 'rows.csv');
    writeFileSync(path, manyRows(300_000));
    const { page, complaints, close } = await openPage(browser);
    const panel = await toTrials(page);
    await expect.poll(() => readText(panel), SLOW).toContain('How well it was taken');
    const busiest = await busiestTask(browser, { page }, async () => {
      await choose(page, path);
      await panel.getByRole('heading', { name: 'rows', level: 3, exact: true }).waitFor(SLOW);
      await panel.getByText(/Map of . over time/).waitFor(SLOW);
    });
    expect(busiest).toBeLessThan(50);
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);
});

describe('a run-up', () => {
  it('is followed, mapped and told as what rings', async () => {
    const { page, complaints, close } = await openPage(browser);
    const panel = await toTrials(page);
    await choose(page, text('run-up.csv', runUp()));
    await panel.getByText('Orders against shaft speed').waitFor(SLOW);
    const read = await readText(panel);
    // 10 to 40 turns a second are 600 to 2 400 rpm; the first order rings at 30 Hz, which is 1 800 rpm.
    const [, slow, fast] =
      /The shaft speed moved from ([\d ]+) rpm to ([\d ]+) rpm/.exec(read.replace(/[\u202f\u00a0]/g, ' ')) ??
      [];
    expect(Math.abs(Number(slow?.replace(/ /g, '')) - 600)).toBeLessThan(120);
    expect(Math.abs(Number(fast?.replace(/ /g, '')) - 2400)).toBeLessThan(120);
    const rings = Number(/Something rings at ([\d.]+) Hz/.exec(read)?.[1]);
    expect(Math.abs(rings - 30)).toBeLessThan(1.5);
    // The map is read out by keyboard.
    const map = panel.getByRole('slider', { name: /map of x: read-out over time and frequency/ });
    await map.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => map.getAttribute('aria-valuetext')).toMatch(/s · [\d.]+ Hz · .* × shaft speed/);
    expect(complaints).toEqual([]);
    await close();
  });

  it('keeps the chosen stretch over a reload', async () => {
    const { page, close } = await openPage(browser);
    const panel = await toTrials(page);
    await choose(page, text('run-up.csv', runUp()));
    await panel.getByRole('heading', { name: 'run-up', level: 3, exact: true }).waitFor(SLOW);
    const end = panel.getByRole('slider', { name: 'End of the part' });
    await end.focus();
    await page.keyboard.press('PageDown');
    await expect.poll(() => readText(panel), SLOW).toMatch(/Only 0 s to 18\.0 s is read/);
    await page.waitForTimeout(2500);
    await page.reload();
    await toTrials(page);
    await panel.getByRole('button', { name: /^run-up/ }).click(SLOW);
    await expect.poll(() => readText(panel), SLOW).toMatch(/Only 0 s to 18\.0 s is read/);
    await close();
  });
});

describe('the leaf', () => {
  it.each([
    ['light', WIDE],
    ['light', NARROW],
    ['dark', WIDE],
    ['dark', NARROW],
  ] as const)('has no fault that axe finds and nothing sticks out: %s, %o', async (colorScheme, viewport) => {
    const { page, complaints, close } = await openPage(browser, {
      viewport,
      colorScheme,
      reducedMotion: 'reduce',
    });
    const panel = await toTrials(page);
    await choose(page, text('run-up.csv', runUp()));
    await panel.getByText('Orders against shaft speed').waitFor(SLOW);
    await panel.getByText('Record with this device').click();
    for (const summary of [
      'Levels, and velocity beside a standard',
      'Beside another recording',
      'It was a tap test, with the motor still',
    ])
      await panel.getByText(summary).click();
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

/** 16-bit PCM of a steady hum, written in pieces. */
function writeLongWav(path: string, { seconds, rate }: { seconds: number; rate: number }): void {
  const count = seconds * rate;
  const header = Buffer.alloc(44);
  header.write('RIFF', 0);
  header.writeUInt32LE(36 + 2 * count, 4);
  header.write('WAVEfmt ', 8);
  header.writeUInt32LE(16, 16);
  header.writeUInt16LE(1, 20);
  header.writeUInt16LE(1, 22);
  header.writeUInt32LE(rate, 24);
  header.writeUInt32LE(2 * rate, 28);
  header.writeUInt16LE(2, 32);
  header.writeUInt16LE(16, 34);
  header.write('data', 36);
  header.writeUInt32LE(2 * count, 40);
  const draw = noise();
  const file = openSync(path, 'w');
  writeSync(file, header);
  for (let second = 0; second < seconds; second++) {
    // Whole numbers of periods in a second: the hum goes on without a seam.
    const samples = Int16Array.from({ length: rate }, (_, n) =>
      Math.round(8000 * Math.sin((2 * Math.PI * 55 * n) / rate) + 3000 * draw()),
    );
    writeSync(file, new Uint8Array(samples.buffer));
  }
  closeSync(file);
}

function manyRows(count: number): string {
  const draw = noise();
  const rows = ['time (s),x (m/s²),y (m/s²),z (m/s²)'];
  for (let n = 0; n < count; n++) {
    const x = 0.5 * Math.sin((2 * Math.PI * 55 * n) / 200) + 0.1 * draw();
    rows.push(
      `${(n / 200).toFixed(4)},${x.toFixed(4)},${(0.1 * draw()).toFixed(4)},${(9.81 + 0.1 * draw()).toFixed(4)}`,
    );
  }
  return rows.join('\n');
}
