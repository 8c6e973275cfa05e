import { torqueRatios } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf } from '../line/line-of.js';
import { single } from './turning.js';

describe('torqueRatios', () => {
  // 10 N·m through 10°: 9.848078 to 10.154266 N·m; limits T cos β and T/cos β by
  // http://www.elbe-group.de/technik/elbe_techan2_e.htm, figures derived.
  it('gives the range of one joint', () => {
    const [row] = torqueRatios(single(10));
    expect(Math.abs(10 * row!.least - 9.848078)).toBeLessThan(6e-7);
    expect(Math.abs(10 * row!.greatest - 10.154266)).toBeLessThan(6e-7);
    expect([row!.leastOfMotor, row!.greatestOfMotor].map((x) => x.toFixed(12))).toEqual(
      [row!.least, row!.greatest].map((x) => x.toFixed(12)),
    );
  });

  // Ranges of the ratio of two joints in space, by a simulation with vectors; derived.
  it.each([
    [10, 8, 0, 0.994486, 1.005545],
    [10, 10, 90, 0.969846, 1.031091],
  ])('gives the range behind %i° and %i°, phase %i°', (first, second, twist, least, greatest) => {
    const line = lineOf([
      {},
      { elevation: first * DEGREE, yokeTwist: twist * DEGREE },
      { elevation: (first - second) * DEGREE },
    ]);
    const rows = torqueRatios(line);
    expect(Math.abs(rows[1]!.leastOfMotor - least)).toBeLessThan(6e-7);
    expect(Math.abs(rows[1]!.greatestOfMotor - greatest)).toBeLessThan(6e-7);
    expect(Math.abs(rows[1]!.least - Math.cos(second * DEGREE))).toBeLessThan(1e-12);
  });

  it('leaves the torque alone through rigid and flexible joints', () => {
    const rows = torqueRatios(lineOf([{}, {}, { plan: 0.1 }], ['rigid', 'flexible']));
    expect(rows).toEqual(
      [0, 1].map((joint) => ({ joint, least: 1, greatest: 1, leastOfMotor: 1, greatestOfMotor: 1 })),
    );
  });

  it('refuses a joint at a right angle', () => {
    const line = lineOf([{}, { plan: 1 }]);
    const bent = { ...line, shafts: [line.shafts[0]!, { ...line.shafts[1]!, plan: 2 }] };
    expect(() => torqueRatios(bent)).toThrow(
      new RangeError('equivalentJoint: angle of joints[0] must be below π/2 rad (90°), got 2'),
    );
  });
});
