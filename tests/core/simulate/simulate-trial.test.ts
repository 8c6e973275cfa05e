import { describe, expect, it } from 'vitest';
import { exampleLine, simulateTrial, type SimulationOptions } from '@sternline/core';

const line = exampleLine();
const options: SimulationOptions = { speed: 2 * Math.PI * 20, duration: 10, sampleRate: 400, seed: 5 };

/** Amplitude of a sine in samples, by the defining sum of the discrete Fourier transform. */
function amplitudeAt(samples: Float64Array, cyclesPerSample: number): number {
  let re = 0;
  let im = 0;
  samples.forEach((value, i) => {
    re += value * Math.cos(2 * Math.PI * cyclesPerSample * i);
    im += value * Math.sin(2 * Math.PI * cyclesPerSample * i);
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}

describe('simulateTrial', () => {
  it('puts in what it says it puts in', () => {
    const { recording, truth } = simulateTrial(line, { ...options, noise: 0 });
    expect(truth.shaftFrequency).toBeCloseTo(20, 12);
    for (const { order, amplitude } of truth.orders) {
      const read = recording.channels.map(({ samples }) => amplitudeAt(samples, (20 * order) / 400));
      expect(Math.max(...read)).toBeCloseTo(amplitude, 6);
    }
  });

  it('folds what lies above half the rate', () => {
    // 160 Hz at 200 Hz shows at 40 Hz: |f − fs·round(f/fs)|. The blades, at 640 Hz, would show there too.
    const fast = {
      ...options,
      speed: 2 * Math.PI * 160,
      sampleRate: 200,
      noise: 0,
      propeller: 'off' as const,
    };
    const { recording, truth } = simulateTrial(line, fast);
    const read = recording.channels.map(({ samples }) => amplitudeAt(samples, 40 / 200));
    expect(Math.max(...read)).toBeCloseTo(truth.orders[0]!.amplitude, 6);
  });

  it('rests at gravity and carries the noise it is told to', () => {
    const still = simulateTrial(line, { ...options, speed: 0, noise: 0.1, duration: 100 });
    const [x, , z] = still.recording.channels.map(({ samples }) => samples);
    const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(z!)).toBeCloseTo(9.80665, 2);
    // 40 000 draws: the standard deviation is known to 0.1/√80 000 = 0.00035; four of these.
    const deviation = Math.sqrt(mean(x!.map((value) => value ** 2)) - mean(x!) ** 2);
    expect(Math.abs(deviation - 0.1)).toBeLessThan(0.0015);
  });

  it('follows a run-up: the phase is the integral of the speed', () => {
    const runUp = [
      { time: 0, speed: 0 },
      { time: 10, speed: 2 * Math.PI * 40 },
    ];
    const { recording } = simulateTrial(line, { ...options, speed: runUp, noise: 0, propeller: 'off' });
    const samples = recording.channels[1]!.samples;
    // Zero crossings of the first order in the last second: 36 to 40 turns a second, 38 turns, two crossings each.
    let crossings = 0;
    for (let i = 3600; i < 3999; i++) if (samples[i]! * samples[i + 1]! < 0) crossings += 1;
    expect(Math.abs(crossings - 76)).toBeLessThanOrEqual(2);
  });

  it('gives the same trial for the same seed, another for another', () => {
    const first = simulateTrial(line, options).recording.channels[0]!.samples;
    expect(simulateTrial(line, options).recording.channels[0]!.samples).toEqual(first);
    expect(simulateTrial(line, { ...options, seed: 6 }).recording.channels[0]!.samples).not.toEqual(first);
  });

  it('rounds values and stamps, and jitters the stamps, as it is told', () => {
    const trial = simulateTrial(line, { ...options, resolution: 0.1, stampJitter: 0.001, stampStep: 0.001 });
    for (const value of trial.recording.channels[0]!.samples.subarray(0, 200)) {
      expect(Math.abs(value * 10 - Math.round(value * 10))).toBeLessThan(1e-9);
    }
    const spread = trial.stamps.map((stamp, i) => (stamp - i / 400) ** 2);
    const rms = Math.sqrt(spread.reduce((sum, value) => sum + value, 0) / spread.length);
    // √(σ² + step²/12) = 1.0408 ms; 4 000 draws know it to 1.1 %.
    expect(rms).toBeGreaterThan(0.00099);
    expect(rms).toBeLessThan(0.00109);
  });

  it('drops the blades with the propeller', () => {
    const orders = simulateTrial(line, { ...options, propeller: 'off' }).truth.orders.map(
      ({ order }) => order,
    );
    expect(orders).toEqual([1, 2]);
  });

  it('refuses figures out of their domain', () => {
    const run = (change: Partial<SimulationOptions>) => () => simulateTrial(line, { ...options, ...change });
    expect(run({ duration: 0 })).toThrow(
      'simulateTrial: duration must be a finite number greater than 0, got 0',
    );
    expect(run({ sampleRate: 1e9 })).toThrow(
      'simulateTrial: duration must be 1 to 100000000 samples at this rate, got 10',
    );
    expect(run({ speed: -1 })).toThrow('simulateTrial: speed must be a finite number of at least 0, got -1');
    expect(
      run({
        speed: [
          { time: 1, speed: 1 },
          { time: 1, speed: 2 },
        ],
      }),
    ).toThrow('simulateTrial: speed[1].time must be later than the point before, got 1');
  });
});
