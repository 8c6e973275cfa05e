import { describe, expect, it } from 'vitest';
import { describeReach } from '@sternline/core';

const rpm = (value: number) => (value * Math.PI) / 30;

describe('describeReach', () => {
  /** derived: 4 000 rpm is 66.67 Hz; 66.67 and 133.33 Hz sampled at 100 Hz both show at 33.33 Hz. */
  it('says which orders cannot be told apart', () => {
    expect(describeReach({ sampleRate: 100, speed: rpm(4000), orders: [1, 2] })).toEqual([
      'At 100 Hz and 4\u202f000 rpm orders 1 and 2 both appear at 33.3 Hz: this recording cannot tell them apart.',
      'Order 1 (66.7 Hz) lies above half the sampling rate (50.0 Hz): it folds back to 33.3 Hz, and its amplitude there may be far too small.',
      'Order 2 (133 Hz) lies above half the sampling rate (50.0 Hz): it folds back to 33.3 Hz, and its amplitude there may be far too small.',
    ]);
  });

  /** derived: order 2 of 3 000 rpm is 100 Hz, which a rate of 100 Hz shows at 0. */
  it('says what gravity hides', () => {
    expect(describeReach({ sampleRate: 100, speed: rpm(3000), orders: [2] })).toEqual([
      'Order 2 (100 Hz) appears at or beside 0 Hz, where gravity and drift hide it.',
    ]);
  });

  it('says so where all is well', () => {
    expect(describeReach({ sampleRate: 400, speed: rpm(1200), orders: [1, 2, 4] })).toEqual([
      'At 400 Hz and 1\u202f200 rpm orders 1, 2 and 4 can be seen where they are.',
    ]);
  });

  it('refuses an order of 0', () => {
    expect(() => describeReach({ sampleRate: 100, speed: 1, orders: [1, 0] })).toThrow(
      new RangeError('describeReach: orders[1] must be a finite number greater than 0, got 0'),
    );
  });
});
