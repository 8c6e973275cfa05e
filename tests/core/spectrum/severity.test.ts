import { describe, expect, it } from 'vitest';
import { severity } from '@sternline/core';
import { makeRecording } from '../../support/recordings.js';

function shaken(velocity: number, frequency: number, sampleRate = 4000) {
  const amplitude = velocity * 2 * Math.PI * frequency * Math.SQRT2;
  const axis = (share: number) => ({ components: [{ amplitude: share * amplitude, frequency }], offset: 3 });
  return makeRecording({
    sampleRate,
    seconds: 8,
    channels: [axis(0.2), axis(1), axis(0.5)],
    noise: 0,
    seed: 1,
  });
}

describe('severity', () => {
  /** Sines of known velocity; zone limits of ISO 10816-1:1995, annex B, class I (check values, from memory). */
  it.each([
    [0.0006, 'A'],
    [0.0015, 'B'],
    [0.0044, 'C'],
    [0.005, 'D'],
  ])('%f m/s rms is in zone %s of class I', (velocity, zone) => {
    for (const frequency of [12, 50, 100, 800]) {
      const read = severity(shaken(velocity, frequency));
      // A line near the end of the band loses the skirts that the window spreads outside it.
      expect(Math.abs(read.velocity / velocity - 1)).toBeLessThan(0.01);
      expect(read).toMatchObject({ zone, channel: 'y', band: { from: 10, to: 1000 } });
    }
  });

  it('takes the class it is told', () => {
    const zones = (['I', 'II', 'III', 'IV'] as const).map(
      (machineClass) => severity(shaken(0.005, 50), { machineClass }).zone,
    );
    expect(zones).toEqual(['D', 'C', 'C', 'B']);
    expect(severity(shaken(0.0015, 50), { machineClass: 'IV' }).zone).toBe('A');
  });

  it('does not count what lies outside 10 to 1000 Hz', () => {
    expect(severity(shaken(0.01, 5)).velocity).toBeLessThan(1e-4);
    expect(severity(shaken(0.01, 1200)).velocity).toBeLessThan(1e-4);
  });

  it('gives no zone where the rate does not cover the band, and says so', () => {
    const read = severity(shaken(0.0044, 30, 200));
    expect(read.zone).toBeUndefined();
    expect(Math.abs(read.velocity / 0.0044 - 1)).toBeLessThan(0.01);
    expect(read.scope.join(' ')).toContain('shows 10 to 100 Hz at most, so the velocity is a least value');
  });

  it('gives no zone for a clipped recording', () => {
    const recording = shaken(0.0044, 30);
    const clipping = [{ channel: 'y', count: 5, level: 1 }];
    const read = severity({ ...recording, sampling: { ...recording.sampling, clipping } });
    expect(read.zone).toBeUndefined();
    expect(read.scope.join(' ')).toContain('clipped');
  });

  it('refuses sound, a slow rate and an unknown class', () => {
    const sound = makeRecording({
      sampleRate: 8000,
      seconds: 2,
      channels: [{ unit: 'full scale' }],
      noise: 1,
      seed: 1,
    });
    expect(() => severity(sound)).toThrow('severity: recording must be one of acceleration, got "none"');
    expect(() => severity(shaken(0.001, 5, 20))).toThrow(
      new RangeError('severity: recording must be sampled at 25 Hz or more, got 20'),
    );
    expect(() => severity(shaken(0.001, 50), { machineClass: 'V' as 'I' })).toThrow(
      new RangeError('severity: machineClass must be one of I, II, III, IV, got "V"'),
    );
  });
});
