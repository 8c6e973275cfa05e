import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  findResonances,
  orderMap,
  resampleByAngle,
  trackOrders,
  type Recording,
  type SpeedAtTime,
  type TrackOptions,
} from '@sternline/core';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { createInterpolator } from '../../../packages/core/src/orders/interpolate-samples.js';
import { shaftAngle } from '../../../packages/core/src/orders/shaft-angle.js';
import { makeRecording } from '../../support/recordings.js';

const TURN = 2 * Math.PI;

interface Run {
  readonly sampleRate: number;
  readonly seconds: number;
  /** Hz at the start and at the end; straight between. */
  readonly from: number;
  readonly to: number;
  /** Peak amplitude of each order at a shaft frequency in Hz. */
  readonly amplitude: (order: number, shaft: number) => number;
  readonly orders?: readonly number[];
  readonly noise?: number;
  readonly seed?: number;
}

/** Chirps of orders: the phase is o (2π) (f₀ t + (f₁ − f₀) t² / 2T), in closed form. */
function makeRun(run: Run): { recording: Recording; speed: SpeedAtTime[] } {
  const { sampleRate, seconds, from, to, orders = [1, 2], noise = 0.02, seed = 1 } = run;
  const made = makeRecording({ sampleRate, seconds, channels: [{ offset: 9.8 }], noise, seed });
  const samples = made.channels[0]!.samples.map((value, n) => {
    const t = n / sampleRate;
    const turns = from * t + ((to - from) * t * t) / (2 * seconds);
    const shaft = from + ((to - from) * t) / seconds;
    return orders.reduce((sum, o) => sum + run.amplitude(o, shaft) * Math.cos(TURN * o * turns + o), value);
  });
  return {
    recording: { ...made, channels: [{ ...made.channels[0]!, samples }] },
    speed: [
      { time: 0, speed: TURN * from },
      { time: seconds, speed: TURN * to },
    ],
  };
}

describe('equal shaft angle', () => {
  /**
   * Fyfe and Munck, "Analysis of computed order tracking", MSSP 11(2), 1997, pp. 187–205, as worked in the check values: ω₀ 50 rad/s, α 20
   * rad/s², pulses at 0, 0.12265486 and 0.23982428 s; π rad at 0.06206153 s.
   */
  it('follows the quadratic through three pulses', () => {
    const shaft = shaftAngle('test', [
      { time: 0, speed: 50 },
      { time: 1, speed: 70 },
    ]);
    [
      [Math.PI, 0.06206153],
      [TURN, 0.12265486],
      [2 * TURN, 0.23982428],
    ].forEach(([angle, time]) => {
      expect(shaft.timeAt(angle!)).toBeCloseTo(time!, 8);
      expect(shaft.angleAt(time!)).toBeCloseTo(angle!, 6);
    });
  });

  it('angle and time undo each other', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0.05, max: 3, noNaN: true }),
            fc.double({ min: 1, max: 500, noNaN: true }),
          ),
          {
            minLength: 1,
            maxLength: 8,
          },
        ),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (steps, at) => {
          let time = 0.1;
          const shaft = shaftAngle(
            'test',
            steps.map(([wait, speed]) => ({ time: (time += wait), speed })),
          );
          expect(shaft.timeAt(shaft.angleAt(at))).toBeCloseTo(at, 8);
        },
      ),
    );
  });

  it('reads between samples within 0.01 % up to 0.44 of the rate', () => {
    const { valueAt } = createInterpolator();
    for (const frequency of [0.01, 0.2, 0.35, 0.44]) {
      const sine = Float64Array.from({ length: 400 }, (_, n) => Math.sin(TURN * frequency * n + 1));
      for (let place = 100; place < 300; place += 3.37)
        expect(Math.abs(valueAt(sine, place) - Math.sin(TURN * frequency * place + 1))).toBeLessThan(1e-4);
    }
  });

  it('makes a chirp a sine: cos 3θ at equal angle', () => {
    const angle = (t: number) => 50 * t + 10 * t * t;
    const samples = Float64Array.from({ length: 2000 }, (_, n) => Math.cos(3 * angle(n / 1000)));
    const speed = [
      { time: 0, speed: 50 },
      { time: 2, speed: 90 },
    ];
    const even = resampleByAngle(samples, 1000, { speed, perTurn: 24 });
    even.samples.forEach((value, j) => {
      if (j > 60 && j < even.samples.length - 60)
        expect(Math.abs(value - Math.cos((3 * TURN * j) / 24))).toBeLessThan(1e-4);
    });
  });

  it('an order map shows an order as one column however the speed moves', () => {
    const { recording, speed } = makeRun({
      sampleRate: 500,
      seconds: 20,
      from: 10,
      to: 50,
      amplitude: (o) => (o === 2 ? 0.5 : 0),
      noise: 0,
    });
    const map = orderMap(recording.channels[0]!.samples, 500, { speed, highest: 4 });
    map.amplitude.slice(1, -1).forEach((row) => {
      expect(Math.abs(row[32]! - 0.5)).toBeLessThan(0.005);
      expect(Math.max(row[28]!, row[36]!, row[16]!)).toBeLessThan(0.005);
    });
  });
});

describe('trackOrders at a speed that is known', () => {
  it.each([
    ['up', 8, 60],
    ['down', 60, 8],
  ] as const)('run %s: amplitudes that move with speed, in closed form', (_, from, to) => {
    const amplitude = (o: number, shaft: number) => (o === 1 ? (shaft / 40) ** 2 : 0.4);
    const { recording, speed } = makeRun({ sampleRate: 400, seconds: 30, from, to, amplitude });
    const track = trackOrders(recording, { orders: [1, 2], speed });
    expect(track).toMatchObject({ speedFrom: 'given', confidence: 1 });
    expect(track.time.length).toBeGreaterThan(40);
    track.orders.forEach(({ order, amplitude: read }) => {
      read.forEach((value, i) => {
        const actual = amplitude(order, track.speed[i]! / TURN);
        expect(Math.abs(value - actual)).toBeLessThan(0.03 * actual + 0.02);
      });
    });
  });

  it('follows an order beyond half the rate where it folds to, and says where another hides it', () => {
    const { recording, speed } = makeRun({
      sampleRate: 100,
      seconds: 40,
      from: 20,
      to: 45,
      amplitude: (o) => 1 / o,
    });
    const { orders, speed: shaft } = trackOrders(recording, { orders: [1, 2], speed });
    const [, second] = orders;
    second!.amplitude.forEach((value, i) => {
      // derived: order 1 of amplitude 1 leaks 0.027 past the main lobe of the Hann window (−31.5 dB), and noise adds 0.01.
      if (second!.hidden[i] === 0) expect(Math.abs(value - 0.5)).toBeLessThan(0.037);
    });
    const hiddenAt = [...shaft].filter((_, i) => second!.hidden[i] === 1).map((w) => w / TURN);
    // derived: 2f meets half the rate of 50 Hz at 25 Hz, and folds onto 1f at 100 − 2f = f, 33.3 Hz
    expect(hiddenAt.every((f) => Math.abs(f - 25) < 2 || Math.abs(f - 100 / 3) < 3)).toBe(true);
    expect(hiddenAt.some((f) => Math.abs(f - 25) < 1) && hiddenAt.some((f) => Math.abs(f - 33.3) < 1)).toBe(
      true,
    );
  });

  it('states its error: about two in three within one', () => {
    let [within, all] = [0, 0];
    for (let seed = 0; seed < 25; seed++) {
      const run = { sampleRate: 200, seconds: 16, from: 15, to: 40, noise: 0.5, seed };
      const { recording, speed } = makeRun({ ...run, amplitude: () => 0.6 });
      const [first] = trackOrders(recording, { orders: [1], speed }).orders;
      // A window apart, so that the readings do not share noise.
      for (let i = 0; i < first!.amplitude.length; i += 4) {
        within += Number(Math.abs(first!.amplitude[i]! - 0.6) < first!.amplitudeError[i]!);
        all += 1;
      }
    }
    // Four lines of noise know its power to a half only, which costs the interval some of its cover: 0.683 less a tenth.
    expect(within / all).toBeGreaterThan(0.58);
    expect(within / all).toBeLessThan(0.75);
  });
});

describe('trackOrders on its own', () => {
  /** Run-ups and coast-downs by seed: rate, speeds, strength and noise at random; right within 1 % over the faster half. */
  it('follows the shaft through run-ups and coast-downs', () => {
    let right = 0;
    const trials = 24;
    for (let seed = 0; seed < trials; seed++) {
      const random = createRandom(900 + seed);
      const sampleRate = [100, 200, 400][seed % 3]!;
      const top = Math.min(0.4 * sampleRate, 25 + 40 * random.uniform());
      const [from, to] = seed % 2 === 0 ? [0.3 * top, top] : [top, 0.3 * top];
      const { recording } = makeRun({
        sampleRate,
        seconds: 12 + 12 * random.uniform(),
        from,
        to,
        noise: 0.05 + 0.1 * random.uniform(),
        seed,
        amplitude: (o, shaft) => ([0, 0.8, 0.4][o] ?? 0) * (shaft / top) ** 2,
      });
      const track = trackOrders(recording, { orders: [1] });
      const errors = [...track.speed].flatMap((speed, i) => {
        const actual = from + ((to - from) * track.time[i]!) / recording.sampling.duration;
        return actual > 0.5 * top ? [Math.abs(speed / TURN / actual - 1)] : [];
      });
      const most = errors.sort((a, b) => a - b)[Math.floor(0.9 * errors.length)]!;
      right += Number(most < 0.01 && track.confidence > 0.5);
    }
    expect(right).toBeGreaterThanOrEqual(21);
  });

  it('follows a speed that drifts, where a steady reading would smear', () => {
    const speed = Array.from({ length: 61 }, (_, i) => ({
      time: i / 2,
      speed: TURN * (30 + 1.5 * Math.sin((TURN * i) / 40)),
    }));
    const shaft = shaftAngle('test', speed);
    const made = makeRecording({ sampleRate: 200, seconds: 30, channels: [{}], noise: 0.1, seed: 3 });
    const samples = made.channels[0]!.samples.map(
      (x, n) => x + 0.7 * Math.sin(shaft.angleAt(n / 200)) + 0.3 * Math.sin(2 * shaft.angleAt(n / 200)),
    );
    const recording = { ...made, channels: [{ ...made.channels[0]!, samples }] };
    const track = trackOrders(recording, { orders: [1], range: [TURN * 20, TURN * 45] });
    track.time.forEach((time, i) => {
      expect(Math.abs(track.speed[i]! / shaft.speedAt(time) - 1)).toBeLessThan(0.01);
      expect(Math.abs(track.orders[0]!.amplitude[i]! - 0.7)).toBeLessThan(0.1);
    });
  });

  it('trusts nothing that it follows through noise', () => {
    for (let seed = 0; seed < 8; seed++) {
      const recording = makeRecording({ sampleRate: 100, seconds: 12, channels: [{}], noise: 1, seed });
      expect(trackOrders(recording, { orders: [1] }).confidence).toBeLessThan(0.5);
    }
  });
});

describe('findResonances', () => {
  const ring = (f: number, f0: number) => 1 / Math.hypot(1 - (f / f0) ** 2, (0.1 * f) / f0);

  it('finds the frequency at which two orders swell, and calls it one', () => {
    const { recording, speed } = makeRun({
      sampleRate: 400,
      seconds: 60,
      from: 10,
      to: 70,
      amplitude: (o, shaft) => 0.1 * (o === 1 ? (shaft / 40) ** 2 : 1) * ring(o * shaft, 44),
    });
    const found = findResonances(trackOrders(recording, { orders: [1, 2], speed }));
    expect(found[0]!.orders).toEqual([1, 2]);
    // Within the width of the resonance, 0.1 of its frequency.
    expect(Math.abs(found[0]!.frequency / 44 - 1)).toBeLessThan(0.03);
    expect(found[0]!.rise).toBeGreaterThan(2);
  });

  it('does not take growth with the square of the speed for a resonance', () => {
    for (let seed = 0; seed < 5; seed++) {
      const { recording, speed } = makeRun({
        sampleRate: 400,
        seconds: 30,
        from: 10,
        to: 70,
        seed,
        noise: 0.1,
        amplitude: (_, shaft) => (shaft / 40) ** 2,
      });
      expect(findResonances(trackOrders(recording, { orders: [1, 2], speed }))).toEqual([]);
    }
  });
});

describe('trackOrders refuses', () => {
  const { recording, speed } = makeRun({
    sampleRate: 100,
    seconds: 10,
    from: 10,
    to: 20,
    amplitude: () => 1,
  });
  it.each<[Partial<TrackOptions>, string]>([
    [{ orders: [] }, 'trackOrders: orders must be a list of one order or more, got a list of 0'],
    [{ orders: [1, 0] }, 'trackOrders: orders[1] must be a finite number greater than 0, got 0'],
    [{ orders: [2, 2] }, 'trackOrders: orders[1] must be unlike the others, got 2'],
    [{ range: [9, 3] }, 'trackOrders: range must be two rising finite numbers greater than 0, got "9 and 3"'],
    [{ speed: [] }, 'trackOrders: speed must be a list of one point or more, got a list of 0'],
    [
      { speed: [{ time: 0, speed: 0 }] },
      'trackOrders: speed[0].speed must be a finite number greater than 0, got 0',
    ],
    [
      { speed: [...speed, ...speed] },
      'trackOrders: speed[2].time must be later than the point before, got 0',
    ],
    [{ speed: [{ time: 0, speed: 1 }] }, 'trackOrders: recording must be 8 turns long or more, got 1.6'],
  ])('%j', (options, message) => {
    expect(() => trackOrders(recording, { orders: [1], ...options })).toThrow(new RangeError(message));
  });
});
