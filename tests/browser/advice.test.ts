import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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

/** Work in the worker on a loaded machine. */
const PATIENT = { timeout: 40_000 };

async function leaf(page: Page, name: string): Promise<Locator> {
  await page.getByRole('tab', { name, exact: true }).click();
  const panel = page.getByRole('tabpanel', { name, exact: true });
  await panel.waitFor();
  return panel;
}

async function write(panel: Locator, label: string, text: string): Promise<void> {
  const field = panel.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

/** Does the rung of that name, wherever it stands, and answers it; by keyboard. */
async function climb(section: Locator, rung: string, outcome: string): Promise<void> {
  if (!(await section.getByRole('heading', { name: rung }).isVisible())) {
    const others = section.getByRole('button', { name: rung });
    if (!(await others.isVisible())) await section.getByText('Do another one first').press('Enter');
    await others.press('Enter');
    await section.getByRole('heading', { name: rung }).waitFor();
  }
  await section.getByRole('button', { name: outcome, exact: true }).press('Enter');
}

describe.each([
  ['wide', WIDE],
  ['narrow', NARROW],
] as const)('advice, %s', (_, viewport) => {
  it('balances the propeller: four amplitudes by hand give 16 g at 20°, and the check is judged', async () => {
    const { page, complaints, close } = await openPage(browser, { viewport });
    const panel = await leaf(page, 'Trials');
    const section = panel.getByRole('region', { name: 'Balance the propeller' });
    await section.getByText('The runs, step by step').click();
    await write(section, 'Trial mass, as weighed', '10');
    await expect.poll(() => readText(section)).toContain('never trust tape or putty alone');
    const source = section.getByRole('combobox', { name: 'Amplitude as found: from a trial' });
    await source.selectOption({ label: 'Bath, 3 700 rpm, motion' });
    await expect.poll(() => readText(section), PATIENT).toContain('all runs must have one speed');
    expect(await readText(section)).toMatch(/Channel \w+: 0\.\d+ m\/s² ± /);
    // Derived: 10 g alone shakes 5, 16 g opposite 20° shake the 8 as found; the rest by the cosine rule.
    await write(section, 'Amplitude as found', '8');
    await write(section, 'Amplitude with the mass at 0°', '3,718143');
    await write(section, 'Amplitude with the mass at 120°', '10.143562');
    await write(section, 'Amplitude with the mass at 240°', '12,259019');
    await expect.poll(() => readText(section)).toContain('Put on 16 g at 20.0° clockwise from blade 1');
    // Derived: 16 cos 20° and 16 sin 20° on the blades at 0° and 90°.
    expect(await readText(section)).toContain('15 g on blade 1 and 5.47 g on blade 2');
    await section.getByRole('img', { name: /Four circles that meet at 20\.0°/ }).waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    await write(section, 'Amplitude with the correction', '0,2');
    await expect.poll(() => readText(section)).toContain('as the readings let expect');
    expect(await sidewaysOverflow(page)).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => readText(section)).not.toContain('as the readings let expect');
    expect(complaints).toEqual([]);
    await close();
  });

  it('adopts a remedy with one press, opens it as a layout, and undo takes it away', async () => {
    const { page, complaints, close } = await openPage(browser, { viewport });
    const panel = await leaf(page, 'Side by side');
    const section = panel.getByRole('region', { name: 'What would change it most?' });
    await expect.poll(() => readText(section), PATIENT).toContain('gains most for what it takes');
    expect(await readText(section)).toContain('The least work that leaves it clear');
    expect(await readText(section)).toContain('What comes next:');
    const layouts = page.getByRole('combobox', { name: /layout/i }).first();
    const before = await layouts.locator('option').count();
    await section.getByRole('button', { name: /^Adopt as a new layout: Shaft of 6/ }).click();
    await expect.poll(() => layouts.locator('option').count()).toBe(before + 1);
    await page.getByText('is now a layout of its own, and open. Undo takes it away.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => layouts.locator('option').count()).toBe(before);
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });

  it('tells before from after: a fifth of the unbalance is left, and what folds is not judged', async () => {
    const { page, complaints, close } = await openPage(browser, { viewport });
    const panel = await leaf(page, 'Side by side');
    const section = panel.getByRole('region', { name: 'Did the change help?' });
    expect(await readText(section)).toContain('Choose a trial before the change');
    const choose = (label: string, name: string) =>
      section.getByRole('combobox', { name: label }).selectOption({ label: name });
    await choose('Trial before the change', 'Bath, 3 700 rpm, motion');
    await choose('Trial after the change', 'Bath, 3 700 rpm, motion, propeller balanced');
    await expect.poll(() => readText(section), PATIENT).toContain('Order 1 fell to');
    expect(await readText(section)).toContain('What this must be taken with');
    await choose('Trial after the change', 'Bath, 1 800 rpm, motion');
    await expect
      .poll(() => readText(section), PATIENT)
      .toContain('No difference shown: these two cannot be compared');
    expect(await readText(section)).toContain('Repeat one run at the other’s speed');
    await choose('Trial after the change', 'Bath, 3 700 rpm, sound');
    await expect.poll(() => readText(section), PATIENT).toContain('It could not be worked out');
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('advice', () => {
  it('shows what the measures spread on each row, and has no accessibility fault', async () => {
    const { page, complaints, close } = await openPage(browser);
    const panel = await leaf(page, 'Side by side');
    await expect.poll(() => readText(panel), PATIENT).toContain('With measures off by as much as stated');
    expect(await readText(panel)).toContain('no difference shown');
    expect(await accessibilityFaults(page)).toEqual([]);
    await panel.getByText('How far the measures may be off').click();
    await write(panel, 'Angles ±', '0');
    await expect.poll(() => panel.getByRole('progressbar').count()).toBeGreaterThan(0);
    await panel.getByRole('button', { name: 'Cancel' }).first().click();
    await panel.getByRole('button', { name: 'Work it out after all' }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  });

  it('climbs the ladder by keyboard to a conclusion with reasons and fixes, kept over a reload', async () => {
    const { page, complaints, close } = await openPage(browser);
    const panel = await leaf(page, 'Trials');
    const section = panel.getByRole('region', { name: 'What to try next, in order' });
    await section.getByRole('button', { name: 'Begin without recordings' }).press('Enter');
    await expect.poll(() => readText(section)).toContain('What came of it?');
    expect(await readText(section)).toMatch(/battery|Hold the model fast/);
    expect(await accessibilityFaults(page)).toEqual([]);
    await climb(section, 'Take the propeller off', 'The shake goes');
    await expect.poll(() => readText(section)).toContain('Take the propeller off: the shake goes.');
    await climb(section, 'Turn the propeller on the shaft', 'It changes clearly');
    await expect.poll(() => readText(section)).toContain('out of balance');
    await page.waitForTimeout(1500);
    await page.reload();
    await leaf(page, 'Trials');
    await expect.poll(() => readText(section)).toContain('Take the propeller off: the shake goes.');
    expect(complaints).toEqual([]);
    await close();
  });

  it('fits the line to a run-up and keeps it as built beside the line as designed', async () => {
    const { page, complaints, close } = await openPage(browser, { colorScheme: 'dark' });
    const panel = await leaf(page, 'Trials');
    const section = panel.getByRole('region', { name: 'Fit the line to what was measured' });
    await section.getByText('The resonances that were measured').click();
    await section.getByRole('button', { name: 'Add a run-up' }).click();
    await write(section, 'Loudest at', '5 200');
    await expect
      .poll(() => readText(section), PATIENT)
      .toMatch(/first whirl moves down from 7 640 rpm to 5 [12]\d\d rpm/);
    expect(await accessibilityFaults(page)).toEqual([]);
    await section.getByRole('button', { name: 'Keep the line as built' }).click();
    const layouts = page.getByRole('combobox', { name: /layout/i }).first();
    await expect
      .poll(() => layouts.locator('option').allTextContents())
      .toContain('Port line, one joint, 5 mm, as built');
    expect(complaints).toEqual([]);
    await close();
  });
});
