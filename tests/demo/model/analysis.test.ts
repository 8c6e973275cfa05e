import { readFileSync, existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../packages/demo/src/model/analysis.js';
import { readBytes } from '../../../packages/demo/src/model/read-bytes.js';
import type { Recording } from '@sternline/core';

const RPM = Math.PI / 30;

/** Deterministic noise of unit variance, roughly normal: the sum of twelve even draws. */
function noise(): () => number {
  let state = 12345;
  const draw = () => (state = (16807 * state) % 2147483647) / 2147483647;
  return () => Array.from({ length: 12 }, draw).reduce((sum, value) => sum + value, -6);
}

function textOf(signal: (t: number) => number, seconds = 20): Uint8Array {
  const next = noise();
  const rows = Array.from({ length: seconds * 400 }, (_, n) => {
    const t = n / 400;
    return `${t.toFixed(4)},${(signal(t) + 0.05 * next()).toFixed(5)},${(0.05 * next()).toFixed(5)},${(9.81 + 0.05 * next()).toFixed(5)}`;
  });
  return new TextEncoder().encode(['t (s),ax (m/s²),ay (m/s²),az (m/s²)', ...rows].join('\n'));
}

function read(bytes: Uint8Array): Recording {
  const outcome = readBytes({ name: 'bench run.csv', bytes });
  if (outcome.kind !== 'read') throw new Error(outcome.found);
  return outcome.recording;
}

describe('readBytes', () => {
  it('names the recording after its file and reads its rate', () => {
    const recording = read(textOf(() => 0, 5));
    expect(recording.name).toBe('bench run');
    // The stamps count 400 a second.
    expect(recording.sampleRate).toBeCloseTo(400, 3);
  });

  it('says what stands in the way and what the page can do about it', () => {
    const bytes = new TextEncoder().encode(Array.from({ length: 50 }, (_, n) => `0.${n} 0.1 9.8`).join('\n'));
    const outcome = readBytes({ name: 'bare.txt', bytes });
    expect(outcome).toMatchObject({
      kind: 'stopped',
      code: 'needs-sample-rate',
      remedy: 'Put in how many samples a second were taken; the logger’s settings show it.',
    });
    expect(readBytes({ name: 'bare.txt', bytes }, { sampleRate: 100 }).kind).toBe('read');
  });

  it('refuses an empty file without falling over', () => {
    expect(readBytes({ name: 'x.csv', bytes: new Uint8Array(0) })).toMatchObject({
      kind: 'stopped',
      code: 'empty',
    });
  });
});

describe('analyse', () => {
  const shaking = read(
    textOf((t) => 0.8 * Math.sin(2 * Math.PI * 40 * t) + 0.2 * Math.sin(2 * Math.PI * 80 * t)),
  );

  it('shows a planted line at its frequency and amplitude, on the channel that has it, strongest first', () => {
    const { spectra } = analyse(shaking, { wantedSpeed: 2400 * RPM });
    const [first] = spectra;
    expect(first!.channel).toBe(shaking.channels[0]!.name);
    const highest = first!.amplitude.indexOf(Math.max(...first!.amplitude.subarray(2)));
    expect(Math.abs(highest * first!.step - 40)).toBeLessThanOrEqual(first!.step);
    // A sine between two lines of a Hann window reads low by at most 1.42 dB, 15 % (Harris 1978, table I).
    expect(first!.amplitude[highest]).toBeGreaterThan(0.8 * 0.85 - 0.01);
    expect(first!.amplitude[highest]).toBeLessThan(0.8 * 1.01 + 0.01);
  });

  it('takes the speed that it is given before all others', () => {
    const analysis = analyse(shaking, { wantedSpeed: 6000 * RPM, speed: 2400 * RPM });
    expect(analysis).toMatchObject({ speed: 2400 * RPM, speedFrom: 'given' });
    expect(analysis.diagnosis.findings[0]!.cause).toBe('unbalance');
  });

  it('takes a speed near the wanted one out of the recording, within the width of a line', () => {
    const { speed, speedFrom } = analyse(shaking, { wantedSpeed: 2500 * RPM });
    expect(speedFrom).toBe('recording');
    expect(Math.abs(speed / (2 * Math.PI) - 40)).toBeLessThan(0.1);
  });

  it('claims nothing from noise, and falls back on the wanted speed', () => {
    const analysis = analyse(read(textOf(() => 0)), { wantedSpeed: 2400 * RPM });
    expect(analysis).toMatchObject({ speedFrom: 'wanted', speed: 2400 * RPM });
    expect(analysis.diagnosis.findings).toEqual([]);
  });

  it('looks at the part that was chosen, and outlines the whole', () => {
    const halves = read(
      textOf((t) => (t < 10 ? Math.sin(2 * Math.PI * 30 * t) : Math.sin(2 * Math.PI * 50 * t))),
    );
    const { diagnosis, envelopes, part } = analyse(halves, {
      wantedSpeed: 1800 * RPM,
      part: { from: 0.5, to: 9.5 },
    });
    expect(part).toEqual({ from: 0.5, to: 9.5 });
    expect(envelopes[0]!.duration).toBeCloseTo(20, 2);
    expect(diagnosis.peaks.some((peak) => Math.abs(peak.frequency - 30) < 0.2)).toBe(true);
    expect(diagnosis.peaks.some((peak) => Math.abs(peak.frequency - 50) < 0.5)).toBe(false);
  });

  it('tells how far it is, in rising shares', () => {
    const shares: number[] = [];
    analyse(shaking, { wantedSpeed: 2400 * RPM }, ({ share }) => shares.push(share));
    expect(shares.length).toBeGreaterThanOrEqual(3);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});

const washer = fileURLToPath(new URL('../../../../shared/data/washer-phone/recording.csv', import.meta.url));

describe.skipIf(!existsSync(washer))(
  'a real recording: a phone on a washing machine (skipped where it is not at hand)',
  () => {
    it('reads the third order of the fast spin on z, 0.59 m/s² at 57.5 Hz', () => {
      const recording = read(readFileSync(washer));
      const { diagnosis, spectra } = analyse(recording, {
        wantedSpeed: 1200 * RPM,
        // Read from the spectra by an independent program: 19.15 Hz.
        speed: 2 * Math.PI * 19.15,
        part: { from: 385, to: 430 },
      });
      const third = diagnosis.orders.find((order) => order.order === 3)!;
      expect(third).toMatchObject({ seen: true, channel: 'z', folded: false });
      expect(Math.abs(third.amplitude - 0.59)).toBeLessThan(0.06);
      expect(spectra[0]!.channel).toBe('z');
    });
  },
);
