import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketedRoot } from '../../../packages/core/src/numerics/bracketed-root.js';

describe('bracketedRoot', () => {
  it('finds roots of known value', () => {
    expect(bracketedRoot((x) => x ** 2 - 2, [0, 2])).toBeCloseTo(Math.SQRT2, 15);
    expect(bracketedRoot(Math.cos, [1, 2])).toBeCloseTo(Math.PI / 2, 15);
    // Dottie number, cos x = x: 0.7390851332151607
    expect(bracketedRoot((x) => Math.cos(x) - x, [0, 1])).toBeCloseTo(0.7390851332151607, 15);
    expect(bracketedRoot((x) => x, [0, 1])).toBe(0);
    expect(bracketedRoot((x) => x - 1, [0, 1])).toBe(1);
  });

  it('holds through flat and steep places', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.constantFrom(1, 3, 9, 21),
        (place, power) => {
          const found = bracketedRoot((x) => (x - place) ** power, [-3, 4]);
          // a root of order p is known only to the p-th root of rounding
          expect(Math.abs(found - place)).toBeLessThanOrEqual(1e-14 ** (1 / power));
        },
      ),
    );
  });

  it('closes in on a jump', () => {
    expect(bracketedRoot((x) => (x < 0.3 ? -1 : 5), [0, 1])).toBeCloseTo(0.3, 14);
  });
});
