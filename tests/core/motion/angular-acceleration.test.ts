import { angularAcceleration, equivalentJoint, speedFluctuation, speedRatio } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf } from '../line/line-of.js';
import { single, turning } from './turning.js';

describe('angularAcceleration', () => {
  /*
   * Peak of α over ω₁² and where, with the driving pin counted from the plane of the shafts: exact root tabled with
   * numpy to seven digits; derived. Here the pin counts from the normal of that plane, a quarter turn on, and where the output gains.
   */
  it.each([
    [1, 0.0003046329, 44.9913],
    [2, 0.001218718, 44.9651],
    [3, 0.002742816, 44.9214],
    [5, 0.00762525, 44.7816],
    [7, 0.01496451, 44.5714],
    [10, 0.03062603, 44.1232],
    [15, 0.06943364, 43.0176],
    [20, 0.1249656, 41.4587],
    [25, 0.1989655, 39.451],
    [30, 0.2945711, 37.0215],
    [40, 0.5762153, 31.159],
    [45, 0.7872003, 27.9184],
  ])('agrees with the table at %i°', (angle, peak, where) => {
    const got = angularAcceleration(single(angle), { speed: 1 });
    expect(Math.abs(got.peak / peak - 1)).toBeLessThan(5e-7);
    expect(Math.abs(90 - got.inputAngle / DEGREE - where)).toBeLessThan(6e-5);
    expect(Math.abs(got.equivalentAngle / DEGREE - angle)).toBeLessThan(1e-12);
  });

  // Khurmi and Gupta, "Theory of Machines": 20°, 1500 rpm, 12 kg on 0.1 m: 3090 rad/s² and 371 N·m there, rounded on the
  // way; 3083.4 exactly. From memory.
  it('gives a textbook answer', () => {
    const { peak } = angularAcceleration(single(20), { speed: 50 * Math.PI });
    expect(Math.abs(peak - 3083.402)).toBeLessThan(6e-4);
    expect(Math.abs(peak / 3090 - 1)).toBeLessThan(0.003);
  });

  // Amplitude of order 2n over ω₁²: 4n kⁿ, k = tan²(β/2): twice differentiated series of the output angle; derived.
  it('has orders 2, 4, 6 of the twice differentiated output angle', () => {
    const { orders } = angularAcceleration(single(30), { speed: 2 });
    const angle = [0.07179677, 0.0025773881, 0.00012336543];
    angle.forEach((amplitude, i) => {
      const order = 2 * (i + 1);
      expect(orders[i]!.order).toBe(order);
      expect(Math.abs(orders[i]!.amplitude / (amplitude * order ** 2 * 4) - 1)).toBeLessThan(1e-7);
    });
  });

  it.each(turning.chains.map((chain, i) => [i, chain] as const))(
    'agrees for every shaft of chain %i with pins followed in space',
    (i, { shafts, joints }) => {
      const got = angularAcceleration(lineOf(shafts, joints), { speed: 1 });
      expect(got.shafts).toHaveLength(shafts.length);
      turning.accelerations[i]!.forEach(({ peak, inputAngle }, shaft) => {
        const found = got.shafts[shaft]!;
        expect(Math.abs(found.peak - peak)).toBeLessThan(1e-9 * Math.max(1, peak));
        // The top is flat: its place is known to the root of what its height is.
        if (peak > 1e-4) expect(Math.abs(Math.sin(found.inputAngle - inputAngle))).toBeLessThan(2e-5);
      });
      expect(got.peak).toBe(got.shafts.at(-1)!.peak);
    },
  );

  it('is the steepest rise of the speed ratio, and no input angle gives more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1.4, noNaN: true }),
        fc.double({ min: -1.4, max: 1.4, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        (first, second, yokeTwist, angle) => {
          const line = lineOf([{}, { plan: first, yokeTwist }, { plan: first + second }]);
          const { peak, inputAngle } = angularAcceleration(line, { speed: 1 });
          const width = 1e-4 * equivalentJoint(line).cosine;
          const rise = (at: number) => {
            const [low, high] = speedRatio(line, [at - width, at + width]);
            return (high! - low!) / (2 * width);
          };
          const { max } = speedFluctuation(line);
          expect(Math.abs(rise(inputAngle) - peak)).toBeLessThan(1e-6 * Math.max(peak, max));
          expect(rise(angle)).toBeLessThan(peak + 1e-6 * Math.max(peak, max));
        },
      ),
    );
  });

  it('swings the inner shaft where the whole line runs evenly', () => {
    const line = lineOf([{}, { elevation: 15 * DEGREE }, {}]);
    const got = angularAcceleration(line, { speed: 100 });
    expect(got.peak).toBeLessThan(1e-9);
    expect(Math.abs(got.shafts[1]!.peak / 694.3364 - 1)).toBeLessThan(1e-6);
    expect(got.joints.map(({ joint }) => joint)).toEqual([0, 1]);
    got.joints.forEach(({ peak }) => {
      expect(Math.abs(peak / 694.3364 - 1)).toBeLessThan(1e-6);
    });
  });

  it('is sin²β at small angles, to the last digit, and stays finite close to 90°', () => {
    for (const angle of [1e-7, 1e-5]) {
      const got = angularAcceleration(single(angle / DEGREE), { speed: 1 });
      expect(Math.abs(got.peak / angle ** 2 - 1)).toBeLessThan(1e-9);
    }
    // Near 90° the steepest place is where tan p = 1/(√3 cos β) off the fastest, of height 9/(8√3 cos² β) · … : the
    // ratio is then C/(x² + C²), x from the fastest place, whose steepest slope is 9/(8√3 C²). Derived.
    const cosine = 1e-4;
    const got = angularAcceleration(single(Math.acos(cosine) / DEGREE), { speed: 1 });
    expect(Math.abs((got.peak * 8 * Math.sqrt(3) * cosine ** 2) / 9 - 1)).toBeLessThan(1e-6);
  });

  it('is nothing for a straight line, and grows with the square of speed', () => {
    expect(angularAcceleration(lineOf([{}, {}]), { speed: 10 }).peak).toBe(0);
    const [slow, fast] = [10, 30].map((speed) => angularAcceleration(single(12), { speed }).peak);
    expect(Math.abs(fast! / slow! - 9)).toBeLessThan(1e-12);
  });

  it('leaves rigid and flexible joints out', () => {
    const line = lineOf([{}, {}, { elevation: 0.2 }, { elevation: 0.3 }], ['rigid', 'universal', 'flexible']);
    const got = angularAcceleration(line, { speed: 1 });
    expect(got.joints.map(({ joint }) => joint)).toEqual([1]);
    expect(got.shafts[1]!.peak).toBe(0);
    expect(got.shafts[3]!.peak).toBe(got.shafts[2]!.peak);
  });

  it.each([0, -1, NaN, Infinity])('refuses a speed of %f', (speed) => {
    expect(() => angularAcceleration(single(10), { speed })).toThrow(
      new RangeError(
        `angularAcceleration: speed must be a finite number greater than 0, got ${String(speed)}`,
      ),
    );
  });
});
