import { describe, expect, it } from 'vitest';
import { sampleBuffers } from '../../../packages/demo/src/model/sample-buffers.js';

describe('sampleBuffers', () => {
  it('finds each buffer once, however deep', () => {
    const samples = new Float64Array(4);
    const other = new Float32Array(2);
    const found = sampleBuffers({
      a: [{ samples }, { again: samples.subarray(1) }],
      b: { other },
      c: 'x',
      d: null,
    });
    expect(found).toEqual([samples.buffer, other.buffer]);
    expect(found[0]).toBe(samples.buffer);
  });
});
