import { fUpperQuantile } from '../numerics/f-upper-quantile.js';
import { leakage } from './leakage.js';
import type { LineSpectrum } from './line-spectrum.js';

/**
 * Segment lines that are peaks of their own, in order of frequency: above what noise shows with the given
 * probability on any line, no leakage of a stronger one, and set apart from it by a dip to half.
 */
export function peakLines(spectrum: LineSpectrum, falseAlarmRate: number): number[] {
  const kept: number[] = [];
  for (const k of candidates(spectrum, falseAlarmRate)) if (stands(spectrum, kept, k)) kept.push(k);
  return kept.sort((a, b) => a - b);
}

/** Lines higher than both neighbours and than noise would be, highest first. */
function candidates(spectrum: LineSpectrum, falseAlarmRate: number): number[] {
  const { floor, floorDegrees, averages, first, last, padding } = spectrum;
  const power = (k: number): number => spectrum.power[k * padding] ?? 0;
  const probability = falseAlarmRate / Math.max(1, last - first + 1);
  const known = new Map<number, number>();
  const threshold = (degrees: number): number => {
    const key = Math.round(8 * Math.log2(degrees));
    const value = known.get(key) ?? fUpperQuantile(probability, [2 * averages, 2 ** (key / 8)]);
    known.set(key, value);
    return value;
  };
  const found: number[] = [];
  for (let k = first; k <= last; k++) {
    const value = power(k);
    const noise = floor[k] ?? 0;
    if (value <= noise || value < power(k - 1) || value <= power(k + 1)) continue;
    if (value > threshold(floorDegrees[k] ?? 1) * noise) found.push(k);
  }
  return found.sort((a, b) => power(b) - power(a));
}

/** Whether line k is more than the leakage or the skirt of the stronger ones. */
function stands(spectrum: LineSpectrum, stronger: readonly number[], k: number): boolean {
  const { power, padding, coefficients } = spectrum;
  const value = power[k * padding] ?? 0;
  return stronger.every((other) => {
    if (Math.abs(other - k) <= coefficients.length) return false;
    // Twice the amplitude: 6 dB for where between the lines the stronger one really lies.
    if (value < 4 * leakage(spectrum, other, k)) return false;
    return lowestBetween(power, k * padding, other * padding) < value / 2;
  });
}

function lowestBetween(power: Float64Array, a: number, b: number): number {
  let lowest = Infinity;
  for (let k = Math.min(a, b) + 1; k < Math.max(a, b); k++) lowest = Math.min(lowest, power[k] ?? 0);
  return lowest;
}
