import { describe, expect, it } from 'vitest';
import { criticalSpeeds, diagnose, exampleLine, type Finding } from '@sternline/core';
import { makeRecording } from '../../support/recordings.js';

const TURN = 2 * Math.PI;

function whirlAt(speed: number, shares: Readonly<Record<string, number>>): Finding | undefined {
  const line = exampleLine();
  const components = Object.entries(shares).map(([order, amplitude]) => ({
    amplitude,
    frequency: (Number(order) * speed) / TURN,
    phase: Number(order),
  }));
  const recording = makeRecording({
    sampleRate: 4000,
    seconds: 6,
    channels: [{ components }],
    noise: 0.1,
    seed: 4,
  });
  return diagnose({ recording, speed, line }).findings.find(({ cause }) => cause === 'whirl');
}

describe('whirl by other orders than the first', () => {
  // derived: a joint at an angle pushes twice a turn, so at about half the critical speed it meets the same whirl
  it.each(['forward', 'backward'] as const)('order 2 at its critical speed of %s whirl', (whirl) => {
    const [first] = criticalSpeeds(exampleLine(), { order: 2, whirl, count: 1 });
    const found = whirlAt(0.97 * first!.speed, { 1: 0.1, 2: 1 });
    const said = found!.evidence.join(' ');
    expect(said).toContain('Order 2 at ');
    expect(said).toMatch(/where order 2 meets a (forward|backward) whirl of the line; the band/);
    expect(said).toContain('between pinned and clamped a critical speed moves by up to 2.27 times');
    expect(found!.outcomes[0]!.result).toContain('order 2 falls');
    expect(found!.confidence).toBeLessThanOrEqual(0.3);
  });

  it('the blade order at its critical speed', () => {
    const [first] = criticalSpeeds(exampleLine(), { order: 4, count: 1 });
    const found = whirlAt(first!.speed, { 1: 0.1, 4: 1 });
    expect(found!.evidence.join(' ')).toMatch(/where order 4 meets a (forward|backward) whirl/);
    expect(found!.rivals.map(({ cause }) => cause)).toEqual(['blade-pass']);
  });

  it('not by an order that is weak there, nor at another speed', () => {
    const [first] = criticalSpeeds(exampleLine(), { order: 2, count: 1 });
    expect(whirlAt(first!.speed, { 1: 1, 2: 0.2 })).toBeUndefined();
    // derived: below the lower of the two ways by more than the margin of a quarter
    const [backward] = criticalSpeeds(exampleLine(), { order: 2, whirl: 'backward', count: 1 });
    expect(whirlAt(0.6 * backward!.speed, { 1: 0.1, 2: 1 })).toBeUndefined();
  });
});
