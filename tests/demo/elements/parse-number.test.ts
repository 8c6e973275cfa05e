import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNumber } from '../../../packages/demo/src/elements/parse-number.js';

describe('parseNumber', () => {
  it.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' 318 ', 318],
    ['6 200', 6200],
    ['6\u202f200', 6200],
    ['6\u00a0200,5', 6200.5],
    ['1,250.5', 1250.5],
    ['1.250,5', 1250.5],
    ['−14', -14],
    ['-0,5', -0.5],
    ['.5', 0.5],
    ['5.', 5],
    ['1e-3', 0.001],
    ['3/16', 0.1875],
    ['1 3/16', 1.1875],
    ['-1 1/2', -1.5],
  ])('reads %j as %d', (text, value) => {
    expect(parseNumber(text)).toBe(value);
  });

  it.each(['abc', '1,2,3', '1.2.3', '12mm', '--5', '1/0', '5 mm', ',', 'NaN', 'Infinity'])(
    'reads %j as no number',
    (text) => {
      expect(parseNumber(text)).toBeNaN();
    },
  );

  it('reads an empty text as undefined', () => {
    expect(parseNumber('  ')).toBeUndefined();
  });

  it('reads what JavaScript writes, with point or comma', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const text = String(value);
        expect(parseNumber(text)).toBe(Number(text));
        expect(parseNumber(text.replace('.', ','))).toBe(Number(text));
      }),
    );
  });
});
