import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { factorComplexBand } from '../../../packages/core/src/numerics/complex-band.js';
import type { Complex } from '../../../packages/core/src/numerics/complex.js';
import { createBand } from '../../../packages/core/src/numerics/create-band.js';
import { createRandom } from '../../../packages/core/src/numerics/random.js';
import { solveComplexBand } from '../../../packages/core/src/numerics/solve-complex-band.js';
import { solveComplex } from '../../../packages/core/src/numerics/solve-complex.js';
import type { SymmetricBand } from '../../../packages/core/src/numerics/types.js';
import { dense } from '../../support/dense.js';

function randomBand(size: number, seed: number, diagonal: number): SymmetricBand {
  const random = createRandom(seed);
  const band = createBand(size, 3);
  for (let i = 0; i < band.values.length; i++) band.values[i] = random.uniform() - 0.5;
  for (let i = 0; i < size; i++) band.values[4 * i + 3]! += diagonal;
  return band;
}

/** R x − S y = f, S x + R y = g: the complex system as a real one of twice the size, by ml-matrix. */
function byReal(real: Matrix, imaginary: Matrix, load: Matrix): number[] {
  const size = real.rows;
  const whole = Matrix.zeros(2 * size, 2 * size);
  whole.setSubMatrix(real, 0, 0);
  whole.setSubMatrix(Matrix.mul(imaginary, -1), 0, size);
  whole.setSubMatrix(imaginary, size, 0);
  whole.setSubMatrix(real, size, size);
  return solve(whole, load).to1DArray();
}

describe('a complex symmetric band', () => {
  it.each([1, 2, 3, 9, 40])('of %i rows, real part indefinite, solves as ml-matrix does', (size) => {
    const real = randomBand(size, size, 0);
    const imaginary = randomBand(size, size + 1, 4);
    const random = createRandom(size + 2);
    const load = Array.from({ length: 2 * size }, () => random.normal());
    const expected = byReal(dense(real), dense(imaginary), Matrix.columnVector(load));
    const x = {
      real: Float64Array.from(load.slice(0, size)),
      imaginary: Float64Array.from(load.slice(size)),
    };
    solveComplexBand(factorComplexBand({ real, imaginary }), x);
    [...x.real, ...x.imaginary].forEach((value, i) => {
      expect(value).toBeCloseTo(expected[i]!, 12);
    });
  });
});

describe('solveComplex', () => {
  it.each([1, 2, 5, 8])('of %i rows agrees with ml-matrix, whatever row leads', (size) => {
    const random = createRandom(size);
    const rows = Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (_, j): Complex => [
        i === j ? 0 : random.normal(),
        i === j && size > 1 ? 0 : random.normal(),
      ]),
    );
    const load = Array.from({ length: size }, (): Complex => [random.normal(), random.normal()]);
    const part = (which: 0 | 1): Matrix => new Matrix(rows.map((row) => row.map((entry) => entry[which])));
    const expected = byReal(
      part(0),
      part(1),
      Matrix.columnVector([...load.map(([re]) => re), ...load.map(([, im]) => im)]),
    );
    solveComplex(rows, load).forEach(([re, im], i) => {
      expect(re).toBeCloseTo(expected[i]!, 10);
      expect(im).toBeCloseTo(expected[size + i]!, 10);
    });
  });
});
