import { describe, expect, it } from 'vitest';
import { waveformGeometry } from '../../../packages/demo/src/charts/waveform-geometry.js';

describe('waveformGeometry', () => {
  const envelope = { lowest: [-1, -2, -1], highest: [1, 2, 1], duration: 30 };
  const frame = { width: 624, height: 116, part: { from: 10, to: 20 }, gaps: [{ from: 5, to: 5 }] };
  const geometry = waveformGeometry(envelope, frame);

  it('puts time across the plot, and the chosen part on it', () => {
    const { plot, part, timeAt } = geometry;
    const wide = plot.right - plot.left;
    expect(part.x).toBeCloseTo(plot.left + wide / 3, 9);
    expect(part.width).toBeCloseTo(wide / 3, 9);
    expect(timeAt(part.x)).toBeCloseTo(10, 9);
  });

  it('stops at the ends of the recording', () => {
    expect(geometry.timeAt(-500)).toBe(0);
    expect(geometry.timeAt(5000)).toBe(30);
  });

  it('shows the shortest gap', () => {
    expect(geometry.gaps[0]!.width).toBe(1);
  });

  it('fills the height with the farthest sample', () => {
    const ys = [...geometry.path.matchAll(/,(-?[\d.]+)/g)].map((match) => Number(match[1]));
    expect(Math.min(...ys)).toBeCloseTo(geometry.plot.top, 1);
    expect(Math.max(...ys)).toBeCloseTo(geometry.plot.bottom, 1);
  });

  it('draws silence without dividing by nothing', () => {
    expect(waveformGeometry({ lowest: [0], highest: [0], duration: 1 }, frame).path).not.toContain('NaN');
  });
});
