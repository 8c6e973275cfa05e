import { describe, expect, it } from 'vitest';
import { estimateSpeed } from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { makeRecording, type Component } from '../../support/recordings.js';

const TURN = 2 * Math.PI;
const RANGE = [TURN * 10, TURN * 60] as const;

function motion(components: readonly Component[], seed = 1) {
  return makeRecording({
    sampleRate: 200,
    seconds: 20,
    channels: [{ components, offset: 9.8 }],
    noise: 0.1,
    seed,
  });
}

describe('estimateSpeed', () => {
  it('finds the speed of a family of orders among strangers', () => {
    const components = [
      { amplitude: 0.5, frequency: 22.3 },
      { amplitude: 0.3, frequency: 44.6 },
      { amplitude: 0.2, frequency: 66.9 },
      { amplitude: 0.6, frequency: 50 },
      { amplitude: 0.3, frequency: 17.1 },
    ];
    const { speed, confidence } = estimateSpeed(motion(components), { range: RANGE });
    expect(Math.abs(speed / (TURN * 22.3) - 1)).toBeLessThan(0.005);
    expect(confidence).toBeGreaterThan(0.8);
  });

  /** law: chances share 1 at most, whatever the number of lines (here one on every hertz) that any speed would explain. */
  it('answers a sound that repeats each second', () => {
    const [sampleRate, random] = [48000, createRandom(5)];
    const second = Float64Array.from(
      { length: sampleRate },
      (_, n) => 0.3 * Math.sin((TURN * 25 * n) / sampleRate) + 0.03 * random.normal(),
    );
    const made = makeRecording({
      sampleRate,
      seconds: 20,
      channels: [{ components: [] }],
      noise: 0,
      seed: 1,
    });
    const samples = made.channels[0]!.samples.map((_, n) => second[n % sampleRate] ?? NaN);
    const channels = [{ ...made.channels[0]!, samples }];
    const { speed, candidates } = estimateSpeed({ ...made, channels }, { range: RANGE });
    expect(speed).toBeGreaterThan(0.98 * RANGE[0]);
    expect(speed).toBeLessThan(1.02 * RANGE[1]);
    expect(candidates.length).toBeLessThanOrEqual(5);
    expect(candidates.reduce((sum, { confidence }) => sum + confidence, 0)).toBeLessThanOrEqual(1 + 1e-12);
  });

  it('shows half and double speed as rivals where one line is all there is', () => {
    const { candidates, confidence } = estimateSpeed(motion([{ amplitude: 0.5, frequency: 40 }]), {
      range: RANGE,
    });
    const found = candidates.map(({ speed }) => Math.round(speed / TURN));
    expect(found).toEqual(expect.arrayContaining([40, 20]));
    expect(confidence).toBeLessThan(0.9);
    expect(candidates.reduce((sum, candidate) => sum + candidate.confidence, 0)).toBeLessThanOrEqual(1);
  });

  it('takes the hint of the blades', () => {
    const recording = makeRecording({
      sampleRate: 8000,
      seconds: 4,
      channels: [
        {
          unit: 'full scale',
          components: [
            { amplitude: 0.05, frequency: 160 },
            { amplitude: 0.03, frequency: 320 },
          ],
        },
      ],
      noise: 0.01,
      seed: 3,
    });
    const { speed } = estimateSpeed(recording, {
      range: [TURN * 20, TURN * 200],
      line: { propeller: { blades: 4 } },
    });
    expect(Math.abs(speed / (TURN * 40) - 1)).toBeLessThan(0.01);
  });

  it('claims nothing from noise', () => {
    let claims = 0;
    for (let seed = 0; seed < 200; seed++) {
      const { speed, confidence, candidates } = estimateSpeed(motion([], seed), { range: RANGE });
      if (Number.isNaN(speed)) expect([confidence, candidates.length]).toEqual([0, 0]);
      else claims += 1;
      expect(confidence).toBeLessThan(0.7);
    }
    expect(claims).toBeLessThanOrEqual(4);
  });

  it('is right at least as often as it says, where it says eight in ten or more', () => {
    let said = 0;
    let right = 0;
    let count = 0;
    for (let seed = 0; seed < 300; seed++) {
      const random = createRandom(7000 + seed);
      const shaft = 12 * 4 ** random.uniform();
      const components = [1, 2, 3, 4].flatMap((order) =>
        random.uniform() < [0.85, 0.5, 0.3, 0.25][order - 1]!
          ? [{ amplitude: 0.05 + 0.5 * random.uniform() ** 2, frequency: order * shaft, phase: order * seed }]
          : [],
      );
      for (let i = 0; i < 2; i++)
        components.push({
          amplitude: 0.3 * random.uniform(),
          frequency: 5 + 90 * random.uniform(),
          phase: i,
        });
      const { speed, confidence } = estimateSpeed(motion(components, seed), { range: RANGE });
      if (!(confidence >= 0.8)) continue;
      count += 1;
      said += confidence;
      right += Number(Math.abs(speed / (TURN * shaft) - 1) < 0.02);
    }
    expect(count).toBeGreaterThan(50);
    // Two standard deviations of the count below what was said.
    expect(right).toBeGreaterThan(said - 2 * Math.sqrt(count * 0.1));
  });

  it('refuses a range that does not rise', () => {
    expect(() => estimateSpeed(motion([]), { range: [100, 50] })).toThrow(
      new RangeError(
        'estimateSpeed: range must be two rising finite numbers greater than 0, got "100 and 50"',
      ),
    );
  });
});
