import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { readDelimited, type Recording } from '@sternline/core';

/*
 * A sensor is simulated: its true sample times are known, its stamps are late, rounded, bunched or lost, and what the
 * reader makes of them is held against the truth.
 */
interface Taken {
  /** s, when each sample was truly taken */
  readonly times: readonly number[];
  /** s, what was written */
  readonly stamps: readonly number[];
}

const HERTZ = 51.3;
const AMPLITUDE = 2;

function record({ times, stamps }: Taken, digits = 6): Recording {
  const rows = times.map((time, i) => {
    const value = AMPLITUDE * Math.sin(2 * Math.PI * HERTZ * time);
    return `${stamps[i]!.toFixed(digits)},${value.toFixed(6)},${(0.1 * value).toFixed(6)},${(9.81 + 0.01 * value).toFixed(6)}`;
  });
  return readDelimited(['time (s),x (m/s²),y (m/s²),z (m/s²)', ...rows].join('\n'));
}

/** Amplitude at one frequency by projection under a Hann window, over the samples that no gap touches. */
function amplitude(recording: Recording, hertz: number): number {
  const { samples } = recording.channels[0]!;
  const n = samples.length;
  let [re, im, weights] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const weight = 1 - Math.cos((2 * Math.PI * (i + 0.5)) / n);
    const angle = (2 * Math.PI * hertz * i) / recording.sampleRate;
    re += weight * samples[i]! * Math.cos(angle);
    im += weight * samples[i]! * Math.sin(angle);
    weights += weight;
  }
  return (2 * Math.hypot(re, im)) / weights;
}

function even(rate: number, rows: number): number[] {
  return Array.from({ length: rows }, (_, i) => i / rate);
}

describe('the time base of an even sensor', () => {
  it.each([203.4, 99.83, 412.7])('late and rounded stamps do not touch samples taken at %f Hz', (rate) => {
    const random = createRandom(5);
    const times = even(rate, 6000);
    // Deliveries are late by an exponential time and never overtake one another, then are rounded to 1 ms.
    let last = 0;
    const stamps = times.map(
      (time) => (last = Math.max(last, time - 0.002 * Math.log(1 - random.uniform()))),
    );
    const recording = record({ times, stamps }, 3);
    // Late by 2 ms ± 2 ms: standard error of the slope is 2 ms · √12 / (6000 · √6000) a sample; five of these.
    expect(Math.abs(recording.sampleRate / rate - 1)).toBeLessThan(
      ((5 * 0.002 * Math.sqrt(12)) / 6000 ** 1.5) * rate,
    );
    expect(recording.sampling).toMatchObject({ timeBase: 'counts', gaps: [], rateFrom: 'stamps' });
    expect(recording.channels[0]!.samples).toHaveLength(6000);
    expect(recording.channels[0]!.samples[1234]).toBeCloseTo(
      AMPLITUDE * Math.sin(2 * Math.PI * HERTZ * times[1234]!),
      6,
    );
    expect(recording.sampling.jitter).toBeGreaterThan(0.001);
  });

  it('a stall that is caught up is no gap', () => {
    const times = even(200, 3000);
    // From 5 s the logger stood for 0.3 s and then wrote what had queued within 30 ms.
    const stamps = times.map((time, i) => (i >= 1000 && i < 1060 ? 5.3 + (i - 1000) * 0.0005 : time));
    const recording = record({ times, stamps }, 4);
    expect(recording.sampling.gaps).toEqual([]);
    expect(recording.sampleRate).toBeCloseTo(200, 2);
  });

  it.each([
    [1, 0],
    [3, 0],
    [40, 0],
    [40, 0.001],
    [7, 0.0015],
    [200, 0.002],
  ])('%d lost rows are found among stamps late by up to %f s', (count, late) => {
    const random = createRandom(9);
    const times = even(200, 2400).filter((_, i) => i < 1100 || i >= 1100 + count);
    const stamps = times.map((time) => time + late * random.uniform());
    const recording = record({ times, stamps });
    expect(recording.sampling.gaps).toEqual([{ start: 1100, count }]);
    expect(recording.channels[0]!.samples).toHaveLength(2400);
    expect(recording.sampleRate).toBeCloseTo(200, 2);
    expect(recording.sampling.notes.join()).toContain(`${count} samples are missing in 1 gap`);
  });

  it('many lost rows are each found where the stamps are fine', () => {
    const random = createRandom(3);
    const kept = Array.from({ length: 4000 }, (_, i) => i === 0 || i === 3999 || random.uniform() > 0.04);
    const recording = record({
      times: even(100, 4000).filter((_, i) => kept[i]),
      stamps: even(100, 4000).filter((_, i) => kept[i]),
    });
    const lost = recording.sampling.gaps.flatMap(({ start, count }) =>
      Array.from({ length: count }, (_, k) => start + k),
    );
    expect(lost).toEqual(kept.flatMap((there, i) => (there ? [] : [i])));
  });

  it('stamps rounded to ten samples still give the rate', () => {
    const times = even(100, 3000);
    const recording = record({ times, stamps: times.map((time) => Math.round(time * 10) / 10) }, 1);
    // Rounding errors spread evenly over 0.1 s repeat every 10 rows: the slope's error stays below 0.1 s / 30 s / 10.
    expect(Math.abs(recording.sampleRate / 100 - 1)).toBeLessThan(3.4e-4);
    expect(recording.sampling.stampStep).toBeCloseTo(0.1, 12);
    expect(recording.sampling.notes.join()).toContain('too coarse to trust one by one');
  });

  it('holds for any rate, start and lateness', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 1000 }),
        fc.integer({ min: 0, max: 1e6 }),
        fc.integer(),
        (rate, start, seed) => {
          const random = createRandom(seed);
          const times = even(rate, 600);
          const stamps = times.map((time) => start + time + (0.2 / rate) * random.uniform());
          const recording = record({ times, stamps });
          expect(Math.abs(recording.sampleRate / rate - 1)).toBeLessThan(1e-3);
          expect(recording.sampling.gaps).toEqual([]);
          expect(recording.channels[0]!.samples).toHaveLength(600);
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  });
});

describe('the time base of a sensor whose rate moves', () => {
  it('a rate that drifts by 2 % is followed, and keeps the amplitude', () => {
    const times: number[] = [0];
    for (let i = 1; i < 8000; i++) times.push(times[i - 1]! + 1 / (200 * (1 + (0.02 * i) / 8000)));
    const recording = record({ times, stamps: times });
    expect(recording.sampling.timeBase).toBe('piecewise');
    // Without following, a line at 51.3 Hz would be smeared over 1 Hz and lose nearly all of its height.
    expect(amplitude(recording, HERTZ)).toBeCloseTo(AMPLITUDE, 2);
    expect(recording.sampling.passband!).toBeLessThan(0.41 * 200);
    expect(recording.sampling.notes.join()).toContain('The sampling rate moved between');
  });

  it('a drift under late stamps is followed too', () => {
    const random = createRandom(21);
    const times: number[] = [0];
    for (let i = 1; i < 12000; i++) times.push(times[i - 1]! + 1 / (200 * (1 + 0.01 * Math.sin(i / 2000))));
    const recording = record({ times, stamps: times.map((time) => time + 0.002 * random.uniform()) });
    expect(recording.sampling).toMatchObject({ timeBase: 'piecewise', gaps: [] });
    // Times are known to 2 ms / √12 / √block: a phase scatter that costs well under 1 %.
    expect(Math.abs(amplitude(recording, HERTZ) / AMPLITUDE - 1)).toBeLessThan(0.01);
  });

  it('a change from 200 to 150 Hz is no row of gaps', () => {
    const times = [...even(200, 3000), ...Array.from({ length: 3000 }, (_, i) => 15 + i / 150)];
    const recording = record({ times, stamps: times });
    expect(recording.sampling).toMatchObject({ timeBase: 'piecewise', gaps: [] });
    expect(recording.sampleRate).toBeCloseTo(200, 0);
    expect(Math.abs(amplitude(recording, HERTZ) / AMPLITUDE - 1)).toBeLessThan(0.01);
    expect(recording.sampling.passband!).toBeCloseTo(0.4 * 150, 0);
  });
});

describe('the time base of irregular samples', () => {
  it('follows the stamps, says how far amplitudes hold, and keeps them there', () => {
    const random = createRandom(2);
    const times: number[] = [0];
    for (let i = 1; i < 6000; i++) times.push(times[i - 1]! + (0.6 + 0.8 * random.uniform()) / 500);
    const recording = record({ times, stamps: times });
    expect(recording.sampling.timeBase).toBe('stamps');
    expect(recording.sampling.passband!).toBeGreaterThan(HERTZ);
    expect(Math.abs(amplitude(recording, HERTZ) / AMPLITUDE - 1)).toBeLessThan(0.02);
    expect(recording.sampling.notes.join()).toContain('taken at irregular times');
  });

  it('lists long pauses as gaps', () => {
    const random = createRandom(4);
    const times: number[] = [0];
    for (let i = 1; i < 3000; i++)
      times.push(times[i - 1]! + (0.6 + 0.8 * random.uniform()) / 500 + (i === 1500 ? 0.1 : 0));
    const { sampling } = record({ times, stamps: times });
    expect(sampling.gaps).toHaveLength(1);
    expect(sampling.gaps[0]!.count).toBeGreaterThan(40);
  });
});

describe('wrong stamps', () => {
  it('one stamp years ahead does not ask for years of samples', () => {
    const times = even(200, 500);
    const recording = record({ times, stamps: times.map((time, i) => (i === 499 ? 1e9 : time)) }, 4);
    expect(recording.channels[0]!.samples).toHaveLength(499);
    expect(recording.sampling.notes.join()).toContain('1 rows beyond the pauses were left out');
  });
});
