import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { TrialAnalyses } from '../../../packages/demo/src/leaves/trial-analyses.js';
import type { AnalysisClient } from '../../../packages/demo/src/model/analysis-client.js';
import type { TrialAnalysis } from '../../../packages/demo/src/model/analysis-types.js';
import { CancelledError } from '../../../packages/demo/src/model/cancelled-error.js';
import type { Trial } from '../../../packages/demo/src/model/project.js';

const host = {
  addController: () => undefined,
  requestUpdate: () => undefined,
} as unknown as ConstructorParameters<typeof TrialAnalyses>[0];
const recording = { name: 'run' } as Trial['recording'];
const trial: Trial = { id: 'a', name: 'run', lineId: 'l', note: '', simulated: false, recording };
const result = (speed: number) => ({ speed }) as TrialAnalysis;

function bench() {
  const analyse = vi.fn<AnalysisClient['analyse']>();
  const onDone = vi.fn();
  const analyses = new TrialAnalyses(host, { analyse } as unknown as AnalysisClient, onDone);
  return { analyse, onDone, analyses };
}

describe('TrialAnalyses', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('analyses once for one set of choices, however often it is asked', async () => {
    const { analyse, onDone, analyses } = bench();
    analyse.mockResolvedValue(result(100));
    for (let n = 0; n < 5; n++) analyses.request(trial, { wantedSpeed: 100 });
    await vi.runAllTimersAsync();
    analyses.request(trial, { wantedSpeed: 100 });
    await vi.runAllTimersAsync();
    expect(analyse).toHaveBeenCalledTimes(1);
    expect(onDone).toHaveBeenCalledTimes(1);
    expect(analyses.stateOf('a')).toMatchObject({ kind: 'done', analysis: { speed: 100 } });
  });

  it('waits for the last of several quick changes and keeps the old answer meanwhile', async () => {
    const { analyse, analyses } = bench();
    analyse.mockImplementation((_, { wantedSpeed }) => Promise.resolve(result(wantedSpeed)));
    analyses.request(trial, { wantedSpeed: 100 });
    await vi.runAllTimersAsync();
    for (const wantedSpeed of [110, 120, 130]) analyses.request(trial, { wantedSpeed });
    expect(analyses.stateOf('a')).toMatchObject({ kind: 'waiting', analysis: { speed: 100 } });
    await vi.runAllTimersAsync();
    expect(analyse).toHaveBeenCalledTimes(2);
    expect(analyses.stateOf('a')).toMatchObject({ kind: 'done', analysis: { speed: 130 } });
  });

  it('lets a late answer to an old question fall', async () => {
    const { analyse, onDone, analyses } = bench();
    let answer: (analysis: TrialAnalysis) => void = () => undefined;
    analyse.mockImplementationOnce(() => new Promise((resolve) => (answer = resolve)));
    analyse.mockResolvedValue(result(200));
    analyses.request(trial, { wantedSpeed: 100 });
    await vi.runAllTimersAsync();
    analyses.request(trial, { wantedSpeed: 200 });
    await vi.runAllTimersAsync();
    answer(result(100));
    await vi.runAllTimersAsync();
    expect(analyses.stateOf('a').analysis?.speed).toBe(200);
    expect(onDone).toHaveBeenCalledTimes(1);
  });

  it('says that it was cancelled, or what failed, and does it again when asked', async () => {
    const { analyse, analyses } = bench();
    analyse.mockRejectedValueOnce(new CancelledError());
    analyse.mockRejectedValueOnce(new Error('too short'));
    analyse.mockResolvedValue(result(100));
    analyses.request(trial, { wantedSpeed: 100 });
    await vi.runAllTimersAsync();
    expect(analyses.stateOf('a').kind).toBe('cancelled');
    analyses.repeat('a');
    await vi.runAllTimersAsync();
    expect(analyses.stateOf('a')).toMatchObject({ kind: 'failed', problem: 'too short' });
    analyses.repeat('a');
    await vi.runAllTimersAsync();
    expect(analyses.stateOf('a').kind).toBe('done');
  });

  it('does not show the answer of one recording for another', async () => {
    const { analyse, analyses } = bench();
    analyse.mockResolvedValue(result(100));
    analyses.request(trial, { wantedSpeed: 100 });
    await vi.runAllTimersAsync();
    analyses.request({ ...trial, recording: { name: 'other' } as Trial['recording'] }, { wantedSpeed: 100 });
    expect(analyses.stateOf('a').analysis).toBeUndefined();
  });
});
