import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thinLine, type Point } from '../../../packages/demo/src/charts/thin-line.js';

describe('thinLine', () => {
  it('keeps a line with a point a pixel as it is', () => {
    const points: Point[] = [
      [0, 3],
      [1, 1],
      [2, 2],
    ];
    expect(thinLine(3, (index) => points[index]!)).toEqual(points);
  });

  it('keeps the single high point among ten thousand in five pixels', () => {
    const drawn = thinLine(10_000, (index) => [index / 2000, index === 6789 ? -50 : 0]);
    expect(drawn).toContainEqual([6789 / 2000, -50]);
    expect(drawn.length).toBeLessThanOrEqual(5 * 4);
  });

  it('never loses the extremes, and never adds a point (property)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 400 }),
        (values) => {
          const points = values.map((value, index): Point => [index / 25, value]);
          const drawn = thinLine(points.length, (index) => points[index]!);
          const heights = drawn.map(([, y]) => y);
          expect(Math.max(...heights)).toBe(Math.max(...values));
          expect(Math.min(...heights)).toBe(Math.min(...values));
          expect(drawn.every((point) => points.includes(point))).toBe(true);
        },
      ),
    );
  });
});
