import { describe, expect, it } from 'vitest';
import { spectrumMap } from '../../../packages/demo/src/model/spectrum-map.js';

const rate = 1000;
const samples = Float64Array.from(
  { length: 20_000 },
  (_, n) => 0.5 * Math.sin((2 * Math.PI * 125 * n) / rate),
);
const sampling = (gaps: { start: number; count: number }[] = []) =>
  ({ gaps }) as unknown as Parameters<typeof spectrumMap>[1]['sampling'];
const channel = { name: 'x', unit: 'm/s²', samples } as const;

describe('spectrumMap', () => {
  it('shows a steady tone at its frequency and height in every column', () => {
    const map = spectrumMap(channel, { sampleRate: rate, sampling: sampling() }, 40)!;
    for (let column = 0; column < map.columns; column++) {
      const lines = map.amplitude.subarray(column * map.lines, (column + 1) * map.lines);
      const most = lines.indexOf(Math.max(...lines));
      expect(Math.abs(most * map.step - 125)).toBeLessThanOrEqual(map.step);
      // A Hann window reads a tone between two lines at most 1.42 dB (15 %) low.
      expect(lines[most]).toBeGreaterThan(0.5 * 0.849);
      expect(lines[most]).toBeLessThan(0.5 * 1.001);
    }
  });

  it('lays its columns evenly over the recording', () => {
    const map = spectrumMap(channel, { sampleRate: rate, sampling: sampling() }, 40)!;
    // The last column ends where the recording does, as the first begins with it.
    expect(map.start + (map.columns - 1) * map.timeStep).toBeCloseTo(20 - map.start, 6);
  });

  it('leaves columns without samples bare', () => {
    const map = spectrumMap(
      channel,
      { sampleRate: rate, sampling: sampling([{ start: 8000, count: 4000 }]) },
      40,
    )!;
    const middle = Math.round((10 - map.start) / map.timeStep);
    expect(Math.max(...map.amplitude.subarray(middle * map.lines, (middle + 1) * map.lines))).toBe(0);
  });

  it('makes nothing of a snippet', () => {
    const short = { ...channel, samples: samples.subarray(0, 60) };
    expect(spectrumMap(short, { sampleRate: rate, sampling: sampling() }, 40)).toBeUndefined();
  });
});
