import type { Recording } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { AnalysisClient } from '../../../packages/demo/src/model/analysis-client.js';
import { CancelledError } from '../../../packages/demo/src/model/cancelled-error.js';

const choices = { read: {}, analysis: { wantedSpeed: 600 } };
const text = [
  't,x',
  ...Array.from(
    { length: 2000 },
    (_, n) => `${n / 200},${Math.sin(2 * Math.PI * 20 * (n / 200)) + 0.01 * Math.sin(n * n)}`,
  ),
].join('\n');
const file = () => ({ name: 'run.csv', bytes: new TextEncoder().encode(text) });

describe('AnalysisClient without a worker', () => {
  it('reads and analyses on the page, and tells how far it is', async () => {
    const told: string[] = [];
    const opened = await new AnalysisClient().open(file(), choices, ({ doing }) => told.push(doing));
    expect(opened.outcome.kind).toBe('read');
    expect(opened.analysis?.spectra[0]?.channel).toBe('x');
    expect(told[0]).toBe('Reading run.csv');
    expect(told.length).toBeGreaterThan(2);
  });

  it('works where making the worker fails', async () => {
    const client = new AnalysisClient(() => {
      throw new Error('blocked');
    });
    expect((await client.open(file(), choices, () => undefined)).outcome.kind).toBe('read');
  });

  it('rejects what waits when it is cancelled, and works again afterwards', async () => {
    const client = new AnalysisClient();
    const waiting = client.open(file(), choices, () => undefined);
    client.cancel();
    await expect(waiting).rejects.toThrow(CancelledError);
    const opened = await client.open(file(), choices, () => undefined);
    if (opened.outcome.kind !== 'read') throw new Error('not read');
    const recording: Recording = opened.outcome.recording;
    const known = { wantedSpeed: 600, speed: 40 * Math.PI };
    const analysis = await client.analyse(recording, known, () => undefined);
    expect(analysis.speedFrom).toBe('given');
  });
});
