import { fUpperQuantile } from '../numerics/f-upper-quantile.js';
import { leakage } from '../spectrum/leakage.js';
import type { LineSpectrum } from '../spectrum/line-spectrum.js';
import { magnitudeError } from '../spectrum/magnitude-error.js';
import { isReachable } from './is-reachable.js';
import { powerAt } from './power-at.js';

export interface LineReading {
  readonly amplitude: number;
  readonly amplitudeError: number;
  readonly floor: number;
  readonly seen: boolean;
}

/**
 * The line that a spectrum shows at one apparent frequency (Hz).
 *
 * @param probability - that noise alone would count as seen here
 */
export function readLine(spectrum: LineSpectrum, frequency: number, probability: number): LineReading {
  if (!isReachable(spectrum, frequency)) return { amplitude: 0, amplitudeError: 0, floor: 0, seen: false };
  const line = Math.round(frequency / spectrum.resolution);
  const noise = spectrum.floor[line] ?? 0;
  const power = powerAt(spectrum, frequency);
  const magnitude = Math.sqrt(Math.max(power - noise, 0));
  const threshold = fUpperQuantile(probability, [2 * spectrum.averages, spectrum.floorDegrees[line] ?? 1]);
  return {
    amplitude: Math.SQRT2 * magnitude,
    amplitudeError: Math.SQRT2 * magnitudeError(magnitude, { noise, averages: spectrum.amplitudeAverages }),
    floor: Math.sqrt(2 * noise),
    seen: power > threshold * noise && power > 0 && !isFlank(spectrum, frequency, power),
  };
}

/** Whether the power here is that of a stronger line beside it, or what one further off leaks. */
function isFlank(spectrum: LineSpectrum, frequency: number, power: number): boolean {
  const { resolution, padding, first, last } = spectrum;
  const place = frequency / resolution;
  for (let quarter = -2 * padding; quarter <= 2 * padding; quarter++) {
    const beside = spectrum.power[Math.round(place * padding) + quarter] ?? 0;
    if (Math.abs(quarter) > padding / 2 && beside > 2 * power) return true;
  }
  for (let k = first; k <= last; k++) {
    const other = spectrum.power[k * padding] ?? 0;
    const distance = Math.abs(k - place);
    // Which spares the sines: what the Hann window leaks stays below 2 / distance⁶ of the peak's power.
    if (distance <= 2 || other < 4 * power || 8 * other < power * distance ** 6) continue;
    if (power < 4 * leakage(spectrum, k, place)) return true;
  }
  return false;
}
