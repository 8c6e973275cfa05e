import { describe, expect, it } from 'vitest';
import { figureText } from '../../../packages/demo/src/charts/figure-text.js';

describe('figureText', () => {
  it.each([
    [0, '0'],
    [0.5912, '0.591'],
    [16.66, '16.7'],
    [148.53, '149'],
    [12_345.6, '12\u202f346'],
    [1234.5, '1235'],
    [-0.25, '−0.250'],
    [0.0000123, '0.0000123'],
    [0.000000123, '1.23 × 10⁻⁷'],
    [NaN, '–'],
  ])('writes %f as %s', (value, text) => {
    expect(figureText(value)).toBe(text);
  });
});
