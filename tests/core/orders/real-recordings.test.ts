import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  estimateSpeed,
  orderAmplitudes,
  readDelimited,
  readWav,
  sliceRecording,
  type Recording,
} from '@sternline/core';

/*
 * Recordings of real machines that are not part of the project; skipped where the folder is absent. Their speeds were read from
 * the spectra by an independent program, since no tachometer was fitted.
 */
const folder = fileURLToPath(new URL('../../../../shared/data/', import.meta.url));
const present = existsSync(folder);
const TURN = 2 * Math.PI;
const text = (name: string): Recording => readDelimited(readFileSync(folder + name, 'utf8'));

describe.skipIf(!present)('washing machine with a phone on it (shared/data/washer-phone)', () => {
  const whole = present ? text('washer-phone/recording.csv') : undefined;

  it.each([
    [160, 176, 4.99],
    [290, 355, 16.66],
    [385, 430, 19.15],
    [442, 458, 19.32],
  ])('%d to %d s: %d Hz', (from, to, shaft) => {
    const { speed, confidence } = estimateSpeed(sliceRecording(whole!, { from, to }), {
      range: [TURN * 3, TURN * 25],
    });
    expect(Math.abs(speed / TURN / shaft - 1)).toBeLessThan(0.01);
    expect(confidence).toBeGreaterThan(0.8);
  });

  it('at 385 to 430 s the third order leads on z with 0.59 m/s² and the first on x with 0.29', () => {
    const recording = sliceRecording(whole!, { from: 385, to: 430 });
    const { orders } = orderAmplitudes({ recording, speed: TURN * 19.15, orders: [1, 2, 3] });
    const on = (axis: number): number[] => orders.map(({ channels }) => channels[axis]!.amplitude);
    expect(Math.abs(on(2)[2]! - 0.59)).toBeLessThan(0.03);
    expect(Math.abs(on(0)[0]! - 0.29)).toBeLessThan(0.03);
  });
});

describe.skipIf(!present)('small fan with weights (shared/data/fan-unbalance)', () => {
  it.each([
    ['1-speed-050', 8.48],
    ['1-speed-100', 15.5],
    ['2-speed-050', 9.07],
    ['2-speed-100', 17.4],
    ['3-speed-100', 19.8],
  ])('weights %s: first order at %d Hz', (name, shaft) => {
    const { candidates } = estimateSpeed(text(`fan-unbalance/weights-${name}.csv`), {
      range: [TURN * 5, TURN * 24],
    });
    expect(Math.abs(candidates[0]!.speed / TURN / shaft - 1)).toBeLessThan(0.01);
  });

  it('weights 3 at half speed: too weak to claim', () => {
    const { confidence } = estimateSpeed(text('fan-unbalance/weights-3-speed-050.csv'), {
      range: [TURN * 5, TURN * 24],
    });
    // A claim is what is likelier right than wrong.
    expect(confidence).toBeLessThan(0.5);
  });
});

describe.skipIf(!present)('small motor beside a microphone (shared/data/motor-sound)', () => {
  it.each([
    ['no_prop_20pct_013', 57.8, {}],
    ['no_prop_50pct_001', 198.6, {}],
    ['no_prop_80pct_001', 210.3, {}],
    ['prop_30pct_001', 60.2, { propeller: { blades: 2 } }],
    ['prop_60pct_000', 120.5, { propeller: { blades: 2 } }],
  ])('%s: shaft at %d Hz', (name, shaft, line) => {
    const recording = readWav(readFileSync(`${folder}motor-sound/${name}.wav`));
    const { candidates } = estimateSpeed(recording, { range: [TURN * 30, TURN * 350], line });
    expect(Math.abs(candidates[0]!.speed / TURN / shaft - 1)).toBeLessThan(0.01);
  });
});
