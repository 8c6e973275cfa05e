import { outputAngle, speedRatio } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf } from '../line/line-of.js';
import { chains } from './chains.js';

describe('outputAngle', () => {
  it.each(chains.map((chain, index) => [index, chain] as const))(
    'agrees with loop closure: chain %i',
    (_, chain) => {
      const angles = outputAngle(lineOf(chain.shafts, chain.joints), chain.inputAngles);
      chain.outputAngle.forEach((expected, i) => {
        expect(Math.abs(angles[i]! - expected)).toBeLessThan(1e-13);
      });
    },
  );

  // tan θ2 = cos β tan θ1 with the pin starting normal to the plane: the printed law, shifted by 90°,
  // https://tickerdossier.com/wiki/u-joint
  it('follows the printed law of one joint', () => {
    const beta = 35 * DEGREE;
    const [angle] = outputAngle(lineOf([{}, { elevation: beta }]), [1]);
    expect(Math.abs(angle! - Math.atan(Math.cos(beta) * Math.tan(1)))).toBeLessThan(1e-15 * 4);
  });

  // Largest lead of one joint: sin Δ = tan²(β/2), at tan θ1 = √cos β from the pin in the plane; derived, and in the
  // table of twist errors: 10° gives 0.43856°, 30° gives 4.11719°.
  it.each([
    [10, 0.43856],
    [30, 4.11719],
    [45, 9.87928],
  ])('leads by at most the tabled angle at %i°', (angle, expected) => {
    const beta = angle * DEGREE;
    const line = lineOf([{}, { plan: beta }]);
    const theta = Math.atan(1 / Math.sqrt(Math.cos(beta)));
    const lag = theta - outputAngle(line, [theta])[0]!;
    expect(Math.abs(lag / DEGREE - expected)).toBeLessThan(6e-6);
    expect(Math.abs(Math.sin(lag) - Math.tan(beta / 2) ** 2)).toBeLessThan(1e-15 * 4);
  });

  it('is 0 at 0 and a whole number of half turns for as many in', () => {
    const line = lineOf([{}, { elevation: 0.6, yokeTwist: 0.3 }, { plan: 0.5 }]);
    const angles = outputAngle(line, [0, Math.PI, -3 * Math.PI, 200 * Math.PI]);
    expect(angles[0]).toBe(0);
    expect(Math.abs(angles[1]! - Math.PI)).toBeLessThan(1e-14);
    expect(Math.abs(angles[2]! + 3 * Math.PI)).toBeLessThan(1e-14);
    expect(Math.abs(angles[3]! - 200 * Math.PI)).toBeLessThan(1e-12);
  });

  it('has speedRatio for its derivative', () => {
    const line = lineOf([
      {},
      { elevation: 0.6, yokeTwist: 0.3 },
      { plan: 0.5, yokeTwist: 1 },
      { elevation: -0.4 },
    ]);
    const h = 1e-3;
    for (const angle of [-4, 0, 0.2, 1, 2, 9]) {
      const [a, b, c, d] = outputAngle(line, [angle - 2 * h, angle - h, angle + h, angle + 2 * h]);
      const slope = (a! - 8 * b! + 8 * c! - d!) / (12 * h);
      expect(Math.abs(slope - speedRatio(line, [angle])[0]!)).toBeLessThan(1e-9);
    }
  });

  it('refuses an angle that is not finite', () => {
    expect(() => outputAngle(lineOf([{}, { plan: 0.1 }]), [Infinity])).toThrow(
      new RangeError('outputAngle: inputAngles[0] must be a finite angle in rad, got Infinity'),
    );
  });
});
