import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  compareRecordings,
  readDelimited,
  sliceRecording,
  type ComparisonRow,
  type CompareRecordingsOptions,
  type Recording,
} from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { bootstrapChange } from '../../../packages/core/src/diagnosis/bootstrap-change.js';
import { makeRecording, type MadeRecording } from '../../support/recordings.js';

const TURN = 2 * Math.PI;
const SHAFT = 31.3;

interface Made extends Partial<MadeRecording> {
  readonly first?: number;
  readonly second?: number;
  readonly shaft?: number;
}

function made({ first = 0.5, second = 0.2, shaft = SHAFT, ...more }: Made = {}): Recording {
  const seed = more.seed ?? 1;
  return makeRecording({
    sampleRate: 200,
    seconds: 10,
    noise: 0.3,
    seed,
    channels: [
      {
        components: [
          { amplitude: first, frequency: shaft, phase: seed },
          { amplitude: second, frequency: 2 * shaft, phase: 2 * seed },
        ],
      },
    ],
    ...more,
  });
}

function compared(before: Recording, after: Recording, options: Partial<CompareRecordingsOptions> = {}) {
  const found = compareRecordings(before, after, { speed: TURN * SHAFT, orders: [1, 2], ...options });
  return { ...found, codes: found.statements.map(({ code }) => code) };
}

const withSampling = (recording: Recording, sampling: Partial<Recording['sampling']>): Recording => ({
  ...recording,
  sampling: { ...recording.sampling, ...sampling },
});

describe('coverage over 200 seeded pairs', () => {
  /** Share of pairs whose interval holds the true ratio, and share whose verdict is a difference. */
  function tried(before: Made, after: Made, truth: number): { held: number; called: number } {
    let [held, called] = [0, 0];
    for (let i = 0; i < 200; i++) {
      const pair = [made({ ...before, seed: 2 * i + 1 }), made({ ...after, seed: 2 * i + 2 })] as const;
      const { rows } = compareRecordings(...pair, {
        speed: TURN * SHAFT,
        orders: [1],
        seed: i,
        repeatability: 0,
      });
      const [low, high] = rows[0]!.interval;
      if (low <= truth && truth <= high) held++;
      if (rows[0]!.verdict !== 'no difference shown') called++;
    }
    return { held: held / 200, called: called / 200 };
  }

  it.each([
    ['strong, to 0.7', { first: 0.5 }, { first: 0.35 }, 0.7],
    ['weak, to 0.6', { first: 0.1 }, { first: 0.06 }, 0.6],
    ['other noise', { first: 0.3 }, { first: 0.3, noise: 0.6 }, 1],
    ['other length', { first: 0.3, seconds: 6 }, { first: 0.3, seconds: 14 }, 1],
  ] as const)('%s', (_, before, after, truth) => {
    const { held, called } = tried(before, after, truth);
    // 95 % stated; three standard errors of a share of 200 are 0.046.
    expect(held).toBeGreaterThan(0.95 - 0.046);
    if (truth === 1) expect(called).toBeLessThan(0.05 + 0.046);
  });
});

describe('the bootstrap', () => {
  it('gives the standard error of a mean of independent powers', () => {
    // derived: σ of √(2 P̄) is σ_P / √K / √(2 P̄), P = 10 ± 1 over 400 segments
    const random = createRandom(4);
    const powers = Float64Array.from({ length: 400 }, () => 10 + random.normal());
    const series = { powers, noise: 0 };
    const change = bootstrapChange(series, series, {
      random: createRandom(1),
      repeatability: 0,
      confidence: 0.95,
    });
    const expected = 1 / Math.sqrt(400) / Math.sqrt(20);
    // The stretch for overlap and few runs adds up to 8 %; a deviation of 400 values errs by 3.5 %, 1000 draws by 2 %.
    expect(change.before.amplitudeError / expected).toBeGreaterThan(0.85);
    expect(change.before.amplitudeError / expected).toBeLessThan(1.25);
    expect(change.ratio).toBe(1);
  });

  it('is wider by what runs alike differ', () => {
    const series = { powers: Float64Array.from({ length: 100 }, () => 10), noise: 0 };
    const change = bootstrapChange(series, series, {
      random: createRandom(1),
      repeatability: 0.1,
      confidence: 0.95,
    });
    // derived: ln ratio normal with deviation 0.1 √2; ± 1.96 of that; 1000 draws leave 5 %
    expect(Math.log(change.interval[1]) / (1.96 * 0.1 * Math.SQRT2)).toBeGreaterThan(0.87);
    expect(Math.log(change.interval[1]) / (1.96 * 0.1 * Math.SQRT2)).toBeLessThan(1.13);
  });
});

describe('rows', () => {
  it('give amplitudes, ratio, decibels and a sentence', () => {
    const { rows, speed } = compared(made(), made({ first: 0.25, seed: 2 }));
    const [first, second] = rows as [ComparisonRow, ComparisonRow];
    expect(first).toMatchObject({ order: 1, channel: 'x', unit: 'm/s²', verdict: 'lower' });
    // Planted 0.5 and 0.25 in noise of 0.3 over 2000 samples: each ± 0.3 √(2/2000) √1.1 = 0.010.
    expect(Math.abs(first.before.amplitude - 0.5)).toBeLessThan(0.035);
    expect(Math.abs(first.after.amplitude - 0.25)).toBeLessThan(0.035);
    expect(first.decibels).toBeCloseTo(20 * Math.log10(first.ratio), 12);
    expect(first.sentence).toMatch(/^Order 1 fell to \d\d % of what it was \(\d\d % to \d\d %\)\.$/);
    expect(second.verdict).toBe('no difference shown');
    expect(speed.before / TURN).toBeCloseTo(SHAFT, 1);
  });

  it('turn round with the recordings', () => {
    const [a, b] = [made(), made({ first: 0.25, seed: 2 })];
    const [there, back] = [compared(a, b).rows[0]!, compared(b, a).rows[0]!];
    expect(there.ratio * back.ratio).toBeCloseTo(1, 12);
    expect([there.verdict, back.verdict]).toEqual(['lower', 'higher']);
  });

  it('are the same for the same seed and differ little for another', () => {
    const [a, b] = [made(), made({ seed: 2 })];
    expect(compared(a, b, { seed: 5 })).toEqual(compared(a, b, { seed: 5 }));
    const [one, other] = [5, 6].map((seed) => compared(a, b, { seed }).rows[0]!.interval[0]);
    expect(one).not.toBe(other);
    expect(Math.abs(one! - other!)).toBeLessThan(0.02);
  });

  it('do not hang on how the phone is turned when axes are read together', () => {
    const axes = (seed: number): Recording =>
      made({
        seed,
        channels: [0.6, 0.1, 0].map((amplitude) => ({
          components: [{ amplitude, frequency: SHAFT, phase: seed }],
        })),
      });
    const turned = (recording: Recording): Recording => {
      const [x, y, z] = recording.channels;
      const mix = x!.samples.map((_, n) => 0.6 * x!.samples[n]! - 0.8 * y!.samples[n]!);
      const other = x!.samples.map((_, n) => 0.8 * x!.samples[n]! + 0.6 * y!.samples[n]!);
      return { ...recording, channels: [{ ...x!, samples: mix }, { ...y!, samples: other }, z!] };
    };
    const [before, after] = [axes(1), axes(2)];
    const straight = compared(before, after, { orders: [1] }).rows[0]!;
    const askew = compared(before, turned(after), { orders: [1] }).rows[0]!;
    expect(askew.channel).toBe('x + y + z');
    // The sum of squares is the same in any axes; only the fitted noise floor differs a little.
    expect(askew.ratio / straight.ratio).toBeCloseTo(1, 2);
    const apart = compared(before, turned(after), { orders: [1], channels: 'apart' }).rows;
    expect(apart.map(({ channel, verdict }) => [channel, verdict])).toEqual([
      ['x', 'lower'],
      ['y', 'higher'],
      ['z', 'no difference shown'],
    ]);
  });

  it('call a change of 3 % none, as runs alike differ by 2 %, unless told that they do not', () => {
    const pair = [made({ noise: 0.01 }), made({ noise: 0.01, first: 0.515, seed: 2 })] as const;
    expect(compared(...pair).rows[0]!.verdict).toBe('no difference shown');
    expect(compared(...pair, { repeatability: 0 }).rows[0]!.verdict).toBe('higher');
  });

  it('take their orders from the line', () => {
    const { rows } = compareRecordings(made(), made({ seed: 2 }), {
      speed: TURN * 10,
      line: { propeller: { blades: 5 } },
    });
    expect(rows.map(({ order }) => order)).toEqual([1, 2, 3, 4, 5]);
  });
});

describe('guards', () => {
  const before = made();

  it('only one run each, where nothing else stands against it', () => {
    expect(compared(before, made({ seed: 2 })).codes).toEqual(['one-run-each']);
  });

  it('another speed', () => {
    const after = made({ shaft: 1.05 * SHAFT, first: 0.2, seed: 2 });
    const { rows, codes, statements } = compared(before, after, {
      speed: { before: TURN * SHAFT, after: 1.05 * TURN * SHAFT },
    });
    expect(codes).toContain('speed-differs');
    expect(statements[0]!.sentence).toMatch(
      /1\u202f8[78]0 rpm before and at 1\u202f97\d rpm after|rpm before/,
    );
    expect(rows.map(({ withheld, verdict }) => [withheld, verdict])).toEqual([
      ['speed', 'no difference shown'],
      ['speed', 'no difference shown'],
    ]);
  });

  it('a speed that wanders', () => {
    const sweep = made({ seconds: 12 });
    const rate = sweep.sampleRate;
    const samples = sweep.channels[0]!.samples.map(
      (_, n) => 0.5 * Math.sin(TURN * SHAFT * (n / rate) * (1 + (0.012 * n) / 2400)) + 0.02 * Math.sin(n * n),
    );
    const drifting = { ...sweep, channels: [{ ...sweep.channels[0]!, samples }] };
    expect(compared(drifting, made({ seed: 2, seconds: 12 })).codes).toContain('speed-drifts');
  });

  it('too short', () => {
    const { rows, codes } = compared(made({ seconds: 1 }), made({ seed: 2 }));
    expect(codes[0]).toBe('too-short');
    expect(rows[0]!.withheld).toBe('too-short');
  });

  it('clipping', () => {
    const after = withSampling(made({ first: 0.2, seed: 2 }), {
      clipping: [{ channel: 'x', count: 12, level: 2 }],
    });
    const { rows, codes } = compared(before, after);
    expect(codes).toContain('clipped');
    expect(rows[0]!).toMatchObject({ withheld: 'clipping', verdict: 'no difference shown' });
    expect(rows[0]!.sentence).toBe('Order 1: no difference shown, because samples were cut off.');
  });

  it('orders beyond half the rate, and rates that differ', () => {
    const after = made({ sampleRate: 100, seed: 2 });
    const { rows, codes } = compared(before, after);
    expect(codes).toEqual(expect.arrayContaining(['folded', 'rate-differs']));
    expect(rows.map(({ withheld }) => withheld)).toEqual([undefined, 'folded']);
  });

  it('a phone laid another way', () => {
    const lying = (gravity: number[], seed: number): Recording =>
      made({
        seed,
        channels: gravity.map((offset) => ({
          offset,
          components: [{ amplitude: 0.5, frequency: SHAFT, phase: seed }],
        })),
      });
    const [flat, tilted] = [lying([0, 0, 9.8], 1), lying([0, 4.9, 8.5], 2)];
    const apart = compared(flat, tilted, { orders: [1], channels: 'apart' });
    expect(apart.codes).toContain('mount-turned');
    expect(apart.rows[0]!.withheld).toBe('mount');
    // atan2(4.9, 8.5) = 30.0°
    expect(apart.statements[0]!.sentence).toContain('30° away');
    expect(compared(flat, tilted, { orders: [1] }).rows[0]!.withheld).toBeUndefined();
    expect(compared(flat, lying([0, 0.5, 9.8], 2), { orders: [1] }).codes).not.toContain('mount-turned');
  });

  it('sound: gain that is not known, levels that swing, and a change that gain would explain', () => {
    const sound = (gain: number, seed: number): Recording =>
      made({
        seed,
        noise: 0.03 * gain,
        channels: [
          { name: 'sound', unit: 'full scale', components: [{ amplitude: 0.05 * gain, frequency: SHAFT }] },
        ],
      });
    const { rows, codes } = compared(sound(1, 1), sound(0.5, 2), { orders: [1] });
    expect(codes).toEqual(expect.arrayContaining(['gain-unknown', 'floor-changed']));
    expect(rows[0]!).toMatchObject({ withheld: 'gain', verdict: 'no difference shown' });
    const pumped = sound(1, 3);
    const samples = pumped.channels[0]!.samples.map((x, n) => x * (1 + 0.6 * Math.sin(n / 150)));
    const swinging = { ...pumped, channels: [{ ...pumped.channels[0]!, samples }] };
    expect(compared(sound(1, 1), swinging, { orders: [1] }).codes).toContain('level-swings');
  });

  it('nothing to be seen', () => {
    const { rows, codes } = compared(made({ first: 0, second: 0 }), made({ first: 0, second: 0, seed: 2 }));
    expect(codes).toContain('speed-not-seen');
    expect(rows.map(({ withheld }) => withheld)).toEqual(['not-seen', 'not-seen']);
  });

  it('axes that only one has', () => {
    const more = made({ seed: 2, channels: [{ components: [] }, { components: [] }] });
    const { statements } = compared(before, more, { orders: [1] });
    expect(statements.find(({ code }) => code === 'channels-differ')!.sentence).toContain('left out: y');
  });
});

describe('refusals', () => {
  it.each<[Partial<CompareRecordingsOptions>, string]>([
    [{ speed: 0 }, 'compareRecordings: speed must be a finite number greater than 0, got 0'],
    [{ orders: [1, -1] }, 'compareRecordings: orders[1] must be a finite number greater than 0, got -1'],
    [{ confidence: 1 }, 'compareRecordings: confidence must be between 0 and 1, got 1'],
    [{ repeatability: -0.1 }, 'compareRecordings: repeatability must be at least 0 and below 1, got -0.1'],
  ])('%o', (options, text) => {
    expect(() => compared(made(), made({ seed: 2 }), options)).toThrow(new RangeError(text));
  });

  it('motion against sound', () => {
    const sound = made({ channels: [{ name: 'sound', unit: 'full scale' }] });
    expect(() => compared(made(), sound)).toThrow(
      'compareRecordings: after must be a recording with a channel of the name and unit of one before, got "sound in full scale"',
    );
  });
});

/* A recording of a real machine that is not part of the project; skipped where the folder is absent. */
const folder = fileURLToPath(new URL('../../../../shared/data/', import.meta.url));

describe.skipIf(!existsSync(folder))(
  'a steady stretch of a washing machine (shared/data/washer-phone)',
  () => {
    it.each([
      [385, 400, 415],
      [400, 415, 430],
      [385, 407, 430],
    ])('%d to %d s against the stretch up to %d s: no difference shown', (from, middle, to) => {
      const whole = readDelimited(readFileSync(`${folder}washer-phone/recording.csv`, 'utf8'));
      const { rows } = compareRecordings(
        sliceRecording(whole, { from, to: middle }),
        sliceRecording(whole, { from: middle, to }),
        { speed: TURN * 19.15, orders: [1, 2, 3] },
      );
      expect(rows.map(({ verdict, withheld }) => [verdict, withheld])).toEqual(
        rows.map(() => ['no difference shown', undefined]),
      );
    });
  },
);
