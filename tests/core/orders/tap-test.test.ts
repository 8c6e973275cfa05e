import { describe, expect, it } from 'vitest';
import { separateFolded, tapTest, type Recording } from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { binomialBounds } from '../../support/binomial.js';
import { makeRecording } from '../../support/recordings.js';

const TURN = 2 * Math.PI;

interface Rung {
  readonly frequency: number;
  readonly damping: number;
  readonly sampleRate?: number;
  readonly noise?: number;
  readonly taps?: number;
  readonly seed?: number;
  readonly second?: { readonly frequency: number; readonly damping: number };
}

/** x(t) = A e^(−ζ ω₀ t) sin(ω₀ √(1 − ζ²) t) from each tap, 1.5 s apart. */
function rung({
  frequency,
  damping,
  sampleRate = 400,
  noise = 0.02,
  taps = 4,
  seed = 1,
  second,
}: Rung): Recording {
  const made = makeRecording({
    sampleRate,
    seconds: 1.5 * taps + 1,
    channels: [{}, { offset: 9.8 }],
    noise,
    seed,
  });
  const random = createRandom(seed);
  const z = made.channels[1]!.samples;
  for (let tap = 0; tap < taps; tap++) {
    const start = 0.6 + 1.5 * tap + 0.1 * random.uniform();
    const size = 2 + 4 * random.uniform();
    for (const ring of second === undefined ? [{ frequency, damping }] : [{ frequency, damping }, second]) {
      const natural = TURN * ring.frequency;
      for (let n = Math.ceil(start * sampleRate); n < z.length; n++) {
        const t = n / sampleRate - start;
        z[n]! +=
          size *
          Math.exp(-ring.damping * natural * t) *
          Math.sin(natural * Math.sqrt(1 - ring.damping ** 2) * t);
      }
    }
  }
  return made;
}

describe('tapTest', () => {
  it.each([
    [25, 0.01, 200],
    [40, 0.02, 400],
    [63, 0.03, 400],
    [120, 0.008, 500],
    [180, 0.05, 1000],
  ])('%d Hz, damping %f, at %d Hz: both methods', (frequency, damping, sampleRate) => {
    const read = tapTest(rung({ frequency, damping, sampleRate }));
    const ringing = frequency * Math.sqrt(1 - damping ** 2);
    expect(read.channel).toBe('y');
    expect(read.taps).toHaveLength(4);
    expect(Math.abs(read.frequency / ringing - 1)).toBeLessThan(0.003);
    expect(Math.abs(read.byFit.damping / damping - 1)).toBeLessThan(0.05);
    expect(Math.abs(read.byDecrement.damping / damping - 1)).toBeLessThan(0.15);
    expect(read.agreement).toBe('agree');
  });

  it('states its error: the truth within two of it nine times in ten or more', () => {
    let [frequency, damping] = [0, 0];
    const trials = 30;
    for (let seed = 0; seed < trials; seed++) {
      const read = tapTest(rung({ frequency: 45, damping: 0.02, noise: 0.1, seed }));
      const ringing = 45 * Math.sqrt(1 - 0.02 ** 2);
      frequency += Number(Math.abs(read.frequency - ringing) < 2 * read.frequencyError);
      damping += Number(Math.abs(read.damping - 0.02) < 2 * read.dampingError);
    }
    // Four taps: two standard errors of four cover about 0.86 (Student, 3 degrees of freedom).
    const [least] = binomialBounds(trials, 0.86);
    expect(frequency).toBeGreaterThan(least);
    expect(damping).toBeGreaterThan(least);
  });

  it('says so where two parts ring at once', () => {
    const second = { frequency: 47, damping: 0.01 };
    const read = tapTest(rung({ frequency: 40, damping: 0.01, noise: 0.01, second }));
    expect(read.agreement).toBe('differ');
    expect(read.notes.join(' ')).toContain('more than one part rings');
  });

  it('refuses a recording in which nothing rings', () => {
    const text =
      'tapTest: recording must be one with a tap that rings for three periods above the noise, got "none"';
    const noise = makeRecording({ sampleRate: 200, seconds: 5, channels: [{}], noise: 0.1, seed: 1 });
    expect(() => tapTest(noise)).toThrow(new RangeError(text));
    expect(() => tapTest(noise, { range: [50, 20] })).toThrow(
      'tapTest: range must be two rising frequencies above 0 up to half the sampling rate, got "50 and 20"',
    );
  });
});

describe('separateFolded', () => {
  const run = (shaft: number, parts: Readonly<Record<string, number>>, fixed?: number) => ({
    speed: TURN * shaft,
    recording: makeRecording({
      sampleRate: 100,
      seconds: 30,
      channels: [
        {
          components: [
            ...Object.entries(parts).map(([order, amplitude]) => ({
              amplitude,
              frequency: Number(order) * shaft,
            })),
            ...(fixed === undefined ? [] : [{ amplitude: 0.4, frequency: fixed }]),
          ],
        },
      ],
      noise: 0.1,
      seed: 4,
    }),
  });

  /** derived: at 4 000 rpm and 100 Hz orders 1 and 2 both show at 33.3 Hz; at 61 Hz they show at 39 and 22. */
  it.each([1, 2])('tells by a second speed that a line on orders 1 and 2 is order %d', (order) => {
    const parts = { [order]: 0.8 };
    const lines = separateFolded({ recordings: [run(200 / 3, parts), run(61, parts)] });
    expect(lines).toHaveLength(1);
    expect(lines[0]!.couldBe).toEqual(expect.arrayContaining([1, 2, 'fixed']));
    expect(lines[0]).toMatchObject({ is: order, folded: true, remains: [order] });
  });

  it('tells what does not follow the shaft', () => {
    const lines = separateFolded({ recordings: [run(31, { 1: 0.8 }, 17.3), run(28, { 1: 0.8 }, 17.3)] });
    const of = (frequency: number) => lines.find((line) => Math.abs(line.frequency - frequency) < 0.3)!;
    expect(of(17.3).is).toBe('fixed');
    expect(of(31)).toMatchObject({ is: 1, folded: false });
  });

  it('reads the orders of a sweep', () => {
    const speed = [
      { time: 0, speed: TURN * 56 },
      { time: 40, speed: TURN * 72 },
    ];
    const made = makeRecording({ sampleRate: 100, seconds: 40, channels: [{}], noise: 0.1, seed: 2 });
    const samples = made.channels[0]!.samples.map(
      (x, n) => x + 0.6 * Math.sin(2 * TURN * ((56 * n) / 100 + (0.2 * n * n) / 1e4)),
    );
    const recording = { ...made, channels: [{ ...made.channels[0]!, samples }] };
    const lines = separateFolded({ recordings: [{ recording, speed }], orders: [1, 2, 3, 4] });
    expect(lines.map(({ is }) => is)).toEqual([2]);
    expect(lines[0]!.folded).toBe(true);
  });

  it('refuses one steady recording', () => {
    expect(() => separateFolded({ recordings: [run(31, { 1: 1 })] })).toThrow(
      'separateFolded: recordings must be two at different speeds or one with a speed that moves, got a list of 1',
    );
  });
});
