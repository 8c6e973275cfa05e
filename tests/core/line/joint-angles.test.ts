import { jointAngles, shaftDirection } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf, towards } from './line-of.js';

const angleOf = (from: object, to: object): number => jointAngles(lineOf([from, to]))[0]!;

describe('jointAngles', () => {
  /*
   * Compound angle β = arctan √(tan²βv + tan²βh). The first: a coupling maker's manual prints 6°,
   * https://manualslib.fr/manual/109398/Vetus-Vdr-2-10-25.html?page=12; 15 and 7: 16.5° by graph,
   * https://baileymorris.co.uk/changecurrency/1?returnUrl=%2fcomplete-compensation-for-uneven-movement-by-the-second-joint.
   * The digits are the formula's, worked out with numpy.
   */
  it.each([
    [2.5, 5.5, 6.0352],
    [15, 7, 16.4225],
    [-11.5, 12, 16.3956],
    [3, 4, 4.9942],
    [10, 10, 14.0019],
    [20, 15, 24.3212],
  ])('of %f° up and %f° sideways, as projected on the two views, is %f°', (up, side, expected) => {
    const to = towards(1, Math.tan(side * DEGREE), Math.tan(up * DEGREE));
    expect(Math.abs(angleOf({}, to) / DEGREE - expected)).toBeLessThan(1e-4);
  });

  it('agrees with the tangent formula to all digits', () => {
    const to = towards(1, Math.tan(7 * DEGREE), Math.tan(15 * DEGREE));
    const expected = Math.atan(Math.hypot(Math.tan(15 * DEGREE), Math.tan(7 * DEGREE)));
    expect(Math.abs(angleOf({}, to) / expected - 1)).toBeLessThan(1e-14);
  });

  // On a sphere two near directions lie √(Δε² + cos²ε Δψ²) apart, to a share of Δ²: derived.
  it.each([1e-3, 1e-6, 1e-9, 1e-12])('keeps its digits at %f rad, in any plane', (small) => {
    const from = { elevation: 0.25, plan: 1 };
    const to = { elevation: 0.25 + 3 * small, plan: 1 + 4 * small };
    const rise = to.elevation - from.elevation;
    const turn = (to.plan - from.plan) * Math.cos((from.elevation + to.elevation) / 2);
    const tolerance = 1e-9 + 10 * small * small;
    expect(Math.abs(angleOf(from, to) / Math.hypot(rise, turn) - 1)).toBeLessThan(tolerance);
  });

  it('is the arc cosine of the scalar product where that is well conditioned', () => {
    const angle = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(angle, angle, angle, angle), ([elevation, plan, elevation2, plan2]) => {
        const from = { elevation, plan };
        const to = { elevation: elevation2, plan: plan2 };
        const [a, b, c] = shaftDirection(from);
        const [d, e, f] = shaftDirection(to);
        const cosine = a * d + b * e + c * f;
        fc.pre(cosine > 0.01 && cosine < 0.99);
        expect(Math.abs(angleOf(from, to) - Math.acos(cosine))).toBeLessThan(1e-13);
      }),
    );
  });

  it('is the same from either side, and under a turn of the whole line in plan', () => {
    const [from, to] = [{ elevation: 0.1, plan: 0.4 }, { elevation: -0.2, plan: 0.1 }]; // prettier-ignore
    const turned = [from, to].map(({ elevation, plan }) => ({ elevation, plan: plan + 2 }));
    expect(Math.abs(angleOf(to, from) - angleOf(from, to))).toBeLessThan(1e-16);
    expect(Math.abs(angleOf(turned[0]!, turned[1]!) - angleOf(from, to))).toBeLessThan(1e-15);
  });

  it('gives one for each joint, and none for one shaft', () => {
    expect(jointAngles(lineOf([{}, { elevation: 0.1 }, { elevation: 0.1 }, { elevation: 0.3 }]))).toEqual([
      0.1,
      0,
      expect.closeTo(0.2, 15),
    ]);
    expect(jointAngles(lineOf([{}]))).toEqual([]);
  });

  it('is 0 between vertical shafts whatever their plan angles', () => {
    expect(angleOf({ elevation: Math.PI / 2 }, { elevation: Math.PI / 2, plan: 2 })).toBeLessThan(1e-15);
  });

  it('refuses a line that lacks a shaft', () => {
    const line = lineOf([{}, { elevation: 0.1 }]);
    expect(() => jointAngles({ ...line, shafts: line.shafts.slice(1) })).toThrow(
      new RangeError('jointAngles: line.shafts must be one more than the joints, got 1'),
    );
  });
});
