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
    amplitudeError:
      Math.SQRT2 *
      Math.hypot(
        magnitudeError(magnitude, { noise, averages: spectrum.amplitudeAverages }),
        smear(spectrum, frequency, magnitude),
      ),
    floor: Math.sqrt(2 * noise),
    seen: power > threshold * noise && power > 0 && !isFlank(spectrum, frequency, power),
  };
}

/** Lines on either side whose power a steady line keeps: the main lobe of the Hann window. */
const LOBE = 2;
/** Σ |W(k)|² over the lines a quarter apart within that, in lines: 1.5 but for side lobes. */
const LOBE_AREA = 1.5;

/**
 * By how much a line is less high than its area lets expect, because its frequency moved: root of area less height, where the noise
 * does not explain it.
 */
function smear(spectrum: LineSpectrum, frequency: number, magnitude: number): number {
  const { resolution, padding, floor } = spectrum;
  const centre = Math.round((frequency / resolution) * padding);
  const noise = floor[Math.round(frequency / resolution)] ?? 0;
  let area = 0;
  for (let k = centre - LOBE * padding; k <= centre + LOBE * padding; k++)
    area += ((spectrum.power[k] ?? 0) - noise) / padding;
  // The area gathers noise of four lines, which its own scatter must not be taken for a smear.
  const chance = (noise + Math.sqrt(noise) * magnitude) / Math.sqrt(spectrum.averages);
  return Math.max(0, Math.sqrt(Math.max(0, area / LOBE_AREA - chance)) - magnitude);
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
