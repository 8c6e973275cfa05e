import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tridiagonalEigenpairs } from '../../../packages/core/src/numerics/tridiagonal-eigenpairs.js';

describe('tridiagonalEigenpairs', () => {
  it('of the second difference: 2 − 2 cos(jπ/(n+1)) (derived)', () => {
    const { values } = tridiagonalEigenpairs([2, 2, 2, 2, 2, 2], [-1, -1, -1, -1, -1]);
    Array.from(values)
      .sort((a, b) => a - b)
      .forEach((value, i) => {
        expect(value).toBeCloseTo(2 - 2 * Math.cos(((i + 1) * Math.PI) / 7), 13);
      });
  });

  it('satisfies T v = λ v with unit vectors, and keeps the trace', () => {
    const entry = fc
      .tuple(fc.integer({ min: -1000, max: 1000 }), fc.constantFrom(1e-2, 1e-2, 1e-9, 1e-60))
      .map(([value, scale]) => value * scale);
    fc.assert(
      fc.property(fc.array(fc.tuple(entry, entry), { minLength: 1, maxLength: 12 }), (rows) => {
        const diagonal = rows.map(([own]) => own);
        const off = rows.slice(1).map(([, coupling]) => coupling);
        const { values, vectors } = tridiagonalEigenpairs(diagonal, off);
        expect(values.reduce((a, b) => a + b, 0)).toBeCloseTo(
          diagonal.reduce((a, b) => a + b, 0),
          10,
        );
        vectors.forEach((vector, k) => {
          expect(vector.reduce((sum, x) => sum + x * x, 0)).toBeCloseTo(1, 12);
          vector.forEach((x, i) => {
            const image =
              diagonal[i]! * x +
              (off[i - 1] ?? 0) * (vector[i - 1] ?? 0) +
              (off[i] ?? 0) * (vector[i + 1] ?? 0);
            expect(image).toBeCloseTo(values[k]! * x, 10);
          });
        });
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  it('gives up on what is not a number', () => {
    expect(() => tridiagonalEigenpairs([NaN, 1], [1])).toThrow(
      'tridiagonalEigenpairs: no convergence in 60 sweeps',
    );
  });
});
