import { describe, expect, it } from 'vitest';
import { fillTemplate, formatFigure, type Quantity } from '@sternline/core';

describe('formatFigure', () => {
  it.each<[Quantity, number, string]>([
    ['speed', (6200 * Math.PI) / 30, '6\u202f200 rpm'],
    ['speed', (12345 * Math.PI) / 30, '12\u202f300 rpm'],
    ['speed', (999.6 * Math.PI) / 30, '1\u202f000 rpm'],
    ['speed', 0, '0 rpm'],
    ['angle', Math.PI / 12, '15.0°'],
    ['angle', Math.PI / 1800, '0.10°'],
    ['length', 0.005, '5.00 mm'],
    ['length', 0.318, '318 mm'],
    ['frequency', 33.333, '33.3 Hz'],
    ['share', 0.0624, '6.2 %'],
    ['speed-angle', ((3000 * Math.PI) / 30) * ((5 * Math.PI) / 180), '15\u202f000 rpm × degrees'],
    ['ratio', 1.9123, '1.91'],
    ['count', 4, '4'],
  ])('%s %f', (quantity, value, words) => {
    expect(formatFigure({ quantity, value })).toBe(words);
  });
});

describe('fillTemplate', () => {
  it('leaves a name without a figure as it stands', () => {
    expect(
      fillTemplate('{a} and {b}', { figures: { a: { quantity: 'count', value: 2 } }, format: () => 'two' }),
    ).toBe('two and {b}');
  });
});
