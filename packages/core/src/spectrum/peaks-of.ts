import { interpolatePeak } from './interpolate-peak.js';
import type { LineSpectrum } from './line-spectrum.js';
import { magnitudeError } from './magnitude-error.js';
import { peakLines } from './peak-lines.js';
import type { Peak, WindowName } from './types.js';
import { windowResponse } from './window-response.js';

/** The peaks of a spectrum that was made already; what {@link findPeaks} says of them holds. */
export function peaksOf(
  spectrum: LineSpectrum,
  { falseAlarmRate, window = 'hann' }: { readonly falseAlarmRate: number; readonly window?: WindowName },
): Peak[] {
  return peakLines(spectrum, falseAlarmRate).map((k) => describePeak(spectrum, window, k));
}

function describePeak(spectrum: LineSpectrum, window: WindowName, k: number): Peak {
  const { floor, amplitudeAverages, frequencyAverages, resolution, segmentLength, coefficients } = spectrum;
  const noise = floor[k] ?? 0;
  const powerOn = (line: number): number => spectrum.power[line * spectrum.padding] ?? 0;
  const magnitudes = [k - 1, k, k + 1].map((line) => Math.sqrt(Math.max(powerOn(line) - noise, 0)));
  // The two lines of the rectangular window are not the antisymmetric pair that frequencyAverages is for.
  const averages = window === 'rectangular' ? amplitudeAverages : frequencyAverages;
  const { offset, error } = interpolatePeak(magnitudes, { window, coefficients, noise, averages });
  const response = windowResponse(coefficients, segmentLength, offset) / Math.SQRT2;
  const magnitude = magnitudes[1] ?? 0;
  return {
    frequency: (k + offset) * resolution,
    frequencyError: error * resolution,
    amplitude: magnitude / response,
    amplitudeError: magnitudeError(magnitude, { noise, averages: amplitudeAverages }) / response,
    floor: Math.sqrt(2 * noise),
    prominence: 10 * Math.log10(powerOn(k) / noise),
  };
}
