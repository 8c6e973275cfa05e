import { describe, expect, it } from 'vitest';
import { diagnoseTrials, exampleLine, type LineTrial, type TrialConditions } from '@sternline/core';
import { makeRecording, type Component } from '../../support/recordings.js';

const TURN = 2 * Math.PI;
const FITTED: TrialConditions = { propeller: 'fitted', medium: 'water' };

function trial(
  shaft: number,
  shares: Readonly<Record<string, number>>,
  more: { conditions?: TrialConditions; extra?: readonly Component[]; sampleRate?: number } = {},
): LineTrial {
  const components = Object.entries(shares).map(([order, amplitude]) => ({
    amplitude,
    frequency: Number(order) * shaft,
    phase: Number(order),
  }));
  const recording = makeRecording({
    sampleRate: more.sampleRate ?? 300,
    seconds: 8,
    channels: [{ components: [...components, ...(more.extra ?? [])] }, {}],
    noise: 0.03,
    seed: Math.round(100 * shaft),
  });
  return { recording, speed: TURN * shaft, conditions: more.conditions ?? FITTED };
}

const off: TrialConditions = { propeller: 'off', medium: 'air' };
const turned: TrialConditions = { ...FITTED, jointTurned: Math.PI };
const square = (shaft: number): number => 0.8 * (shaft / 32) ** 2;

describe('several trials of one line', () => {
  const speeds = [22, 26, 32].map((shaft) => trial(shaft, { 1: square(shaft) }));

  it('reads growth with its error from planted power laws', () => {
    const { growth } = diagnoseTrials({ trials: speeds });
    expect(growth[0]!.order).toBe(1);
    expect(Math.abs(growth[0]!.slope - 2)).toBeLessThan(3 * growth[0]!.standardError);
    // derived: the noise of 0.03 moves these amplitudes by a few parts in a thousand
    expect(growth[0]!.slope).toBeCloseTo(2, 1);
  });

  it('a heavy propeller: goes with the propeller', () => {
    const { findings, behaviours } = diagnoseTrials({
      trials: [...speeds, trial(32, { 1: 0.1 }, { conditions: off })],
    });
    expect(findings[0]!.cause).toBe('unbalance');
    expect(findings[0]!.evidence.join(' ')).toContain('With the propeller off it is 0.1');
    const own = behaviours.find(({ cause, test }) => cause === 'unbalance' && test === 'propeller-off')!;
    // derived: 0.1 of 0.8
    expect(own.ratio).toBeCloseTo(0.125, 2);
  });

  it('a bend: stays without the propeller and with the joint turned, grows less', () => {
    const grown = (shaft: number): number => 0.5 + 0.3 * (shaft / 32) ** 2;
    const { findings } = diagnoseTrials({
      trials: [
        ...[22, 26, 32].map((shaft) => trial(shaft, { 1: grown(shaft) })),
        trial(32, { 1: 0.74 }, { conditions: off }),
        trial(32, { 1: 0.8 }, { conditions: turned }),
      ],
    });
    expect(findings[0]!.cause).toBe('bent-shaft');
  });

  it('two blades or a joint: only the blades go with the propeller altogether', () => {
    const line = { ...exampleLine(), propeller: { ...exampleLine().propeller!, blades: 2 } };
    const fitted = [22, 26, 32].map((shaft) => trial(shaft, { 1: 0.1, 2: square(shaft) }));
    const named = (left: number) =>
      diagnoseTrials({ line, trials: [...fitted, trial(32, { 1: 0.1, 2: left }, { conditions: off })] })
        .findings[0]!.cause;
    expect([named(0), named(0.4)]).toEqual(['blade-pass', 'joint-angle']);
  });

  it('a line that stays put while the speed changes is no order', () => {
    const extra = [{ amplitude: 0.6, frequency: 71.3 }];
    const { findings, fixed } = diagnoseTrials({
      trials: [22, 26, 32].map((shaft) => trial(shaft, { 1: 0.1 }, { extra })),
    });
    expect(findings[0]!.cause).toBe('structural-resonance');
    expect(fixed[0]!.frequency).toBeCloseTo(71.3, 1);
    expect(fixed[0]!.trials).toEqual([0, 1, 2]);
    expect(findings[0]!.evidence[0]).toContain('stays there in trials 1, 2 and 3');
  });

  it('two speeds part orders that one speed lays together by folding', () => {
    // derived: at 100 Hz orders 1 and 2 of 33.3 Hz both show at 33.3 Hz; at 28 Hz they show at 28 and 44 Hz
    const at = (shaft: number) => trial(shaft, { 2: 0.8, 1: 0.05 }, { sampleRate: 100 });
    const one = diagnoseTrials({ trials: [at(100 / 3)] });
    const both = diagnoseTrials({ trials: [at(28), at(100 / 3)] });
    expect(one.findings.map(({ cause }) => cause)).not.toContain('joint-angle');
    expect(both.findings.map(({ cause }) => cause)).toContain('joint-angle');
  });

  it('does not depend on the order of trials under one condition', () => {
    const [a, b] = [speeds, [...speeds].reverse()].map((trials) => diagnoseTrials({ trials }));
    expect(b!.findings[0]!.cause).toBe(a!.findings[0]!.cause);
    expect(b!.findings[0]!.confidence).toBeCloseTo(a!.findings[0]!.confidence, 9);
  });

  it('says what is still open', () => {
    const { limits } = diagnoseTrials({ trials: speeds.slice(0, 1) });
    expect(limits).toHaveLength(3);
    expect(limits[0]).toContain('All trials ran at one speed');
    expect(diagnoseTrials({ trials: speeds }).limits).toHaveLength(2);
  });

  it('finds nothing in noise', () => {
    const { findings } = diagnoseTrials({ trials: [22, 26, 32].map((shaft) => trial(shaft, {})) });
    expect(findings).toEqual([]);
  });
});

describe('diagnoseTrials refuses', () => {
  it('no trials', () => {
    expect(() => diagnoseTrials({ trials: [] })).toThrow(
      new RangeError('diagnoseTrials: trials must be at least one, got a list of 0'),
    );
  });
  it('a speed of 0', () => {
    const good = trial(20, {});
    expect(() => diagnoseTrials({ trials: [good, { ...good, speed: 0 }] })).toThrow(
      new RangeError('diagnoseTrials: trials[1].speed must be a finite number greater than 0, got 0'),
    );
  });
  it('a recording without channels', () => {
    const good = trial(20, {});
    const bare = { ...good, recording: { ...good.recording, channels: [] } };
    expect(() => diagnoseTrials({ trials: [bare] })).toThrow(
      new RangeError('diagnoseTrials: trials[0].recording must be one with a channel or more, got "none"'),
    );
  });
});
