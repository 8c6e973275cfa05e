import { describe, expect, it } from 'vitest';
import {
  checkFinite,
  checkNotNegative,
  checkPositive,
  checkWhole,
} from '../../../packages/core/src/internal/checks.js';
import { describe as words } from '../../../packages/core/src/internal/refuse.js';

describe('argument checks', () => {
  it('word what, where and which value', () => {
    expect(() => {
      checkFinite('f: a', Infinity);
    }).toThrow(new RangeError('f: a must be a finite number, got Infinity'));
    expect(() => {
      checkPositive('f: a', -0);
    }).toThrow('f: a must be a finite number greater than 0, got 0');
    expect(() => {
      checkNotNegative('f: a', -1);
    }).toThrow('f: a must be a finite number of at least 0, got -1');
    expect(() => {
      checkWhole('f: a', 1.5, [1, 4]);
    }).toThrow('f: a must be a whole number from 1 to 4, got 1.5');
    expect(() => {
      checkWhole('f: a', 0, [1, Infinity]);
    }).toThrow('f: a must be a whole number of at least 1, got 0');
  });

  it('let good values pass', () => {
    checkFinite('f: a', -3);
    checkPositive('f: a', 1e-300);
    checkNotNegative('f: a', 0);
    checkWhole('f: a', 4, [1, 4]);
  });

  it('show a value briefly', () => {
    expect(words('x'.repeat(60))).toBe(`"${'x'.repeat(40)}…"`);
    expect(words([1, 2])).toBe('a list of 2');
    expect(words({})).toBe('an object');
    expect(words(() => 1)).toBe('a function');
    expect(words(undefined)).toBe('undefined');
  });
});
