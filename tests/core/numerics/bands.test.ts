import { CholeskyDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { addBlock } from '../../../packages/core/src/numerics/add-block.js';
import { combineBands } from '../../../packages/core/src/numerics/combine-bands.js';
import { createBand } from '../../../packages/core/src/numerics/create-band.js';
import { factorBand } from '../../../packages/core/src/numerics/factor-band.js';
import { multiplyBand } from '../../../packages/core/src/numerics/multiply-band.js';
import { NotPositiveDefiniteError } from '../../../packages/core/src/numerics/not-positive-definite-error.js';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { solveLower } from '../../../packages/core/src/numerics/solve-lower.js';
import { solveUpper } from '../../../packages/core/src/numerics/solve-upper.js';
import type { SymmetricBand } from '../../../packages/core/src/numerics/types.js';
import { dense } from '../../support/dense.js';

/** Random entries with a diagonal that outweighs them. */
function randomBand(size: number, halfBandwidth: number, diagonal: number): SymmetricBand {
  const random = createRandom(size);
  const band = createBand(size, halfBandwidth);
  for (let i = 0; i < band.values.length; i++) band.values[i] = random.uniform() - 0.5;
  for (let i = 0; i < size; i++) band.values[(i + 1) * (halfBandwidth + 1) - 1]! += diagonal;
  return band;
}

describe('banded matrices', () => {
  it('take blocks where they belong and leave out negative rows', () => {
    const band = createBand(4, 2);
    addBlock(band, { rows: [1, -1, 3], entries: [1, 2, 3, 2, 5, 6, 3, 6, 9] });
    addBlock(band, { rows: [3, 2], entries: [10, 20, 20, 40] });
    expect(dense(band).to2DArray()).toEqual([
      [0, 0, 0, 0],
      [0, 1, 0, 3],
      [0, 0, 40, 20],
      [0, 3, 20, 19],
    ]);
  });

  it.each([
    [1, 3],
    [2, 3],
    [9, 3],
    [9, 0],
    [12, 5],
  ])(
    'of size %i and half-bandwidth %i multiply and factor as dense ones do (ml-matrix)',
    (size, halfBandwidth) => {
      const band = randomBand(size, halfBandwidth, 4);
      const full = dense(band);
      const x = Float64Array.from({ length: size }, (_, i) => Math.sin(i + 1));
      const product = new Float64Array(size).fill(7);
      multiplyBand(band, x, product);
      const expected = full.mmul(dense({ size, halfBandwidth: 0, values: x })).to2DArray();
      product.forEach((value, i) => {
        expect(value).toBeCloseTo(
          expected[i]!.reduce((sum, entry) => sum + entry, 0),
          13,
        );
      });
      const factor = factorBand(band);
      const lower = new CholeskyDecomposition(full).lowerTriangularMatrix;
      for (let i = 0; i < size; i++) expect(1 / factor.reciprocals[i]!).toBeCloseTo(lower.get(i, i), 13);
      solveLower(factor, product);
      solveUpper(factor, product);
      product.forEach((value, i) => {
        expect(value).toBeCloseTo(x[i]!, 12);
      });
    },
  );

  it('add up', () => {
    const [a, b] = [randomBand(5, 2, 1), randomBand(6, 2, 1)];
    const second = { ...b, size: 5, values: b.values.slice(0, 15) };
    const sum = combineBands(a, second, -2);
    sum.values.forEach((value, i) => {
      expect(value).toBe(a.values[i]! - 2 * second.values[i]!);
    });
  });

  it('that are not positive definite are refused with their row', () => {
    const band = createBand(3, 1);
    addBlock(band, { rows: [0, 1], entries: [1, -1, -1, 1] });
    addBlock(band, { rows: [2], entries: [1] });
    expect(() => factorBand(band)).toThrow(NotPositiveDefiniteError);
    expect(() => factorBand(band)).toThrow(
      'the matrix is not positive definite: pivot 1 is not above rounding',
    );
  });
});
