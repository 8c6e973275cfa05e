import { describe, expect, it } from 'vitest';
import { orderAmplitudes, type OrderInput } from '@sternline/core';
import { binomialBounds } from '../../support/binomial.js';
import { makeRecording } from '../../support/recordings.js';

const TURN = 2 * Math.PI;

describe('planted orders', () => {
  /** The speed given is wrong by up to 1.5 %; one standard error covers about 68 in 100, four standard deviations allowed. */
  it.each([
    { sampleRate: 100, seconds: 10, shaft: 21.13, given: 1.01 },
    { sampleRate: 200, seconds: 30, shaft: 33, given: 0.985 },
    { sampleRate: 4000, seconds: 4, shaft: 61.7, given: 1 },
  ])(
    '$shaft Hz at $sampleRate Hz: amplitude within its stated error',
    ({ sampleRate, seconds, shaft, given }) => {
      const trials = 250;
      const covered = [0, 0];
      for (let seed = 0; seed < trials; seed++) {
        const components = [
          { amplitude: 1, frequency: shaft, phase: seed },
          { amplitude: 0.5, frequency: 2 * shaft, phase: 2 * seed },
        ];
        const recording = makeRecording({
          sampleRate,
          seconds,
          channels: [{ components, offset: 9.8 }],
          noise: 0.7,
          seed,
        });
        const { orders, speed, speedFrom } = orderAmplitudes({
          recording,
          speed: TURN * shaft * given,
          orders: [1, 2, 3],
        });
        expect(speedFrom).toBe('recording');
        expect(Math.abs(speed / (TURN * shaft) - 1)).toBeLessThan(0.002);
        [1, 0.5].forEach((actual, i) => {
          const { amplitude, amplitudeError, seen } = orders[i]!.channels[0]!;
          expect(seen).toBe(true);
          covered[i]! += Number(Math.abs(amplitude - actual) < amplitudeError);
        });
      }
      const [least, most] = binomialBounds(trials, 0.683);
      for (const count of covered) {
        expect(count).toBeGreaterThan(least);
        expect(count).toBeLessThan(most);
      }
    },
  );

  it('the first order is not lost to a stronger mains line in the range of the search', () => {
    const components = [
      { amplitude: 0.5, frequency: 24.6 },
      { amplitude: 0.4, frequency: 49.2 },
      { amplitude: 0.6, frequency: 50 },
    ];
    const recording = makeRecording({
      sampleRate: 200,
      seconds: 30,
      channels: [{ components }],
      noise: 0.1,
      seed: 8,
    });
    const { orders } = orderAmplitudes({ recording, speed: TURN * 24.6, orders: [1, 2] });
    const [first, second] = orders.map(({ channels }) => channels[0]!);
    expect(Math.abs(first!.amplitude - 0.5)).toBeLessThan(0.02);
    expect(Math.abs(second!.amplitude - 0.4)).toBeLessThan(0.02);
  });

  it('the flank of a stronger line beside an order is not that order', () => {
    const recording = makeRecording({
      sampleRate: 200,
      seconds: 30,
      channels: [{ components: [{ amplitude: 5, frequency: 51 }] }],
      noise: 0.05,
      seed: 9,
    });
    const { orders } = orderAmplitudes({ recording, speed: TURN * 25, orders: [1, 2], tolerance: 0 });
    expect(orders.map(({ channels }) => channels[0]!.seen)).toEqual([false, false]);
  });
});

describe('folding', () => {
  it('shows a folded order where it appears, and says so', () => {
    const components = [{ amplitude: 1, frequency: 40 }];
    const recording = makeRecording({
      sampleRate: 60,
      seconds: 20,
      channels: [{ components }],
      noise: 0.1,
      seed: 2,
    });
    const [first] = orderAmplitudes({ recording, speed: TURN * 40, orders: [1] }).orders;
    expect(first).toMatchObject({ folded: true, reachable: true });
    expect(first!.apparentFrequency).toBeCloseTo(20, 2);
    expect(Math.abs(first!.channels[0]!.amplitude - 1)).toBeLessThan(0.05);
  });

  /** derived: 66.7 and 133.3 Hz at 100 Hz both show at 33.3 Hz; 200 Hz shows at 0. */
  it('names the orders that cannot be told apart, and those that cannot be seen', () => {
    const recording = makeRecording({
      sampleRate: 100,
      seconds: 20,
      channels: [{ offset: 9.8 }],
      noise: 0.1,
      seed: 2,
    });
    const { orders } = orderAmplitudes({ recording, speed: (TURN * 200) / 3, orders: [1, 2, 3] });
    expect(orders.map(({ inseparableFrom }) => inseparableFrom)).toEqual([[2], [1], []]);
    expect(orders.map(({ reachable }) => reachable)).toEqual([true, true, false]);
    expect(orders[2]!.channels[0]!.seen).toBe(false);
  });
});

describe('half the sampling rate', () => {
  /** Beside half the rate a line and its image lie on each other, so its size cannot be read. */
  it('an order there is not claimed', () => {
    const components = [{ amplitude: 1, frequency: 50, phase: 1 }];
    const recording = makeRecording({
      sampleRate: 100,
      seconds: 15,
      channels: [{ components }],
      noise: 0.1,
      seed: 3,
    });
    const [first] = orderAmplitudes({ recording, speed: TURN * 50, orders: [1], tolerance: 0.002 }).orders;
    expect(first).toMatchObject({ reachable: false });
    expect(first!.channels[0]).toMatchObject({ seen: false, amplitude: 0 });
  });
});

describe('noise alone', () => {
  it.each([
    ['white', 100, 10, 21],
    ['red', 200, 20, 33],
  ] as const)('%s at %d Hz: no order in 99 of 100 recordings', (colour, sampleRate, seconds, shaft) => {
    let alarms = 0;
    for (let seed = 0; seed < 400; seed++) {
      const recording = makeRecording({
        sampleRate,
        seconds,
        channels: [{}, {}, {}],
        noise: 1,
        seed,
        colour,
      });
      const { orders, speedFrom } = orderAmplitudes({
        recording,
        speed: TURN * shaft,
        orders: [0.5, 1, 1.5, 2, 3, 4],
      });
      const seen = orders.some(({ channels }) => channels.some((channel) => channel.seen));
      expect(speedFrom).toBe(seen ? 'recording' : 'given');
      alarms += Number(seen);
    }
    expect(alarms).toBeLessThanOrEqual(4);
  });
});

describe('gaps', () => {
  it('what spans a gap is left out', () => {
    const components = [{ amplitude: 1, frequency: 21 }];
    const made = { sampleRate: 100, seconds: 20, channels: [{ components }], noise: 0.2, seed: 4 };
    const recording = makeRecording({ ...made, gaps: [{ start: 1000, count: 40 }] });
    recording.channels[0]!.samples.fill(50, 1000, 1040);
    const { orders } = orderAmplitudes({ recording, speed: TURN * 21, orders: [1] });
    const { amplitude, amplitudeError } = orders[0]!.channels[0]!;
    expect(Math.abs(amplitude - 1)).toBeLessThan(4 * amplitudeError);
  });
});

describe('orderAmplitudes refuses', () => {
  const recording = makeRecording({ sampleRate: 100, seconds: 5, channels: [{}], noise: 1, seed: 1 });
  it.each<[Partial<OrderInput>, string]>([
    [{ speed: 0 }, 'orderAmplitudes: speed must be a finite number greater than 0, got 0'],
    [{ orders: [1, -2] }, 'orderAmplitudes: orders[1] must be a finite number greater than 0, got -2'],
    [{ tolerance: 0.5 }, 'orderAmplitudes: tolerance must be from 0 to 0.2, got 0.5'],
    [{ falseAlarmRate: 1 }, 'orderAmplitudes: falseAlarmRate must be between 0 and 1, got 1'],
  ])('%j', (part, message) => {
    expect(() => orderAmplitudes({ recording, speed: 100, orders: [1], ...part })).toThrow(
      new RangeError(message),
    );
  });
});
