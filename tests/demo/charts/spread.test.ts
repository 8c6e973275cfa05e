import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from '../../../packages/demo/src/charts/spread.js';

describe('spread', () => {
  it('leaves alone what is far enough apart', () => {
    expect(spread([10, 50, 90], { apart: 20, from: 0, to: 100 })).toEqual([10, 50, 90]);
  });

  it('parts two that touch evenly about their middle', () => {
    expect(spread([50, 50], { apart: 20, from: 0, to: 100 })).toEqual([40, 60]);
  });

  it('spreads over the whole room where it is too short', () => {
    expect(spread([1, 2, 3], { apart: 80, from: 0, to: 100 })).toEqual([0, 50, 100]);
  });

  it('keeps order, distance and room', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 10 }), (places) => {
        const wanted = [...places].sort((a, b) => a - b);
        const placed = spread(wanted, { apart: 25, from: 0, to: 300 });
        expect(placed).toHaveLength(wanted.length);
        placed.forEach((place, index) => {
          expect(place).toBeGreaterThanOrEqual(-1e-9);
          expect(place).toBeLessThanOrEqual(300 + 1e-9);
          if (index > 0) expect(place - placed[index - 1]!).toBeGreaterThanOrEqual(25 - 1e-9);
        });
      }),
    );
  });
});
