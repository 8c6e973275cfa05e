import { describe, expect, it } from 'vitest';
import { sliceRecording } from '@sternline/core';
import { makeRecording } from '../../support/recordings.js';

const whole = makeRecording({
  sampleRate: 100,
  seconds: 10,
  channels: [{}, {}],
  noise: 1,
  seed: 1,
  gaps: [
    { start: 50, count: 10 },
    { start: 195, count: 10 },
    { start: 900, count: 5 },
  ],
});

describe('sliceRecording', () => {
  it('takes the same samples out of every channel and keeps the gaps that fall in', () => {
    const part = sliceRecording(whole, { from: 2, to: 4 });
    expect(part.channels.map(({ samples }) => [...samples])).toEqual(
      whole.channels.map(({ samples }) => [...samples.slice(200, 400)]),
    );
    expect(part.sampling.gaps).toEqual([{ start: 0, count: 5 }]);
    expect(part.sampling.duration).toBe(2);
    expect(whole.sampling.gaps).toHaveLength(3);
  });

  it('cuts off what lies outside', () => {
    expect(sliceRecording(whole, { from: -5, to: 50 }).channels[0]!.samples).toHaveLength(1000);
  });

  it('refuses a part without samples', () => {
    expect(() => sliceRecording(whole, { from: 4, to: 2 })).toThrow(
      new RangeError(
        'sliceRecording: from and to must be times with two samples or more between them, got "4 and 2"',
      ),
    );
  });
});
