import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { orderGrowth } from '../../../packages/core/src/diagnosis/order-growth.js';

interface GrowthCase {
  readonly speeds: number[];
  readonly amplitudes: number[];
  readonly slope: number;
  readonly standardError: number;
}

/** scipy.stats.linregress on the logarithms, see tests/reference/diagnosis/growth.py */
const cases = JSON.parse(
  readFileSync(new URL('../../reference/diagnosis/growth.json', import.meta.url), 'utf8'),
) as GrowthCase[];

describe('orderGrowth', () => {
  it.each(cases)('slope and error as scipy gives them ($slope)', (known) => {
    const points = known.speeds.map((speed, i) => ({
      speed,
      amplitude: known.amplitudes[i]!,
      amplitudeError: 0,
    }));
    const { slope, standardError } = orderGrowth(1, points)!;
    expect(slope).toBeCloseTo(known.slope, 9);
    // The scatter of these is above the repeatability of 6 %, so that it alone makes the error.
    expect(standardError).toBeCloseTo(known.standardError, 9);
  });

  it('is exact on a power law, whatever the units and the order of the points', () => {
    const points = [30, 20, 40, 25].map((speed) => ({
      speed,
      amplitude: 3e-4 * speed ** 1.7,
      amplitudeError: 0,
    }));
    const growth = orderGrowth(2, points)!;
    expect(growth.slope).toBeCloseTo(1.7, 12);
    const scaled = points.map((one) => ({ ...one, speed: 7 * one.speed, amplitude: 9 * one.amplitude }));
    expect(orderGrowth(2, scaled)!.slope).toBeCloseTo(1.7, 12);
    expect([...growth.speeds]).toEqual([20, 25, 30, 40]);
    expect(growth.hump).toBe(false);
  });

  it('sees a hump and tells nothing from speeds that are alike', () => {
    const at = (speed: number, amplitude: number) => ({ speed, amplitude, amplitudeError: 0.01 });
    expect(orderGrowth(1, [at(20, 0.2), at(25, 1), at(30, 0.4)])!.hump).toBe(true);
    expect(orderGrowth(1, [at(20, 0.2), at(25, 0.3), at(30, 0.4)])!.hump).toBe(false);
    expect(orderGrowth(1, [at(20, 0.2), at(21, 0.3)])).toBeUndefined();
    expect(orderGrowth(1, [at(20, 0.2)])).toBeUndefined();
  });
});
