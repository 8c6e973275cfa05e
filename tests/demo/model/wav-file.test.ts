import { readDelimited, readWav } from '@sternline/core';
import { describe, expect, it } from 'vitest';
import { motionFile, motionRate } from '../../../packages/demo/src/model/motion-file.js';
import { wavFile } from '../../../packages/demo/src/model/wav-file.js';

describe('wavFile', () => {
  it('is read back to the last bit', async () => {
    const blocks = [Float32Array.of(0, 0.25, -0.5), Float32Array.of(0.75)];
    const file = wavFile('hum.wav', { sampleRate: 44_100, blocks });
    const recording = readWav(new Uint8Array(await file.arrayBuffer()));
    expect(recording.sampleRate).toBe(44_100);
    expect([...recording.channels[0]!.samples]).toEqual([0, 0.25, -0.5, 0.75]);
  });
});

describe('motionFile', () => {
  const samples = Array.from({ length: 400 }, (_, n) => ({
    time: 5000 + (1000 * n) / 60,
    x: Math.sin(n),
    y: Math.cos(3 * n),
    z: 9.8 + 0.1 * Math.sin(2 * n),
  }));

  it('is read as acceleration at the rate of its stamps', async () => {
    const recording = readDelimited(await motionFile('shake.csv', samples).text());
    expect(recording.sampleRate).toBeCloseTo(60, 2);
    expect(recording.channels.map(({ name, unit }) => `${name} ${unit}`)).toEqual([
      'x m/s²',
      'y m/s²',
      'z m/s²',
    ]);
  });

  it('counts a rate only where there is something to count', () => {
    expect(motionRate(samples)).toBeCloseTo(60, 9);
    expect(motionRate(samples.slice(0, 5))).toBeUndefined();
    expect(motionRate(samples.map((sample) => ({ ...sample, time: 7 })))).toBeUndefined();
  });
});
