import { refusal } from '../internal/refuse.js';
import { numberText } from '../internal/number-text.js';
import type { Recording } from '../recording/types.js';
import { averagePower } from './average-power.js';
import type { FrequencyBand, MachineClass, Severity, SeverityOptions } from './types.js';

/** m/s rms at A/B, B/C and C/D: ISO 10816-1:1995, annex B (from memory), which ISO 20816-1 carries on. */
const ZONES: Readonly<Record<MachineClass, readonly [number, number, number]>> = {
  I: [0.00071, 0.0018, 0.0045],
  II: [0.00112, 0.0028, 0.0071],
  III: [0.0018, 0.0045, 0.0112],
  IV: [0.0028, 0.0071, 0.018],
};

/** Hz, the band of the standard. */
const LOWEST = 10;
const HIGHEST = 1000;

/** Share of half the rate up to which a phone's own filter leaves the amplitude alone; common practice. */
const USABLE = 0.8;

/**
 * Broadband vibration velocity of a motion recording beside the severity zones of ISO 20816-1 and 10816-1, as context.
 *
 * v² = Σ S(f) Δf / (2πf)², f from 10 to 1000 Hz, S the density of acceleration
 *
 * @param recording - acceleration on one axis or more, half a second or more
 * @param options - `machineClass`, by default I: machines up to 15 kW
 * @returns velocity in m/s rms of the axis that moves most, the zone where the rate permits one, and the scope in sentences
 * @throws RangeError for a class that is not one of the four, or a recording without acceleration, shorter than half a second,
 *   or sampled below 25 Hz
 * @remarks The zones were drawn for industrial machines on their bearings, from broadband readings of 10 to 1000 Hz; nothing was
 *   ever calibrated on a model. Few phones sample fast enough for the band: then the velocity is a least value and no zone is
 *   given. Compare with the model's own earlier trials first.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 8000 }, (_, n) => 1.41 * Math.sqrt(2) * Math.sin(2 * Math.PI * 50 * n / 4000));
 * const recording = { name: 'bench', sampleRate: 4000, channels: [{ name: 'x', unit: 'm/s²', samples }],
 *   sampling: { gaps: [], clipping: [] } };
 * const { velocity, zone } = severity(recording);
 * velocity // → 0.0045
 * zone // → 'C'
 * ```
 * @see ISO 20816-1:2016, Mechanical vibration: measurement and evaluation of machine vibration, general guidelines
 */
export function severity(recording: Recording, { machineClass = 'I' }: SeverityOptions = {}): Severity {
  if (!Object.hasOwn(ZONES, machineClass))
    throw refusal('severity: machineClass', `one of ${Object.keys(ZONES).join(', ')}`, machineClass);
  const { sampleRate, sampling, channels } = recording;
  const axes = channels.filter(({ unit }) => unit === 'm/s²');
  if (axes.length === 0) throw refusal('severity: recording', 'one of acceleration', 'none');
  const half = sampleRate / 2;
  if (half < 1.25 * LOWEST) throw refusal('severity: recording', 'sampled at 25 Hz or more', sampleRate);
  const band = { from: LOWEST, to: Math.min(HIGHEST, half) };
  const moves = axes.map(({ name, samples }) => ({
    channel: name,
    velocity: velocityOf(samples, { band, recording }),
  }));
  const most = moves.reduce((a, b) => (b.velocity > a.velocity ? b : a));
  const limits = ZONES[machineClass];
  const covered = USABLE * half >= HIGHEST;
  const clipped = sampling.clipping.length > 0;
  return {
    ...most,
    band,
    zone: covered && !clipped ? zoneOf(most.velocity, limits) : undefined,
    limits,
    scope: scopeOf({ band, half, clipped, covered }),
  };
}

function velocityOf(
  samples: Float64Array,
  { band, recording: { sampleRate, sampling } }: { band: FrequencyBand; recording: Recording },
): number {
  if (samples.length < sampleRate / 2)
    throw refusal('severity: recording', 'half a second long or more', samples.length / sampleRate);
  // Lines of half a hertz where there are two seconds for them: 1/f² must not change over the width of a line.
  const segmentLength = Math.min(samples.length, Math.ceil(2 * sampleRate));
  const options = { segmentLength, gaps: sampling.gaps, caller: 'severity', mostSegments: 500 };
  const { power, sumOfSquares } = averagePower(samples, options);
  let square = 0;
  power.forEach((value, k) => {
    const frequency = (k * sampleRate) / segmentLength;
    if (frequency < band.from || frequency > band.to) return;
    const density = (2 * value) / (sampleRate * sumOfSquares);
    square += (density * sampleRate) / segmentLength / (2 * Math.PI * frequency) ** 2;
  });
  return Math.sqrt(square);
}

function zoneOf(velocity: number, [good, fair, poor]: Severity['limits']): 'A' | 'B' | 'C' | 'D' {
  if (velocity <= good) return 'A';
  if (velocity <= fair) return 'B';
  return velocity <= poor ? 'C' : 'D';
}

function scopeOf(seen: { band: FrequencyBand; half: number; clipped: boolean; covered: boolean }): string[] {
  return [
    'The zones were drawn for industrial machines of kilowatts on firm bearings, not for models: take them as context, and compare with this model’s own earlier trials first.',
    ...(seen.covered
      ? []
      : [
          `The zones are for 10 to 1\u202f000 Hz; this recording shows 10 to ${numberText(seen.band.to)} Hz at most, so the velocity is a least value and no zone is given.`,
        ]),
    ...(seen.clipped
      ? ['The recording is clipped, so the true velocity is higher and no zone is given.']
      : []),
  ];
}
