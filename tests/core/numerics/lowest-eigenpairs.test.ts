import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { addBlock } from '../../../packages/core/src/numerics/add-block.js';
import { countBelow } from '../../../packages/core/src/numerics/count-below.js';
import { createBand } from '../../../packages/core/src/numerics/create-band.js';
import { factorBand } from '../../../packages/core/src/numerics/factor-band.js';
import { isolateEigenpairs } from '../../../packages/core/src/numerics/isolate-eigenpairs.js';
import { lowestEigenpairs } from '../../../packages/core/src/numerics/lowest-eigenpairs.js';
import { NotPositiveDefiniteError } from '../../../packages/core/src/numerics/not-positive-definite-error.js';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import type { SymmetricBand } from '../../../packages/core/src/numerics/types.js';
import { dense } from '../../support/dense.js';

function diagonalBand(entries: readonly number[]): SymmetricBand {
  const band = createBand(entries.length, 1);
  entries.forEach((entry, i) => {
    addBlock(band, { rows: [i], entries: [entry] });
  });
  return band;
}

/** Springs in a row, with masses of either sign. */
function randomPencil(size: number, seed: number): { stiffness: SymmetricBand; inertia: SymmetricBand } {
  const random = createRandom(seed);
  const stiffness = createBand(size, 3);
  const inertia = createBand(size, 3);
  for (let i = 0; i < size; i++) {
    addBlock(stiffness, { rows: [i], entries: [0.01 + random.uniform()] });
    const [k, m] = [random.uniform(), random.uniform() - 0.3];
    for (const step of [1, 2, 3]) {
      if (i + step >= size) continue;
      addBlock(stiffness, { rows: [i, i + step], entries: [k, -k, -k, k] });
      addBlock(inertia, { rows: [i, i + step], entries: [2 * m, m, m, 2 * m] });
    }
  }
  return { stiffness, inertia };
}

/** Positive eigenvalues by ml-matrix: 1/μ of L⁻¹ B L⁻ᵀ through a dense symmetric decomposition of K^(−½) B K^(−½). */
function byDense({ stiffness, inertia }: { stiffness: SymmetricBand; inertia: SymmetricBand }): number[] {
  const root = new EigenvalueDecomposition(dense(stiffness), { assumeSymmetric: true });
  const vectors = root.eigenvectorMatrix;
  const scale = Matrix.diag(root.realEigenvalues.map((value) => 1 / Math.sqrt(value)));
  const half = vectors.mmul(scale).mmul(vectors.transpose());
  const { realEigenvalues } = new EigenvalueDecomposition(half.mmul(dense(inertia)).mmul(half), {
    assumeSymmetric: true,
  });
  return realEigenvalues
    .filter((mu) => mu > 1e-12)
    .map((mu) => 1 / mu)
    .sort((a, b) => a - b);
}

describe('lowestEigenpairs', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('agrees with ml-matrix on an indefinite pencil (%i)', (seed) => {
    const pencil = randomPencil(40, seed);
    const { values, vectors } = lowestEigenpairs(pencil.stiffness, { inertia: pencil.inertia, count: 6 });
    const expected = byDense(pencil);
    values.forEach((value, i) => {
      expect(Math.abs(value / expected[i]! - 1)).toBeLessThan(1e-10);
    });
    vectors.forEach((vector, i) => {
      const column = Matrix.columnVector(Array.from(vector));
      const stiff = dense(pencil.stiffness).mmul(column);
      const inert = dense(pencil.inertia).mmul(column).mul(values[i]!);
      expect(Matrix.sub(stiff, inert).norm()).toBeLessThan(1e-7 * stiff.norm());
      expect(column.transpose().mmul(stiff).get(0, 0)).toBeCloseTo(1, 10);
    });
  });

  it('finds every copy of a repeated eigenvalue', () => {
    const stiffness = diagonalBand([1, 1, 2, 1, 2, 3, 3, 3, 5, 6, 7, 8]);
    const inertia = diagonalBand(Array<number>(12).fill(1));
    const { values } = lowestEigenpairs(stiffness, { inertia, count: 8 });
    Array.from(values).forEach((value, i) => {
      expect(value).toBeCloseTo([1, 1, 1, 2, 2, 3, 3, 3][i]!, 12);
    });
  });

  it('tells nearly equal ones apart', () => {
    const close = [1, 1 + 1e-9, 1 + 1e-7, 1 + 1e-5, 2, 4, 4 + 1e-8, 9];
    const { values } = lowestEigenpairs(diagonalBand(close), {
      inertia: diagonalBand(Array<number>(8).fill(1)),
      count: 7,
    });
    Array.from(values).forEach((value, i) => {
      expect(Math.abs(value / close[i]! - 1)).toBeLessThan(1e-12);
    });
  });

  it('returns fewer where there are fewer', () => {
    const inertia = diagonalBand([1, -1, 0, 1, -2]);
    const { values } = lowestEigenpairs(diagonalBand([3, 1, 1, 2, 1]), { inertia, count: 4 });
    expect(Array.from(values, (value) => Number(value.toFixed(12)))).toEqual([2, 3]);
    const none = lowestEigenpairs(diagonalBand([1, 1]), { inertia: diagonalBand([-1, 0]), count: 2 });
    expect(none.vectors).toHaveLength(0);
  });

  it('refuses a matrix that is not positive definite', () => {
    const inertia = diagonalBand([1, 1]);
    expect(() => lowestEigenpairs(diagonalBand([1, 0]), { inertia, count: 1 })).toThrow(
      NotPositiveDefiniteError,
    );
  });
});

describe('lowestEigenpairs far from the ordinary', () => {
  it('keeps twelve digits of eigenvalues 10¹⁵ times the lowest', () => {
    const entries = [1e-6, 2, 3e4, 5e6, 1e9, 4e9, 7e9, 8e9, 9e9];
    const ones = diagonalBand(Array<number>(entries.length).fill(1));
    const { values } = lowestEigenpairs(diagonalBand(entries), { inertia: ones, count: 6 });
    expect(values).toHaveLength(6);
    values.forEach((value, i) => {
      expect(Math.abs(value / entries[i]! - 1)).toBeLessThan(1e-12);
    });
  });

  it.each([1, 2, 3, 4])('finds the same from a guess, near or wrong (%i)', (seed) => {
    const pencil = randomPencil(40, seed);
    const alone = lowestEigenpairs(pencil.stiffness, { inertia: pencil.inertia, count: 5 });
    const other = randomPencil(40, seed + 10);
    const wrong = lowestEigenpairs(other.stiffness, { inertia: other.inertia, count: 5 }).vectors;
    const near = alone.vectors.map((vector, k) => vector.map((x, i) => x + 1e-3 * Math.sin(i + k)));
    const twice = [...alone.vectors.slice(0, 4), alone.vectors[0]!];
    for (const guess of [near, wrong, twice]) {
      const { values } = lowestEigenpairs(pencil.stiffness, { inertia: pencil.inertia, count: 5, guess });
      values.forEach((value, i) => {
        expect(Math.abs(value / alone.values[i]! - 1)).toBeLessThan(1e-10);
      });
    }
  });
});

describe('isolateEigenpairs', () => {
  it.each([1, 2, 3])('finds by counting alone what ml-matrix finds (%i)', (seed) => {
    const pencil = randomPencil(30, seed);
    const expected = byDense(pencil);
    const found = isolateEigenpairs({ ...pencil, factor: factorBand(pencil.stiffness) }, 5);
    found.forEach(({ value, vector }, i) => {
      expect(Math.abs(value / expected[i]! - 1)).toBeLessThan(1e-10);
      const column = Matrix.columnVector(Array.from(vector));
      const stiff = dense(pencil.stiffness).mmul(column);
      const inert = dense(pencil.inertia).mmul(column).mul(value);
      expect(Matrix.sub(stiff, inert).norm()).toBeLessThan(1e-7 * stiff.norm());
    });
  });

  it('tells copies of one eigenvalue apart', () => {
    const stiffness = diagonalBand([2, 1, 2, 2, 5]);
    const inertia = diagonalBand([1, 1, 1, 1, 1]);
    const found = isolateEigenpairs({ stiffness, inertia, factor: factorBand(stiffness) }, 4);
    expect(found.map(({ value }) => Number(value.toFixed(9)))).toEqual([1, 2, 2, 2]);
  });
});

describe('countBelow', () => {
  it.each([1, 2, 3, 4, 5])('numbers the positive eigenvalues that ml-matrix finds (%i)', (seed) => {
    const pencil = randomPencil(30, seed);
    const expected = byDense(pencil);
    expected.forEach((value, i) => {
      expect(countBelow(pencil.stiffness, { inertia: pencil.inertia, shift: value * (1 - 1e-7) })).toBe(i);
      expect(countBelow(pencil.stiffness, { inertia: pencil.inertia, shift: value * (1 + 1e-7) })).toBe(
        i + 1,
      );
    });
  });

  it('counts a pivot of exactly zero as passed', () => {
    const ones = diagonalBand([1, 1, 1]);
    expect(countBelow(diagonalBand([1, 2, 3]), { inertia: ones, shift: 2 })).toBe(2);
  });
});
