import type { Evidence } from './evidence.js';
import { shareOf } from './share-of.js';
import type { FixedFrequency } from './trials-types.js';

/** Least share of the strongest line. */
const LEAST = 0.1;

/**
 * Lines that no order explains and that two trials or more show at one frequency though their speeds differ by 5 %.
 */
export function findFixedLines(all: readonly Evidence[]): FixedFrequency[] {
  const lines = all.flatMap((evidence, trial) =>
    evidence.strangers
      .filter(({ amplitude, unit }) => shareOf(evidence, amplitude, unit) > LEAST)
      .map(({ frequency }) => ({ frequency, trial, speed: evidence.speed })),
  );
  const found: FixedFrequency[] = [];
  for (const { frequency } of lines) {
    const reach = Math.max(0.02 * frequency, 0.5);
    if (found.some((other) => Math.abs(other.frequency - frequency) < reach)) continue;
    const same = lines.filter((other) => Math.abs(other.frequency - frequency) < reach);
    const speeds = same.map(({ speed }) => speed);
    if (Math.max(...speeds) < 1.05 * Math.min(...speeds)) continue;
    const mean = same.reduce((sum, other) => sum + other.frequency, 0) / same.length;
    found.push({
      frequency: mean,
      trials: [...new Set(same.map(({ trial }) => trial))].sort((a, b) => a - b),
    });
  }
  return found.sort((a, b) => b.trials.length - a.trials.length);
}
