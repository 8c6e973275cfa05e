import { exampleLine, proposeRemedies } from '@sternline/core';
import type { Recording } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { AdviceClient } from '../../../packages/demo/src/model/advice-client.js';
import { CancelledError } from '../../../packages/demo/src/model/cancelled-error.js';

const line = exampleLine();
const calibration = { line, options: { resonances: [{ speed: 600 }] } };

// Two channels of pure sines at 24 Hz, 0.3 and 0.8, sampled for 10 s.
function run(): Recording {
  const sine = (amplitude: number) =>
    Float64Array.from({ length: 2000 }, (_, n) => amplitude * Math.sin((2 * Math.PI * 24 * n) / 200));
  const channels = [
    { name: 'x', unit: 'm/s²' as const, samples: sine(0.3) },
    { name: 'y', unit: 'm/s²' as const, samples: sine(0.8) },
  ];
  const sampling = {
    kind: 'motion',
    duration: 10,
    gaps: [],
    clipping: [],
  } as unknown as Recording['sampling'];
  return { name: 'run', sampleRate: 200, channels, sampling };
}

describe('the first order of a run', () => {
  const first = (channel?: string) =>
    new AdviceClient().ask('firstOrder', {
      recording: run(),
      speed: 48 * Math.PI,
      ...(channel === undefined ? {} : { channel }),
    }).answer;

  it('is that of the channel that shows it most', async () => {
    const { channel, amplitude, unit, seen } = await first();
    expect({ channel, unit, seen }).toEqual({ channel: 'y', unit: 'm/s²', seen: true });
    expect(amplitude).toBeCloseTo(0.8, 3);
  });

  it('is that of the channel asked for, so that all runs of a balancing are read alike', async () => {
    expect((await first('x')).amplitude).toBeCloseTo(0.3, 3);
  });
});

describe('AdviceClient without a worker', () => {
  it('does the work on the page', async () => {
    const answer = await new AdviceClient().ask('remedies', { line, options: { speed: 345 } }).answer;
    expect(answer.map(({ title }) => title)).toEqual(
      proposeRemedies(line, { speed: 345 }).map(({ title }) => title),
    );
  });

  it('works where making the worker fails', async () => {
    const client = new AdviceClient(() => {
      throw new Error('blocked');
    });
    expect((await client.ask('calibrate', calibration).answer).designed).toBe(line);
  });

  it('refuses one that waits when it is cancelled, and does the others', async () => {
    const client = new AdviceClient();
    const first = client.ask('calibrate', calibration);
    const second = client.ask('calibrate', calibration);
    const third = client.ask('calibrate', calibration);
    second.cancel();
    await expect(second.answer).rejects.toThrow(CancelledError);
    expect((await first.answer).matches).toHaveLength(1);
    expect((await third.answer).matches).toHaveLength(1);
  });

  it('hands on what the core refuses', async () => {
    const asked = new AdviceClient().ask('remedies', { line, options: { speed: -1 } });
    await expect(asked.answer).rejects.toThrow(/speed/);
  });
});
