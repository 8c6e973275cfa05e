import { exampleLine, proposeRemedies } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { AdviceClient } from '../../../packages/demo/src/model/advice-client.js';
import { CancelledError } from '../../../packages/demo/src/model/cancelled-error.js';

const line = exampleLine();
const calibration = { line, options: { resonances: [{ speed: 600 }] } };

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
