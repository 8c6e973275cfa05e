import { describe, expect, it } from 'vitest';
import { interpolateVectors } from '../../../packages/core/src/numerics/interpolate-vectors.js';

describe('interpolateVectors', () => {
  const cubic = (x: number): Float64Array => Float64Array.of(5 + x ** 3, 4 - x, 3 + x * x);

  it('is exact for polynomials of a degree below the number of samples', () => {
    const samples = [-1, 0.5, -0.5, 0.25].map((at) => ({ at, vectors: [cubic(at)] }));
    const [found] = interpolateVectors(samples, 0.1);
    cubic(0.1).forEach((value, i) => {
      expect(found![i]).toBeCloseTo(value, 12);
    });
  });

  it('does not mind the sign of a sample', () => {
    const samples = [-1, 0.5, -0.5, 0.25].map((at, i) => ({
      at,
      vectors: [cubic(at).map((value) => (i % 2 === 0 ? value : -value))],
    }));
    const [found] = interpolateVectors(samples, 0.1);
    cubic(0.1).forEach((value, i) => {
      expect(-found![i]!).toBeCloseTo(value, 12);
    });
  });

  it('has nothing to say from nothing', () => {
    expect(interpolateVectors([], 1)).toEqual([]);
  });
});
