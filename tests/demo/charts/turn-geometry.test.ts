import { describe, expect, it } from 'vitest';
import { layoutTurn } from '../../../packages/demo/src/charts/turn-geometry.js';

const wave = Array.from({ length: 361 }, (_, degree) => 1 - 0.03 * Math.cos((2 * degree * Math.PI) / 180));
const figure = layoutTurn({ values: wave }, { width: 720, height: 260 });

describe('layoutTurn', () => {
  it('finds the fastest and the slowest', () => {
    expect(figure.highest.value).toBeCloseTo(1.03, 12);
    expect(figure.lowest.value).toBeCloseTo(0.97, 12);
    expect(figure.highest.x).toBeCloseTo(figure.xTicks.find(({ degrees }) => degrees === 90)!.x, 9);
  });

  it('reads the curve where it is asked', () => {
    expect(figure.at(0.25).value).toBeCloseTo(1.03, 12);
    expect(figure.share(figure.at(0.75).x)).toBeCloseTo(0.75, 9);
    expect(figure.share(-100)).toBe(0);
  });

  it('draws faster above slower, with even turning between', () => {
    expect(figure.highest.y).toBeLessThan(figure.even);
    expect(figure.even).toBeLessThan(figure.lowest.y);
  });

  it('draws an even turn as a line across the figure', () => {
    const even = layoutTurn({ values: [1, 1, 1] }, { width: 720, height: 260 });
    expect(even.at(0.5).y).toBeCloseTo(even.even, 9);
    expect(even.even).toBeGreaterThan(even.top);
    expect(even.even).toBeLessThan(even.base);
  });
});
