import { describe, expect, it } from 'vitest';
import { listText } from '../../../packages/core/src/internal/list-text.js';
import { numberText } from '../../../packages/core/src/internal/number-text.js';

describe('numberText', () => {
  it.each([
    [33.333, 3, '33.3'],
    [3999.7, 4, '4\u202f000'],
    [999.6, 3, '1\u202f000'],
    [0.0012345, 2, '0.0012'],
    [-1234567, 3, '-1\u202f230\u202f000'],
    [0, 3, '0'],
    [NaN, 3, 'NaN'],
  ])('%f to %d digits: %s', (value, digits, text) => {
    expect(numberText(value, digits)).toBe(text);
  });
});

describe('listText', () => {
  it('joins with commas and a last "and"', () => {
    expect([[], [1], [1, 2], [1, 2, 4]].map(listText)).toEqual(['', '1', '1 and 2', '1, 2 and 4']);
  });
});
