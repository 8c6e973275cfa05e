import { shaftDirection } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

describe('shaftDirection', () => {
  it('points aft, to port and up as the frame of the model says', () => {
    expect(shaftDirection({ elevation: 0, plan: 0 })).toEqual([1, 0, 0]);
    expect(shaftDirection({ elevation: 0, plan: Math.PI / 2 })[1]).toBeCloseTo(1, 15);
    expect(shaftDirection({ elevation: Math.PI / 2, plan: 0 })[2]).toBeCloseTo(1, 15);
  });

  it('has length 1', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: -6, max: 6, noNaN: true }),
        (elevation, plan) => {
          const [x, y, z] = shaftDirection({ elevation, plan });
          expect(Math.abs(x * x + y * y + z * z - 1)).toBeLessThan(1e-15 * 4);
        },
      ),
    );
  });

  it('refuses what is no angle', () => {
    expect(() => shaftDirection({ elevation: NaN, plan: 0 })).toThrow(
      new RangeError('shaftDirection: elevation must be a finite angle in rad, got NaN'),
    );
    expect(() => shaftDirection({ elevation: 0, plan: Infinity })).toThrow(
      new RangeError('shaftDirection: plan must be a finite angle in rad, got Infinity'),
    );
  });
});
