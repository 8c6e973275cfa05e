import { describe, expect, it } from 'vitest';
import { layoutMeasures, type MeasurePoint } from '../../../packages/demo/src/charts/measure-geometry.js';

const point = (at: number, from: number): MeasurePoint => ({ name: `${at}`, at, from });
const room = { width: 600, height: 150 };

describe('layoutMeasures', () => {
  it('marks where the axes cross', () => {
    // 90 level meets 90 − (x − 60) / 4 at 60.
    const figure = layoutMeasures(
      { motor: [point(0, 90), point(50, 90)], tube: [point(100, 80), point(400, 5)] },
      room,
    );
    const [first, second] = figure.points;
    const scale = (second!.x - first!.x) / 50;
    expect(figure.crossing!.x).toBeCloseTo(first!.x + 60 * scale, 9);
    expect(figure.crossing!.y).toBeCloseTo(first!.y, 9);
  });

  it('marks none where the axes are parallel, and keeps every point within the figure', () => {
    const figure = layoutMeasures(
      { motor: [point(0, 0), point(50, 0)], tube: [point(100, 0), point(400, 0)] },
      room,
    );
    expect(figure.crossing).toBeUndefined();
    for (const { x, y } of figure.points) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(600);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(150);
    }
  });
});
