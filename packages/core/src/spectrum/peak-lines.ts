import { fUpperQuantile } from '../numerics/f-upper-quantile.js';
import { leakageShare } from './leakage-share.js';
import type { LineSpectrum } from './line-spectrum.js';

/**
 * No more peaks than this are told of a spectrum, the highest: a machine shows some hundreds at most, and a sound looped
 * each second would else show every line that there is.
 */
const MOST = 2000;

/**
 * Segment lines that are peaks of their own, in order of frequency: above what noise shows with the given
 * probability on any line, no leakage of a stronger one, and set apart from it by a dip to half.
 */
export function peakLines(spectrum: LineSpectrum, falseAlarmRate: number): number[] {
  const kept: number[] = [];
  const isKept = new Uint8Array(spectrum.floor.length);
  const leaks = leakageBound(spectrum);
  for (const k of candidates(spectrum, falseAlarmRate)) {
    if (!isApart(spectrum, isKept, k) || kept.some((other) => leaks(other, k))) continue;
    kept.push(k);
    isKept[k] = 1;
    if (kept.length === MOST) break;
  }
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

/** Whether line k is no part of the main lobe or of the skirt of a stronger one that was kept. */
function isApart(spectrum: LineSpectrum, isKept: Uint8Array, k: number): boolean {
  const { length } = spectrum.coefficients;
  for (let near = k - length; near <= k + length; near++) if (isKept[near] === 1) return false;
  return dips(spectrum, isKept, { k, step: -1 }) && dips(spectrum, isKept, { k, step: 1 });
}

/**
 * Whether the power falls to half on the way from line k to the next kept one on that side. Those beyond it need no look: the way to
 * them leads through the same dip.
 */
function dips(
  { power, padding }: LineSpectrum,
  isKept: Uint8Array,
  { k, step }: { readonly k: number; readonly step: 1 | -1 },
): boolean {
  const half = (power[k * padding] ?? 0) / 2;
  for (let at = k * padding + step; at > 0 && at < power.length; at += step) {
    if ((power[at] ?? 0) < half) return true;
    if (at % padding === 0 && isKept[at / padding] === 1) return false;
  }
  return true;
}

/** Tells whether line k may be leakage of another; what leaks over a distance is worked out once. */
function leakageBound(spectrum: LineSpectrum): (other: number, k: number) => boolean {
  const { power, padding } = spectrum;
  const shares = new Float64Array(spectrum.floor.length).fill(NaN);
  return (other, k) => {
    const distance = Math.abs(other - k);
    let share = shares[distance] ?? NaN;
    if (Number.isNaN(share)) shares[distance] = share = leakageShare(spectrum, distance);
    // Twice the amplitude: 6 dB for where between the lines the stronger one really lies.
    return (power[k * padding] ?? 0) < 4 * share * (power[other * padding] ?? 0);
  };
}
