import { equivalentJoint } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { DEGREE, lineOf } from '../line/line-of.js';

const planar = (first: number, second: number, twist: number) =>
  equivalentJoint(
    lineOf([{}, { plan: first * DEGREE, yokeTwist: twist * DEGREE }, { plan: (first - second) * DEGREE }]),
  );

describe('equivalentJoint', () => {
  // Inner yokes in one plane: cos βₑ = cos β₁ / cos β₂; a quarter turn apart: cos βₑ = cos β₁ cos β₂. Derived from
  // tan θ₃ = (cos β₂ / cos β₁) tan θ₁; the tabled angles are 6.0196°, 8.6713°, 4.4758° and 14.1060°, 12.7808°.
  it.each([
    [10, 8, 0, Math.cos(10 * DEGREE) / Math.cos(8 * DEGREE), 6.01963],
    [10, 5, 0, Math.cos(10 * DEGREE) / Math.cos(5 * DEGREE), 8.67129],
    [6, 4, 0, Math.cos(6 * DEGREE) / Math.cos(4 * DEGREE), 4.47578],
    [10, 10, 90, Math.cos(10 * DEGREE) ** 2, 14.106],
    [10, 8, 90, Math.cos(10 * DEGREE) * Math.cos(8 * DEGREE), 12.7808],
  ])('of %i° and %i°, phase %i°, has the closed form', (first, second, twist, cosine, degrees) => {
    const got = planar(first, second, twist);
    expect(Math.abs(got.cosine - cosine)).toBeLessThan(1e-15 * 4);
    expect(Math.abs(got.angle / DEGREE - degrees)).toBeLessThan(6e-5);
  });

  it('is the joint itself where there is one, to the edge of what is possible', () => {
    for (const angle of [1e-9, 0.3, 1.2, 1.5707, Math.PI / 2 - 2e-9]) {
      const got = equivalentJoint(lineOf([{}, { elevation: -angle }]));
      expect(Math.abs(got.angle / angle - 1)).toBeLessThan(1e-14);
      expect(Math.abs(got.cosine / Math.cos(angle) - 1)).toBeLessThan(1e-6);
      expect(got.phase).toBe(0);
    }
  });

  it('starts a quarter turn on where the second joint is the larger', () => {
    // The larger joint decides, and its driving pin stands a quarter turn from that of the first.
    expect(Math.abs(Math.abs(planar(5, 10, 0).phase) - Math.PI / 2)).toBeLessThan(1e-12);
    expect(Math.abs(planar(10, 5, 0).phase)).toBeLessThan(1e-12);
  });

  it('refuses a line that lacks a shaft', () => {
    const line = lineOf([{}, { elevation: 0.1 }]);
    expect(() => equivalentJoint({ ...line, shafts: line.shafts.slice(1) })).toThrow(
      new RangeError('equivalentJoint: line.shafts must be one more than the joints, got 1'),
    );
  });
});
