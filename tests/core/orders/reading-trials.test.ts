import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { binomialBounds } from '../../support/binomial.js';
import { summarise, summaryText, type Share } from '../../support/reading-summary.js';
import { makeTrial, readTrial, type Reading } from '../../support/reading-trials.js';
import published from '../../reference/orders/reading-trials.json' with { type: 'json' };

/*
 * `pnpm report:reading` reads all trials and writes docs/reading-trials.md with the figures behind it; otherwise a part of
 * them is read and held against those figures.
 */
const ALL = 1200;
const PART = 100;
const reporting = process.env['STERNLINE_REPORT'] === 'reading';
const fromRoot = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

function readTrials(count: number): Reading[] {
  return Array.from({ length: count }, (_, i) => readTrial(makeTrial(i * (ALL / count))));
}

describe.runIf(reporting)('the report', () => {
  it('is written', { timeout: 1_200_000 }, () => {
    const summary = summarise(readTrials(ALL));
    writeFileSync(fromRoot('docs/reading-trials.md'), summaryText(summary));
    const json = JSON.stringify(
      summary,
      (_, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(6)) : value),
      1,
    );
    writeFileSync(fromRoot('tests/reference/orders/reading-trials.json'), `${json}\n`);
    expect(summary.trials).toBe(ALL);
  });
});

describe.skipIf(reporting)('reading as published', () => {
  const summary = summarise(readTrials(PART));

  /** Within four standard deviations of the binomial distribution. */
  const expectShare = (found: Share, share: number): void => {
    const [least, most] = binomialBounds(found.count, share);
    expect(found.share * found.count).toBeGreaterThanOrEqual(least - 1);
    expect(found.share * found.count).toBeLessThanOrEqual(most + 1);
  };

  it('finds the speed as often', () => {
    for (const [name, found] of Object.entries(summary.speed))
      expectShare(found, published.speed[name as keyof typeof published.speed].share);
  });

  it('finds strong orders as often, and raises no more false alarms', () => {
    expectShare(summary.ordersFound, published.ordersFound.share);
    expectShare(summary.speedFromNothing, published.speedFromNothing.share);
    expectShare(summary.findingFromNothing, published.findingFromNothing.share);
  });

  it('covers the amplitudes as often', () => {
    for (const [name, { count, withinTwo }] of Object.entries(summary.amplitude))
      expectShare(
        { count, share: withinTwo },
        published.amplitude[name as keyof typeof published.amplitude].withinTwo,
      );
  });

  /** Six bins at once: 2.64 standard deviations leave one of them outside by chance in 20 reports (Bonferroni). */
  it('publishes a calibration within 0.05, or what chance allows, in every bin of 40 trials or more', () => {
    for (const { count, stated, share } of published.calibration.filter((bin) => bin.count >= 40)) {
      const chance = 2.64 * Math.sqrt((stated * (1 - stated)) / count);
      expect(Math.abs(share - stated)).toBeLessThan(Math.max(0.05, chance));
    }
    expect(published.trials).toBeGreaterThanOrEqual(1000);
  });
});
