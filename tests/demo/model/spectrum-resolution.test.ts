import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spectrumResolution } from '../../../packages/demo/src/model/spectrum-resolution.js';

describe('spectrumResolution', () => {
  it('parts the orders of a slow shaft before it averages', () => {
    const { step } = spectrumResolution({ sampleRate: 200, samples: 200 * 60 }, 5);
    expect(5 / step).toBeGreaterThanOrEqual(16);
  });

  it('averages several pieces of a long recording of a fast shaft', () => {
    const { segments, step } = spectrumResolution({ sampleRate: 48_000, samples: 48_000 * 30 }, 100);
    expect(segments).toBeGreaterThanOrEqual(8);
    expect(step).toBeLessThan(1);
  });

  it('is a power of two that fits, with the step and count that follow (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 200_000 }),
        fc.double({ min: 10, max: 50_000, noNaN: true }),
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        (samples, sampleRate, shaft) => {
          const { segmentLength, step, overlap, segments } = spectrumResolution(
            { sampleRate, samples },
            shaft,
          );
          expect(segmentLength & (segmentLength - 1)).toBe(0);
          expect(segmentLength).toBeLessThanOrEqual(samples);
          expect(step).toBeCloseTo(sampleRate / segmentLength, 9);
          expect(segmentLength + (segments - 1) * segmentLength * (1 - overlap)).toBeLessThanOrEqual(samples);
        },
      ),
    );
  });
});
