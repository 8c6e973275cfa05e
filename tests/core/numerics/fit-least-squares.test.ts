import { Matrix, inverse } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { fitLeastSquares } from '../../../packages/core/src/numerics/fit-least-squares.js';
import { invertPositive } from '../../../packages/core/src/numerics/invert-positive.js';
import { createRandom } from '../../../packages/core/src/numerics/random.js';

describe('invertPositive', () => {
  it.each([1, 2, 3, 6])('agrees with ml-matrix at size %i', (size) => {
    const random = createRandom(size);
    const root = Matrix.from1DArray(
      size,
      size,
      Array.from({ length: size * size }, () => random.normal()),
    );
    const matrix = root.mmul(root.transpose()).add(Matrix.eye(size));
    const expected = inverse(matrix).to2DArray();
    invertPositive(matrix.to2DArray()).forEach((row, i) => {
      row.forEach((value, j) => {
        expect(value).toBeCloseTo(expected[i]![j]!, 10);
      });
    });
  });

  it('refuses a singular matrix', () => {
    expect(() =>
      invertPositive([
        [1, 1],
        [1, 1],
      ]),
    ).toThrow('pivot 1');
  });
});

describe('fitLeastSquares', () => {
  it('finds the valley of Rosenbrock', () => {
    // Rosenbrock, "An automatic method for finding the greatest or least value of a function", 1960: least at (1, 1)
    const fit = fitLeastSquares(([x = 0, y = 0]) => [10 * (y - x * x), 1 - x], {
      start: [-1.2, 1],
      steps: [1e-6, 1e-6],
    });
    expect(fit.parameters[0]).toBeCloseTo(1, 6);
    expect(fit.parameters[1]).toBeCloseTo(1, 6);
    expect(fit.sumOfSquares).toBeLessThan(1e-12);
  });

  it('stops at a bound that lies before the least', () => {
    // derived: with x held at 0.5 the least lies at y = 0.25, and the sum there is 0.25
    const fit = fitLeastSquares(([x = 0, y = 0]) => [10 * (y - x * x), 1 - x], {
      start: [0, 0],
      steps: [1e-6, 1e-6],
      bounds: [
        [-1, 0.5],
        [-2, 2],
      ],
    });
    expect(fit.parameters[0]).toBe(0.5);
    expect(fit.parameters[1]).toBeCloseTo(0.25, 6);
    expect(fit.sumOfSquares).toBeCloseTo(0.25, 8);
  });

  it('gives the information of a straight line', () => {
    // derived: JᵀJ of a + b t over t = 0 … 4 is [[5, 10], [10, 30]]
    const fit = fitLeastSquares(([a = 0, b = 0]) => [0, 1, 2, 3, 4].map((t) => a + b * t - (2 + 3 * t)), {
      start: [0, 0],
      steps: [1e-3, 1e-3],
    });
    expect(Array.from(fit.parameters)).toEqual([expect.closeTo(2, 8), expect.closeTo(3, 8)]);
    expect(fit.information.map((row) => Array.from(row))).toEqual([
      [expect.closeTo(5, 8), expect.closeTo(10, 8)],
      [expect.closeTo(10, 8), expect.closeTo(30, 8)],
    ]);
  });
});
