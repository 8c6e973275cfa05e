import { describe, expect, it } from 'vitest';
import {
  layoutSpeedChart,
  valueAt,
  type SpeedLine,
} from '../../../packages/demo/src/charts/speed-chart-geometry.js';

const line = (name: string, y: readonly number[]): SpeedLine => ({
  name,
  short: name,
  kind: 'forward',
  x: [0, 50, 100],
  y,
});
const room = { width: 800, height: 340 };
const input = { points: [], marks: [], top: 100, high: 10 };

describe('valueAt', () => {
  it('reads between places by straight lines, and beyond them on the same lines', () => {
    const bent = line('bent', [0, 10, 0]);
    expect(valueAt(bent, 25)).toBeCloseTo(5, 12);
    expect(valueAt(bent, 75)).toBeCloseTo(5, 12);
    expect(valueAt(bent, 100)).toBeCloseTo(0, 12);
    expect(valueAt(bent, 0)).toBeCloseTo(0, 12);
  });
});

describe('layoutSpeedChart', () => {
  it('keeps the names of lines that end close to each other apart', () => {
    const { lines } = layoutSpeedChart(
      { ...input, lines: [line('a', [5, 5, 5]), line('b', [5, 5, 5.1])] },
      room,
    );
    expect(Math.abs(lines[0]!.label.y - lines[1]!.label.y)).toBeGreaterThanOrEqual(15);
  });

  it('names a line that leaves through the top where it leaves', () => {
    const figure = layoutSpeedChart({ ...input, lines: [line('steep', [0, 20, 40])] }, room);
    // 20 at 50 is 10, the upper end, at 25.
    expect(figure.lines[0]!.label.x).toBeCloseTo(figure.x(25), 9);
    expect(figure.lines[0]!.label.y).toBeLessThan(figure.ceiling);
  });

  it('leaves out what lies beyond the figure', () => {
    const figure = layoutSpeedChart(
      {
        ...input,
        lines: [],
        points: [
          { x: 120, y: 5, name: 'far' },
          { x: 20, y: 5, name: 'near' },
        ],
        wall: { y: 12, name: 'w' },
      },
      room,
    );
    expect(figure.points.map(({ name }) => name)).toEqual(['near']);
    expect(figure.wall).toBeUndefined();
  });

  it('lets no name of a place run into another, and leaves out a name that has no room', () => {
    const points = [20, 22, 24, 26, 28, 30].map((x) => ({ x, y: 5, name: '4× at 1 860' }));
    const { points: drawn } = layoutSpeedChart({ ...input, lines: [], points }, { width: 360, height: 340 });
    const spans = drawn.flatMap(({ label, name }) => {
      if (!label) return [];
      // 4.8 px a letter, measured on such a name at 12 px.
      const length = name.length * 4.8;
      return [{ y: label.y, from: label.anchor === 'start' ? label.x : label.x - length, length }];
    });
    expect(spans.length).toBeGreaterThanOrEqual(2);
    expect(spans.length).toBeLessThan(points.length);
    for (const [index, span] of spans.entries()) {
      for (const other of spans.slice(index + 1)) {
        const apart = span.from + span.length <= other.from || other.from + other.length <= span.from;
        expect(apart || Math.abs(span.y - other.y) >= 13).toBe(true);
      }
    }
  });

  it('reads out across its own axis', () => {
    const figure = layoutSpeedChart({ ...input, lines: [] }, room);
    expect(figure.share(figure.x(30))).toBeCloseTo(0.3, 9);
    expect(figure.share(-50)).toBe(0);
    expect(figure.share(5000)).toBe(1);
  });
});
