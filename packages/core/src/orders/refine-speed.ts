import type { LineSpectrum } from '../spectrum/line-spectrum.js';
import { foldedFrequency } from './folded-frequency.js';
import { isReachable } from './is-reachable.js';
import { powerAt } from './power-at.js';
import { readLine } from './read-line.js';

export interface RefineOptions {
  /** rad/s */
  readonly speed: number;
  readonly orders: readonly number[];
  readonly tolerance: number;
  readonly falseAlarmRate: number;
  readonly sampleRate: number;
}

export interface RefinedSpeed {
  /** rad/s */
  readonly speed: number;
  readonly from: 'recording' | 'given';
  /** Chance that noise alone counts as seen, for one order on one channel at one speed. */
  readonly probability: number;
}

/**
 * The speed within the tolerance at which the orders stand highest above the noise, if any of them is seen there.
 *
 * Every order on every channel adds K (x − 1 − ln x), weighed by how often such an order shows, x its power over the floor and K the averages: the logarithm of how
 * much likelier a line makes that power than noise does. Trying many speeds makes noise look better, so the probability
 * of a false sighting is shared among the lines that the search can reach.
 */
export function refineSpeed(spectra: readonly LineSpectrum[], options: RefineOptions): RefinedSpeed {
  const { speed, orders, tolerance, falseAlarmRate } = options;
  const finest = Math.min(...spectra.map((spectrum) => spectrum.resolution));
  const highest = Math.max(...orders, 0);
  const reach = (tolerance * highest * speed) / (2 * Math.PI * finest);
  const places = Math.max(1, orders.length * spectra.length * Math.max(1, Math.ceil(2 * reach)));
  const probability = falseAlarmRate / places;
  if (spectra.length === 0 || highest === 0) return { speed, from: 'given', probability };
  const steps = Math.ceil(8 * reach);
  let best = { speed, score: -Infinity };
  for (let i = -steps; i <= steps; i++) {
    const trial = speed * (1 + (steps === 0 ? 0 : (tolerance * i) / steps));
    const score = familyScore(spectra, trial, options);
    if (score > best.score) best = { speed: trial, score };
  }
  const seen = orders.some((order) =>
    spectra.some((spectrum) => isSeen(spectrum, order, { ...options, probability, speed: best.speed })),
  );
  return seen ? { speed: best.speed, from: 'recording', probability } : { speed, from: 'given', probability };
}

function familyScore(spectra: readonly LineSpectrum[], speed: number, options: RefineOptions): number {
  let score = 0;
  for (const spectrum of spectra) {
    const counted: number[] = [];
    for (const order of byTrust(options.orders)) {
      const actual = (order * speed) / (2 * Math.PI);
      const frequency = foldedFrequency(actual, options.sampleRate);
      // A line speaks once, for the likeliest order that it could be.
      if (counted.some((other) => Math.abs(other - frequency) < 2 * spectrum.resolution)) continue;
      if (!isReachable(spectrum, frequency)) continue;
      counted.push(frequency);
      const trust = trustOf(order) * (actual > options.sampleRate / 2 ? 0.1 : 1);
      score += trust * evidenceAt(spectrum, powerAt(spectrum, frequency), floorOf(spectrum, order, options));
    }
  }
  return score;
}

function evidenceAt({ averages }: LineSpectrum, power: number, noise: number): number {
  const ratio = noise > 0 ? power / noise : 0;
  return ratio > 1 ? averages * (ratio - 1 - Math.log(ratio)) : 0;
}

/** The floor where the speed that was given puts the order: one for the whole search, lest a step of the floor draw it. */
function floorOf(spectrum: LineSpectrum, order: number, { speed, sampleRate }: RefineOptions): number {
  const frequency = foldedFrequency((order * speed) / (2 * Math.PI), sampleRate);
  const line = Math.round(frequency / spectrum.resolution);
  return spectrum.floor[Math.max(spectrum.first, Math.min(spectrum.last, line))] ?? 0;
}

function byTrust(orders: readonly number[]): number[] {
  return [...orders].sort((a, b) => trustOf(b) - trustOf(a) || a - b);
}

/** The first two orders show most often; half orders are rare, and near whole ones when speeds are low. */
function trustOf(order: number): number {
  if (!Number.isInteger(order)) return 0.1;
  return order <= 2 ? 1 : 0.5;
}

function isSeen(
  spectrum: LineSpectrum,
  order: number,
  { speed, sampleRate, probability }: { speed: number; sampleRate: number; probability: number },
): boolean {
  const frequency = foldedFrequency((order * speed) / (2 * Math.PI), sampleRate);
  return readLine(spectrum, frequency, probability).seen;
}
