import { describe, expect, it } from 'vitest';
import { betweenLines } from '../../../packages/core/src/spectrum/between-lines.js';
import { createFourierPlan } from '../../../packages/core/src/spectrum/fourier-plan.js';
import { runningMedian } from '../../../packages/core/src/spectrum/running-median.js';
import { createRandom } from '../../../packages/core/src/numerics/random.js';

function randomValues(length: number, seed: number): Float64Array {
  const random = createRandom(seed);
  return Float64Array.from({ length }, () => random.normal());
}

/** X at a line that need not be whole, by the defining sum. */
function directSum(data: Float64Array, line: number): [number, number] {
  const length = data.length / 2;
  let [real, imaginary] = [0, 0];
  for (let n = 0; n < length; n++) {
    const angle = (-2 * Math.PI * line * n) / length;
    real += data[2 * n]! * Math.cos(angle) - data[2 * n + 1]! * Math.sin(angle);
    imaginary += data[2 * n]! * Math.sin(angle) + data[2 * n + 1]! * Math.cos(angle);
  }
  return [real, imaginary];
}

describe('createFourierPlan', () => {
  /** The defining sum; powers of two, odd multiples of one (3, 5, 7, 15 × 2ⁿ), primes and other lengths. */
  it.each([8, 64, 24, 40, 56, 120, 224, 31, 100, 17])('%d samples: the defining sum', (length) => {
    const data = randomValues(2 * length, length);
    const out = new Float64Array(2 * length);
    createFourierPlan(length).transform(out, data);
    for (let k = 0; k < length; k++) {
      const [real, imaginary] = directSum(data, k);
      expect(Math.abs(out[2 * k]! - real)).toBeLessThan(1e-11);
      expect(Math.abs(out[2 * k + 1]! - imaginary)).toBeLessThan(1e-11);
    }
  });

  it('leaves its input as it was', () => {
    const data = randomValues(96, 1);
    const before = [...data];
    createFourierPlan(48).transform(new Float64Array(96), data);
    expect([...data]).toEqual(before);
  });
});

describe('betweenLines', () => {
  /** The defining sum at lines and half lines of a padded segment. */
  it.each([32, 48])('%d lines: power half-way between lines', (length) => {
    const segment = new Float64Array(2 * length);
    randomValues(length / 2, 4).forEach((value, n) => (segment[2 * n] = value));
    const power = (line: number) => directSum(segment, line).reduce((sum, part) => sum + part * part, 0);
    const whole = Float64Array.from({ length: length / 2 + 1 }, (_, k) => power(k));
    const all = betweenLines(whole, createFourierPlan(length));
    expect(all).toHaveLength(length + 1);
    all.forEach((value, k) => {
      expect(Math.abs(value - power(k / 2))).toBeLessThan(1e-11);
    });
  });
});

describe('runningMedian', () => {
  it('is the middle of the sorted neighbours, fewer of them at the ends', () => {
    const values = randomValues(200, 7).map((value) => 100 + Math.round(4 * value));
    const medians = runningMedian(values, { first: 3, last: 190, reach: 6 });
    for (let k = 3; k <= 190; k++) {
      const near = [...values.slice(Math.max(3, k - 6), Math.min(190, k + 6) + 1)].sort((a, b) => a - b);
      const half = near.length >> 1;
      expect(medians[k]).toBe(near.length % 2 === 1 ? near[half] : (near[half]! + near[half - 1]!) / 2);
    }
  });
});
