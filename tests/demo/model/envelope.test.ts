import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { channelEnvelope } from '../../../packages/demo/src/model/envelope.js';

describe('channelEnvelope', () => {
  it('holds the lowest and highest sample of each stretch, about the mean', () => {
    const channel = { name: 'z', samples: [9, 11, 10, 10, 5, 15] };
    expect(channelEnvelope(channel, { sampleRate: 2, stretches: 3 })).toEqual({
      channel: 'z',
      lowest: Float32Array.of(-1, 0, -5),
      highest: Float32Array.of(1, 0, 5),
      duration: 3,
    });
  });

  it('never has more stretches than samples, and loses no extreme (property)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 1, maxLength: 300 }),
        fc.integer({ min: 1, max: 400 }),
        (samples, stretches) => {
          const { lowest, highest } = channelEnvelope({ name: 'x', samples }, { sampleRate: 1, stretches });
          expect(lowest.length).toBe(Math.min(stretches, samples.length));
          const reach = Math.max(...highest) - Math.min(...lowest);
          // 32-bit floats near 100 hold seven digits.
          expect(reach).toBeCloseTo(Math.max(...samples) - Math.min(...samples), 4);
        },
      ),
    );
  });
});
