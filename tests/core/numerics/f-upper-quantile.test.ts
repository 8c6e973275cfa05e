import { describe, expect, it } from 'vitest';
import { fUpperQuantile } from '../../../packages/core/src/numerics/f-upper-quantile.js';
import { logGamma } from '../../../packages/core/src/numerics/log-gamma.js';
import reference from '../../reference/spectrum/statistics.json' with { type: 'json' };

/** scipy.special.betaincinv and gammaln 1.17; tests/reference/spectrum/make_statistics.py */
describe('fUpperQuantile', () => {
  it.each(reference.quantiles)('P = $probability, degrees $degrees', ({ probability, degrees, value }) => {
    expect(fUpperQuantile(probability, degrees as [number, number]) / value).toBeCloseTo(1, 10);
  });

  it('is its own reciprocal with the degrees exchanged: F(p; a, b) = 1 / F(1 − p; b, a)', () => {
    expect(fUpperQuantile(0.2, [7, 19]) * fUpperQuantile(0.8, [19, 7])).toBeCloseTo(1, 9);
  });
});

describe('logGamma', () => {
  it.each(reference.gammas)('at $x', ({ x, value }) => {
    expect(Math.abs(logGamma(x) - value)).toBeLessThanOrEqual(1e-13 * Math.max(1, Math.abs(value)));
  });
});
