import { equivalentJoint, jointAngles, speedFluctuation, speedRatio } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf, towards, type Turn } from '../line/line-of.js';
import { chains } from './chains.js';

const single = (angle: number) => speedFluctuation(lineOf([{}, { elevation: angle * DEGREE }]));
/** A Z of two joints in one plane, the inner yoke turned by so much. */
const double = (first: number, second: number, twist: number) =>
  lineOf([
    {},
    { elevation: first * DEGREE, yokeTwist: twist * DEGREE },
    { elevation: (first - second) * DEGREE },
  ]);

describe('speedFluctuation of one joint', () => {
  /*
   * Degree of fluctuation tan β sin β: http://www.gwb-essen.de/fahrzeugbau/english/seite_20.html. Least and greatest
   * ratio, second and fourth order of the output angle: the closed forms and the series of the output angle
   * Σ kⁿ/n sin 2nθ, tabled with numpy; derived. Differentiated, an order 2n of angle is 2n times as much of ratio.
   */
  it.each([
    [1, 0.999848, 1.000152, 0.0305, 7.61582e-5, 2.9e-9],
    [2, 0.999391, 1.00061, 0.1219, 3.04679e-4, 4.6415e-8],
    [3, 0.99863, 1.001372, 0.2743, 6.85702e-4, 2.3509e-7],
    [5, 0.996195, 1.00382, 0.7625, 1.90628e-3, 1.8169e-6],
    [7, 0.992546, 1.00751, 1.4964, 3.74087e-3, 6.997e-6],
    [10, 0.984808, 1.015427, 3.0619, 7.65427e-3, 2.9294e-5],
    [15, 0.965926, 1.035276, 6.935, 1.73324e-2, 1.5021e-4],
    [20, 0.939693, 1.064178, 12.4485, 3.10912e-2, 4.8333e-4],
    [25, 0.906308, 1.103378, 19.707, 4.91485e-2, 1.2078e-3],
    [30, 0.866025, 1.154701, 28.8675, 7.17968e-2, 2.5774e-3],
    [40, 0.766044, 1.305407, 53.9363, 1.32474e-1, 8.7747e-3],
    [45, 0.707107, 1.414214, 70.7107, 1.71573e-1, 1.4719e-2],
  ])('agrees with the table at %i°', (angle, min, max, percent, second, fourth) => {
    const got = single(angle);
    expect(Math.abs(got.min - min)).toBeLessThan(5.1e-7);
    expect(Math.abs(got.max - max)).toBeLessThan(5.1e-7);
    expect(Math.abs(100 * got.degree - percent)).toBeLessThan(5.1e-5);
    expect(got.orders.map(({ order }) => order)).toEqual([2, 4, 6, 8]);
    expect(Math.abs(got.orders[0]!.amplitude / (2 * second) - 1)).toBeLessThan(5e-6);
    expect(Math.abs(got.orders[1]!.amplitude / (4 * fourth) - 1)).toBeLessThan(5e-5);
    expect(Math.abs(got.angleOrders[0]!.amplitude / second - 1)).toBeLessThan(5e-6);
    expect(Math.abs(got.angleOrders[1]!.amplitude / fourth - 1)).toBeLessThan(5e-5);
  });

  // 1200 rpm, 100 rpm in all: cos β 0.9592, 1251 and 1151 rpm (the angle printed there is a misprint of 16.42°),
  // https://askfilo.com/user-question-answers-smart-solutions/two-shafts-are-connected-by-a-universal-joint-the-driving-3431373033373734
  it('gives the printed worked example', () => {
    const got = single(Math.acos(0.9592) / DEGREE);
    expect(Math.abs(1200 * got.max - 1251)).toBeLessThan(0.5);
    expect(Math.abs(1200 * got.min - 1151)).toBeLessThan(0.5);
  });

  // Khurmi and Gupta, "Theory of Machines", Hooke's joint, ±6 %: 19.64°. From memory.
  it('gives a textbook answer', () => {
    expect(Math.abs(single(19.6442).degree - 0.12)).toBeLessThan(1e-6);
  });

  it.each([1e-6, 1e-3, 0.1, 1, 1.4, 1.57])('keeps the digits of sin β tan β at %f rad', (angle) => {
    const { min, max, degree } = single(angle / DEGREE);
    const expected = Math.sin(angle) * Math.tan(angle);
    expect(Math.abs(degree / expected - 1)).toBeLessThan(1e-12);
    expect(Math.abs(min / Math.cos(angle) - 1)).toBeLessThan(1e-12);
    expect(Math.abs(max * Math.cos(angle) - 1)).toBeLessThan(1e-12);
  });

  it('is nothing for a straight line and for one shaft', () => {
    for (const turns of [[{}], [{}, {}], [{ plan: 1 }, { plan: 1 }, { plan: 1 }]]) {
      const { min, max, degree, orders } = speedFluctuation(lineOf(turns));
      expect([min, max, degree, ...orders.map(({ amplitude }) => amplitude)]).toEqual([1, 1, 0, 0, 0, 0, 0]);
    }
  });
});

describe('speedFluctuation in orders of the output angle', () => {
  // Sixth order, k³/3 rad: Fourier transform of the exact law with numpy; derived.
  it.each([
    [1, 1.4724112e-13],
    [10, 1.4948219e-7],
    [20, 1.0018239e-5],
    [30, 1.2336543e-4],
    [45, 1.6835446e-3],
  ])('has the sixth at %i°', (angle, sixth) => {
    const { angleOrders } = single(angle);
    expect(angleOrders.map(({ order }) => order)).toEqual([2, 4, 6, 8]);
    expect(Math.abs(angleOrders[2]!.amplitude / sixth - 1)).toBeLessThan(1e-7);
  });

  it('is the lead of the output angle when summed', () => {
    const line = lineOf([{}, { elevation: 0.5 }]);
    const { angleOrders } = speedFluctuation(line);
    for (const angle of [0.2, 1, 2.3]) {
      const lead = angleOrders.reduce(
        (sum, { order, amplitude }) => sum + (-1) ** (order / 2) * amplitude * Math.sin(order * angle),
        0,
      );
      // tan θ₂ = cos β tan θ₁; the fifth term is below k⁵/5.
      const exact = Math.atan2(Math.cos(0.5) * Math.sin(angle), Math.cos(angle)) - angle;
      expect(Math.abs(lead - exact)).toBeLessThan(Math.tan(0.25) ** 10 / 5 / (1 - Math.tan(0.25) ** 2));
    }
  });
});

describe('speedFluctuation of two joints', () => {
  /*
   * Unequal or out of phase, angle amplitude of the second order and range of the ratio: a simulation with vectors
   * in space, its orders by FFT; derived. In phase the range is cos β₁/cos β₂ to its inverse.
   */
  it.each([
    [10, 8, 0, 2.76461e-3, 0.994486, 1.005545],
    [10, 5, 0, 5.74807e-3, 0.98857, 1.011563],
    [6, 4, 0, 1.52712e-3, 0.99695, 1.003059],
    [10, 10, 5, 1.3343e-3, 0.997335, 1.002672],
    [10, 10, 10, 2.65845e-3, 0.994697, 1.005331],
    [10, 10, 90, 1.53076e-2, 0.969846, 1.031091],
    [20, 20, 5, 5.42472e-3, 0.989209, 1.010909],
  ])('agrees with the table at %i° and %i°, phase %i°', (first, second, twist, amplitude, min, max) => {
    const got = speedFluctuation(double(first, second, twist));
    expect(Math.abs(got.orders[0]!.amplitude / (2 * amplitude) - 1)).toBeLessThan(5e-6);
    expect(Math.abs(got.min - min)).toBeLessThan(6e-7);
    expect(Math.abs(got.max - max)).toBeLessThan(6e-7);
  });

  // 3-D checks, same source: angles of both joints, angle between their planes, second order with the inner yokes in
  // line and turned by that angle.
  it.each([
    [
      'A',
      towards(1, 0.05, 0.1),
      towards(1, 0.15, 0.02),
      [6.37937, 7.27239],
      -102.02205,
      6.990015e-3,
      9.32853e-4,
    ],
    ['B', towards(1, 0.1, 0), towards(1, 0.1, 0.1), [5.71059, 5.68244], 90, 4.950616e-3, 2.45086e-5],
  ])('agrees with the layout %s in space', (_, middle, last, angles, between, inLine, turned) => {
    const line = (twist: number) => lineOf([{}, { ...middle, yokeTwist: twist * DEGREE }, last]);
    jointAngles(line(0)).forEach((angle, i) => {
      expect(Math.abs(angle / DEGREE - angles[i]!)).toBeLessThan(6e-6);
    });
    expect(Math.abs(speedFluctuation(line(0)).orders[0]!.amplitude / (2 * inLine) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(speedFluctuation(line(between)).orders[0]!.amplitude / (2 * turned) - 1)).toBeLessThan(
      1e-5,
    );
  });

  it('cancels with equal angles in phase', () => {
    for (const angle of [1e-6, 5, 20, 45, 70]) {
      expect(speedFluctuation(double(angle, angle, 0)).degree).toBeLessThan(1e-12);
      expect(speedFluctuation(double(angle, angle, 180)).degree).toBeLessThan(1e-12);
    }
  });

  // Equal angles with a phase error ψ: about 2k sin ψ of angle; derived, good to a share of k.
  it.each([0.5, 2, 10])('shows what a phase error of %f° costs', (error) => {
    const k = Math.tan(6 * DEGREE) ** 2;
    const amplitude = speedFluctuation(double(12, 12, error)).orders[0]!.amplitude / 2;
    expect(Math.abs(amplitude / (2 * k * Math.sin(error * DEGREE)) - 1)).toBeLessThan(k);
  });
});

describe('speedFluctuation of a chain', () => {
  it.each(chains.map((chain, index) => [index, chain] as const))(
    'agrees with extremes and orders found numerically: chain %i',
    (_, chain) => {
      const got = speedFluctuation(lineOf(chain.shafts, chain.joints));
      expect(Math.abs(got.min / chain.min - 1)).toBeLessThan(1e-10);
      expect(Math.abs(got.max / chain.max - 1)).toBeLessThan(1e-10);
      chain.orders.forEach((expected, i) => {
        expect(Math.abs(got.orders[i]!.amplitude - expected)).toBeLessThan(1e-12);
      });
    },
  );

  const shafts = fc.array(
    fc.record({
      elevation: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
      plan: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
      yokeTwist: fc.double({ min: -3, max: 3, noNaN: true }),
    }),
    { minLength: 2, maxLength: 9 },
  );

  it('bounds the ratio at every angle, and is met by it', () => {
    fc.assert(
      fc.property(shafts, (turns) => {
        const line = lineOf(turns);
        const { min, max, degree } = speedFluctuation(line);
        const { phase } = equivalentJoint(line);
        const some = Array.from({ length: 101 }, (_, i) => i / 10);
        const ratios = speedRatio(line, [...some, phase, phase + Math.PI / 2]);
        expect(Math.min(...ratios)).toBeGreaterThanOrEqual(min * (1 - 1e-13));
        expect(Math.max(...ratios)).toBeLessThanOrEqual(max * (1 + 1e-13));
        expect(Math.abs(ratios[101]! / min - 1)).toBeLessThan(1e-12);
        expect(Math.abs(ratios[102]! / max - 1)).toBeLessThan(1e-12);
        expect(Math.abs(degree - (max - min))).toBeLessThan(1e-13 * max);
      }),
    );
  });

  /*
   * Resultant of several joints at small angles: squares of the angles added as phasors of twice their phase, as in
   * joint makers' guides for planes and yokes at right angles (http://www.elbe-group.de/technik/elbe_techan3_u.htm).
   * Shafts in one plane make every joint plane the same, so that phases are sums of twists and quarter turns.
   */
  it('tends to the phasor sum of squared angles', () => {
    const angle = fc.double({ min: 0.2, max: 1, noNaN: true });
    const twist = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(angle, twist), { minLength: 1, maxLength: 8 }), (joints) => {
        const scale = 1e-3;
        let elevation = 0;
        let phase = 0;
        const sum = [0, 0];
        const turns: Turn[] = [{}];
        for (const [size, yokeTwist] of joints) {
          elevation += size * scale;
          turns.push({ elevation, yokeTwist });
          sum[0]! += size ** 2 * Math.cos(2 * phase);
          sum[1]! += size ** 2 * Math.sin(2 * phase);
          phase += yokeTwist + Math.PI / 2;
        }
        const squared = (equivalentJoint(lineOf(turns)).angle / scale) ** 2;
        expect(Math.abs(squared - Math.hypot(...sum))).toBeLessThan(100 * scale ** 2);
      }),
    );
  });

  it('is the same from the other end, with the twists seen from there', () => {
    fc.assert(
      fc.property(shafts, (turns) => {
        const back = turns
          .map(({ elevation, plan, yokeTwist }) => ({
            elevation: -elevation,
            plan: plan + Math.PI,
            yokeTwist,
          }))
          .reverse();
        const one = speedFluctuation(lineOf(turns));
        expect(Math.abs(speedFluctuation(lineOf(back)).max / one.max - 1)).toBeLessThan(1e-9);
      }),
    );
  });
});
