import { describe, expect, it } from 'vitest';
import { alignRecordings, AlignmentError, type Alignment, type Recording } from '@sternline/core';
import { createRandom, type Random } from '../../../packages/core/src/numerics/random.js';

interface Trial {
  /** s on the first clock */
  readonly taps: readonly number[];
  /** s on the first clock */
  readonly duration: number;
  readonly offset: number;
  readonly drift: number;
  /** Loudness of the motor against the first clock; 1 where absent. */
  readonly level?: (time: number) => number;
}

function recordingOf(samples: Float64Array, sampleRate: number, kind: 'motion' | 'sound'): Recording {
  return {
    name: kind,
    sampleRate,
    channels: [{ name: 'x', unit: kind === 'sound' ? 'full scale' : 'm/s²', samples }],
    sampling: {
      kind,
      duration: samples.length / sampleRate,
      rateFrom: 'given',
      jitter: 0,
      stampStep: 0,
      gaps: [],
      equalStamps: 0,
      unsortedRows: 0,
      badCells: { count: 0, lines: [] },
      clipping: [],
      columns: [],
      notes: [],
    },
  };
}

/** What a phone on `clock` (first = offset + (1 + drift) · clock) records: a motor's hum, noise, taps that ring. */
function record(
  { taps, duration, offset, drift, level = () => 1 }: Trial,
  { rate, kind, random }: { rate: number; kind: 'motion' | 'sound'; random: Random },
): Recording {
  const [hum, tap, ring] = kind === 'sound' ? [0.02, 0.5, 700] : [0.5, 12, 31];
  const samples = Float64Array.from({ length: Math.floor(duration * rate) }, (_, i) => {
    const time = offset + (1 + drift) * (i / rate);
    const motor = level(time) * hum * (Math.sin(2 * Math.PI * 47 * time) + 0.4 * random.normal());
    return taps.reduce((sum, at) => {
      const since = time - at;
      if (since < 0 || since > 0.2) return sum;
      return sum + tap * Math.exp(-since / 0.02) * Math.cos(2 * Math.PI * ring * since);
    }, motor);
  });
  return recordingOf(samples, rate, kind);
}

function pairOf(seed: number, trial: Trial): [Recording, Recording] {
  const random = createRandom(seed);
  const sound = record({ ...trial, offset: 0, drift: 0 }, { rate: 8000, kind: 'sound', random });
  const motion = record(trial, { rate: 100 + 100 * random.uniform(), kind: 'motion', random });
  return [sound, motion];
}

function refused(pair: readonly [Recording, Recording]): AlignmentError {
  try {
    alignRecordings(pair);
  } catch (error) {
    if (error instanceof AlignmentError) return error;
    throw error;
  }
  throw new Error('was aligned');
}

describe('alignRecordings by taps', () => {
  const outcomes = Array.from({ length: 30 }, (_, seed): { truth: Trial; found: Alignment } => {
    const random = createRandom(900 + seed);
    const offset = 1.5 * random.uniform() - 0.5;
    const start = 2.2 + random.uniform();
    const taps = [start, start + 0.4 + 0.5 * random.uniform(), start + 1.3 + random.uniform()];
    const truth = { taps, duration: 12, offset, drift: 1e-4 * (random.uniform() - 0.5) };
    return { truth, found: alignRecordings(pairOf(seed, truth)) };
  });

  it('finds every one of thirty seeded offsets within two motion samples and its stated error', () => {
    for (const { truth, found } of outcomes) {
      expect(found.from).toBe('marks');
      expect(found.marks).toBeGreaterThanOrEqual(2);
      // 100 Hz at the slowest; a tap that falls between samples may show in the second only.
      expect(Math.abs(found.offset - truth.offset)).toBeLessThan(0.02);
    }
    expect(outcomes.filter(({ found }) => found.marks === 3).length).toBeGreaterThanOrEqual(24);
    const within = outcomes.filter(
      ({ truth, found }) => Math.abs(found.offset - truth.offset) <= 2 * found.offsetError,
    );
    // Two standard errors hold 95 % of normal ones.
    expect(within.length).toBeGreaterThanOrEqual(27);
  });

  it('turns its sign with the pair', () => {
    const pair = pairOf(3, { taps: [2, 2.7, 4.1], duration: 9, offset: 0.8, drift: 0 });
    const there = alignRecordings(pair);
    const back = alignRecordings([pair[1], pair[0]]);
    expect(there.offset + back.offset).toBeCloseTo(0, 9);
  });

  it('tells the drift of clocks from marks far apart', () => {
    const taps = [2, 2.6, 3.9, 55, 56.1, 56.6];
    const trial = { taps, duration: 60, offset: 0.4, drift: 8e-5 };
    const random = createRandom(8);
    const sound = { rate: 8000, kind: 'sound', random } as const;
    const found = alignRecordings([record({ ...trial, offset: 0, drift: 0 }, sound), record(trial, sound)]);
    expect(found.marks).toBe(6);
    // Two marks of 1 ms each in blocks of 1 ms, 53 s apart: 1.4 ms / 53 s is 2.6e-5 at worst.
    expect(Math.abs(found.drift - 8e-5)).toBeLessThan(2.6e-5);
    expect(Math.abs(found.drift - 8e-5)).toBeLessThan(3 * found.driftError);
    expect(Math.abs(found.offset - 0.4)).toBeLessThan(3 * found.offsetError);
  });

  it('takes a single tap where each has just one', () => {
    const found = alignRecordings(pairOf(5, { taps: [3], duration: 8, offset: 1, drift: 0 }));
    expect(found.marks).toBe(1);
    expect(Math.abs(found.offset - 1)).toBeLessThan(0.01);
  });

  it('stays within the longest offset that is allowed', () => {
    const pair = pairOf(3, { taps: [2, 2.7, 4.1], duration: 9, offset: 0.8, drift: 0 });
    expect(() => alignRecordings(pair, { longestOffset: 0.1 })).toThrow(AlignmentError);
  });
});

describe('alignRecordings by level', () => {
  it('follows a motor that is run up and down', () => {
    const level = (t: number): number =>
      t < 4 ? 0.1 : t < 9 ? 0.1 + 0.3 * (t - 4) : t < 12 ? 0.4 : t < 17 ? 2 : 0.1;
    const trial = { taps: [], duration: 24, offset: -2.3, drift: 0, level };
    for (const seed of [1, 2, 3, 4]) {
      const found = alignRecordings(pairOf(seed, trial));
      expect(found.from).toBe('level');
      // Levels of 50 ms.
      expect(Math.abs(found.offset + 2.3)).toBeLessThan(0.05);
      expect(Math.abs(found.offset + 2.3)).toBeLessThan(3 * found.offsetError);
    }
  });

  it('refuses levels that repeat', () => {
    const level = (t: number): number => (t % 3 < 1.5 ? 1 : 0.1);
    const fault = refused(pairOf(1, { taps: [], duration: 24, offset: 0.5, drift: 0, level }));
    expect(fault.code).toBe('ambiguous');
    expect(fault.message).toBe(
      'alignRecordings: several offsets bring the recordings to agree equally well. Tap the hull three times at uneven pauses at the beginning of every recording.',
    );
  });

  it('refuses recordings with nothing in common', () => {
    expect(refused(pairOf(1, { taps: [], duration: 20, offset: 0, drift: 0 })).code).toBe('unlike');
  });
});

describe('alignRecordings refuses', () => {
  it('what is no pair', () => {
    const one = recordingOf(new Float64Array(10), 100, 'motion');
    expect(() => alignRecordings([one] as unknown as [Recording, Recording])).toThrow(
      'alignRecordings: pair must be two recordings with at least one channel each, got a list of 1',
    );
    expect(() => alignRecordings([one, one], { longestOffset: -1 })).toThrow(
      'alignRecordings: longestOffset must be a finite number greater than 0, got -1',
    );
  });
});
