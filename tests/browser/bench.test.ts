import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser, NARROW, openPage, readText, sidewaysOverflow } from '../support/browser/open-page.js';

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

async function enter(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

describe('measuring in the hull', () => {
  it('turns measured points into a joint angle, uses it in one press, and takes it back by undo', async () => {
    const { page, complaints, close } = await openPage(browser);
    const points = page.getByRole('region', { name: 'Where do motor and tube lie?' });
    await expect.poll(() => readText(points)).toContain('stands at 14.0°');
    await points.getByText('The measured points').click();
    // 73 mm of fall over 292 becomes 83: atan(83 / 292) is 15.9°.
    await enter(points.getByRole('textbox', { name: /^2: height above the keel line\. Up/ }).nth(1), '0');
    await expect.poll(() => readText(points)).toMatch(/stands at 15\.9° .*as drawn has 14\.0°/);
    await points.getByRole('button', { name: 'Use these angles' }).click();
    await expect.poll(() => readText(points)).toContain('as drawn has 15.9°');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => readText(points)).toContain('as drawn has 14.0°');
    expect(complaints).toEqual([]);
    await close();
  });

  it('says what to put under the motor, and stays open while the readings are typed', async () => {
    const { page, complaints, close } = await openPage(browser, { viewport: NARROW });
    const shims = page.getByRole('region', { name: 'What goes under the motor’s feet?' });
    await shims.getByText('The readings', { exact: true }).click();
    const box = (name: string, which = 0) => shims.getByRole('textbox', { name, exact: true }).nth(which);
    await enter(box('Top'), '0,3');
    await enter(box('Port'), '0');
    for (const side of ['Top', 'Bottom', 'Port', 'Starboard']) await enter(box(side, 1), '1');
    await enter(box('Diameter across the face'), '20');
    await enter(box('To the feet by the coupling'), '30');
    await enter(box('To the far feet'), '60');
    // A level motor that stands 0.3 mm high goes down by that much at every foot.
    await expect
      .poll(() => readText(shims))
      .toMatch(/By the coupling: lower by 0\.3.mm, sideways as it is\. At the far feet: lower by 0\.3.mm/);
    await enter(box('One reading may be off by'), '0.03');
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('the figures of the leaves', () => {
  it('reads the turn out by keyboard, with the yokes at that angle', async () => {
    const { page, close } = await openPage(browser);
    await leaf(page, 'Turning');
    const slider = page.getByRole('slider', { name: 'Angle of the motor shaft' });
    await slider.focus();
    await page.keyboard.press('Shift+ArrowRight');
    await expect
      .poll(() => page.getByRole('img', { name: /^The yokes looking aft/ }).getAttribute('aria-label'))
      .toBe('The yokes looking aft, with the motor shaft at 15°');
    await close();
  });

  it('studies the whirl in its worker: bounds, map and the room in the tube', async () => {
    const { page, complaints, close } = await openPage(browser, { viewport: NARROW });
    await leaf(page, 'Whirl');
    const panel = page.getByRole('tabpanel', { name: 'Whirl' });
    await expect.poll(() => readText(panel), { timeout: 20_000 }).toContain('largest unknown');
    const map = page.getByRole('slider', { name: 'Shaft speed on the map' });
    await map.focus();
    await page.keyboard.press('End');
    await expect.poll(() => map.getAttribute('aria-valuetext')).toMatch(/1 forward 1\d\d Hz/);
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  });
});

describe('the work sheet', () => {
  it.each(['light', 'dark'] as const)('prints on two pages, %s', async (colorScheme) => {
    const { page, complaints, close } = await openPage(browser, { colorScheme });
    await leaf(page, 'Work sheet');
    const panel = page.getByRole('tabpanel', { name: 'Work sheet' });
    await expect.poll(() => readText(panel)).toContain('Bulkhead at 150');
    expect(await readText(panel)).toContain('Disconnect the battery before touching anything');
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)).toHaveLength(2);
    await page.emulateMedia({ media: 'print' });
    const ink = await panel.evaluate((element) => getComputedStyle(element).color);
    // Dark on white, whatever the screen wears: the ink of the light scheme, #13233d.
    expect(ink).toBe('rgb(19, 35, 61)');
    expect(complaints).toEqual([]);
    await close();
  });
});
