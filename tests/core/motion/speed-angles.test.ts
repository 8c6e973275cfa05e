import { PLAIN_PIN_LIMIT, speedAngles } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { lineOf } from '../line/line-of.js';
import { single } from './turning.js';

const RPM = Math.PI / 30;

describe('speedAngles', () => {
  // 15 000 rpm × degrees: 5° at 3 000 rpm, 1.5° at 10 000. Published advice of makers of plain-pin joints.
  it.each([
    [5, 3000, 1],
    [1.5, 10_000, 1],
    [10, 3000, 2],
  ])('at %f° and %i rpm is %f of the limit', (angle, rpm, share) => {
    const [row] = speedAngles(single(angle), { speed: rpm * RPM });
    expect(Math.abs(row!.share - share)).toBeLessThan(1e-12);
    expect(Math.abs(row!.product / (share * PLAIN_PIN_LIMIT) - 1)).toBeLessThan(1e-12);
    expect(row!.limit).toBe(PLAIN_PIN_LIMIT);
  });

  it('asks only for universal joints', () => {
    const line = lineOf([{}, { plan: 0.1 }, { plan: 0.2 }], ['flexible', 'universal']);
    expect(speedAngles(line, { speed: 1 }).map(({ joint }) => joint)).toEqual([1]);
  });

  it('refuses a speed that is none', () => {
    expect(() => speedAngles(single(5), { speed: NaN })).toThrow(
      new RangeError('speedAngles: speed must be a finite number greater than 0, got NaN'),
    );
  });
});
