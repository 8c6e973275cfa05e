import { describe, expect, it } from 'vitest';
import { spectrumGeometry } from '../../../packages/demo/src/charts/spectrum-geometry.js';

const amplitude = Float64Array.from({ length: 501 }, (_, index) => (index === 200 ? 2 : 0.01));
amplitude[0] = 9.81;
const lines = { step: 0.5, amplitude };
const frame = { width: 800, height: 340, view: { from: 0, to: 250 }, scale: 'linear' as const };
const orders = [
  { order: 1, frequency: 100, apparentFrequency: 100, folded: false, seen: true },
  { order: 4, frequency: 400, apparentFrequency: 100, folded: true, seen: false },
];
const peaks = [{ frequency: 100, amplitude: 2 }];

function points(path: string): [number, number][] {
  return path
    .slice(1)
    .split('L')
    .map((pair) => pair.split(',').map(Number) as [number, number]);
}

describe('spectrumGeometry', () => {
  const geometry = spectrumGeometry(lines, { ...frame, orders, peaks });

  it('puts the frequency axis across the plot, to and back', () => {
    const { plot, xOf, frequencyAt } = geometry;
    expect(xOf(0)).toBeCloseTo(plot.left, 9);
    expect(xOf(250)).toBeCloseTo(plot.right, 9);
    expect(frequencyAt(xOf(123.4))).toBeCloseTo(123.4, 9);
  });

  it('draws its one peak highest, at its frequency', () => {
    const drawn = points(geometry.path).filter(([x]) => x > geometry.plot.left + 5);
    const highest = drawn.reduce((best, point) => (point[1] < best[1] ? point : best));
    // A tenth of a pixel is what the path is rounded to.
    expect(Math.abs(highest[0] - geometry.xOf(100))).toBeLessThanOrEqual(0.06);
    expect(highest[1]).toBeGreaterThanOrEqual(geometry.plot.top);
  });

  it('does not let what is left of the mean set the scale', () => {
    const top = geometry.amplitudeTicks.at(-1)!;
    expect(Number(top.label)).toBe(2);
  });

  it('draws no more than four points a pixel, however many lines there are', () => {
    const many = { step: 0.001, amplitude: new Float64Array(250_001).fill(1) };
    const { path, plot } = spectrumGeometry(many, { ...frame, orders: [], peaks: [] });
    expect(points(path).length).toBeLessThanOrEqual(4 * (plot.right - plot.left + 1));
  });

  it('marks a folded order where it appears, with a label that says so, clear of the true one', () => {
    const [first, fourth] = geometry.orders;
    expect(fourth!.x).toBe(first!.x);
    expect(first!.label!.text).toBe('1×');
    expect(fourth!.label!.text).toBe('4× folded');
    expect(fourth!.label!.row).not.toBe(first!.label!.row);
  });

  it('labels the peak and leaves out what is not in view', () => {
    expect(geometry.peaks[0]!.label).toBe('100 Hz');
    const away = spectrumGeometry(lines, { ...frame, view: { from: 150, to: 250 }, orders, peaks });
    expect(away.peaks).toEqual([]);
    expect(away.orders).toEqual([]);
  });

  it('keeps every line inside the plot on a logarithmic scale, noughts too', () => {
    const holed = { step: 0.5, amplitude: amplitude.map((value, index) => (index % 3 === 0 ? 0 : value)) };
    const { path, plot, amplitudeTicks } = spectrumGeometry(holed, {
      ...frame,
      scale: 'logarithmic',
      orders,
      peaks,
    });
    for (const [, y] of points(path).filter(([x]) => x > plot.left + 5)) {
      expect(y).toBeGreaterThanOrEqual(plot.top - 0.06);
      expect(y).toBeLessThanOrEqual(plot.bottom + 0.06);
    }
    expect(amplitudeTicks.map((tick) => tick.label)).toContain('1');
  });

  it('keeps logarithmic ticks apart, be the range narrow or wide', () => {
    for (const depth of [0.9, 0.1, 1e-3, 1e-5]) {
      const sloped = {
        step: 1,
        amplitude: Float64Array.from({ length: 101 }, (_, index) => depth ** (index / 100)),
      };
      const { amplitudeTicks } = spectrumGeometry(sloped, {
        ...frame,
        view: { from: 0, to: 100 },
        scale: 'logarithmic',
        orders: [],
        peaks: [],
      });
      expect(amplitudeTicks.length).toBeGreaterThanOrEqual(2);
      amplitudeTicks.slice(1).forEach((tick, index) => {
        expect(amplitudeTicks[index]!.at - tick.at).toBeGreaterThanOrEqual(14);
      });
    }
  });

  it('survives a spectrum of nothing but noughts', () => {
    const empty = { step: 1, amplitude: new Float64Array(10) };
    const { path } = spectrumGeometry(empty, { ...frame, scale: 'logarithmic', orders: [], peaks: [] });
    expect(path).not.toContain('NaN');
  });
});
