import { describe, expect, it } from 'vitest';
import { mapCsv } from '../../../packages/demo/src/charts/map-csv.js';
import { mapGeometry, seriesAt } from '../../../packages/demo/src/charts/map-geometry.js';
import { mapReadout } from '../../../packages/demo/src/charts/map-readout.js';
import { mapShades } from '../../../packages/demo/src/charts/map-shades.js';

/** Five columns a second apart, eleven lines 10 Hz apart, one strong place: 3 s, 40 Hz. */
const amplitude = new Float32Array(55).fill(0.001);
amplitude[2 * 11 + 4] = 1;
const grid = { start: 1, timeStep: 1, columns: 5, step: 10, lines: 11, amplitude };
const order = { order: 2, time: [1, 5], frequency: [20, 100], apparent: [20, 100] };

describe('mapGeometry', () => {
  const geometry = mapGeometry(grid, {
    width: 600,
    height: 300,
    view: { from: 0, to: 80 },
    orders: [order],
    levels: [
      { frequency: 40, name: 'rings' },
      { frequency: 90, name: 'out of sight' },
    ],
  });

  it('lays time from half a column before the first to half a column after the last', () => {
    expect(geometry.timeAt(geometry.plot.left)).toBeCloseTo(0.5, 9);
    expect(geometry.timeAt(geometry.plot.right)).toBeCloseTo(5.5, 9);
    expect(geometry.frequencyAt(geometry.yOf(33))).toBeCloseTo(33, 9);
  });

  it('marks what is in view, and names no order that leaves elsewhere', () => {
    expect(geometry.levels.map(({ label }) => label.text)).toEqual(['rings']);
    expect(geometry.orders[0]?.label).toBeUndefined();
    expect(geometry.orders[0]?.path).toMatch(/^M[\d.]+,[\d.]+$/);
  });
});

describe('mapShades', () => {
  it('inks the strong place fully and leaves the common ground bare, highest frequency on top', () => {
    const { rows, columns, shade } = mapShades(grid, { view: { from: 0, to: 80 }, rows: 8 });
    expect([rows, columns]).toEqual([8, 5]);
    // Row 3 holds 40 to 50 Hz counted from 80 Hz down.
    expect(shade[3 * 5 + 2]).toBe(255);
    expect([...shade].filter((value) => value > 0)).toHaveLength(1);
  });
});

describe('the read-out', () => {
  it('tells amplitude, multiple of the speed there, and the order that passes', () => {
    // At 3 s the second order is half-way, at 60 Hz: the shaft turns 30 times a second.
    expect(mapReadout(grid, { time: 3, frequency: 40, unit: 'm/s²', orders: [order] })).toBe(
      '3.00 s · 40.0 Hz · 1.0 m/s² · 1.33 × shaft speed (1800 rpm)',
    );
    expect(mapReadout(grid, { time: 3, frequency: 60, unit: 'm/s²', orders: [order] })).toContain('order 2');
  });

  it('holds a series level beyond its ends', () => {
    expect(seriesAt({ time: [1, 5], value: [20, 100] }, 0)).toBe(20);
    expect(seriesAt({ time: [1, 5], value: [20, 100] }, 9)).toBe(100);
  });
});

describe('mapCsv', () => {
  it('writes a row a time and a column a frequency in view', () => {
    const [head, first, , third] = mapCsv(grid, { from: 20, to: 50 }).split('\r\n');
    expect(head).toBe('time (s),20 Hz,30 Hz,40 Hz,50 Hz');
    expect(first).toBe('1,0.001,0.001,0.001,0.001');
    expect(third).toBe('3,0.001,0.001,1,0.001');
  });
});
