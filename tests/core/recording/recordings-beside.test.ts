import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  decodeText,
  readDelimited,
  RecordingError,
  type ReadDelimitedOptions,
  type Recording,
} from '@sternline/core';

/* Recordings that lie beside the checkout and are no part of it; INDEX.md there states the right reading of each. */
const data = fileURLToPath(new URL('../../../../shared/data/', import.meta.url));

function read(name: string, options?: ReadDelimitedOptions): Recording {
  return readDelimited(decodeText(readFileSync(data + name)), options);
}

function refusal(name: string): RecordingError {
  try {
    read(name);
  } catch (error) {
    if (error instanceof RecordingError) return error;
    throw error;
  }
  throw new Error(`${name} was read`);
}

/** Amplitude at one frequency by projection under a Hann window. */
function amplitude(samples: Float64Array, cyclesPerSample: number): number {
  let [re, im, weights] = [0, 0, 0];
  samples.forEach((sample, i) => {
    const weight = 1 - Math.cos((2 * Math.PI * (i + 0.5)) / samples.length);
    re += weight * sample * Math.cos(2 * Math.PI * cyclesPerSample * i);
    im += weight * sample * Math.sin(2 * Math.PI * cyclesPerSample * i);
    weights += weight;
  });
  return (2 * Math.hypot(re, im)) / weights;
}

describe.skipIf(!existsSync(data))('recordings beside the checkout: odd shapes', () => {
  it.each([
    '01-semicolon-decimal-comma.csv',
    '02-utf16-tab.txt',
    '03-epoch-ns-axes-reversed.csv',
    '04-iso-dates.csv',
    '05-metadata-head.csv',
    '06-units-row.csv',
    '08-duplicate-stamps.csv',
    '09-gap.csv',
    '10-missing-and-words.csv',
    '11-rows-out-of-order.csv',
    '12-two-sensors-interleaved.csv',
    '13-json-lines.jsonl',
    '19-clipped.csv',
    '20-quoted-sci.csv',
    '21-spreadsheet-sep-line.csv',
    '22-thousands.csv',
  ])('%s is 200 Hz, three axes in m/s², strongest at 37 Hz on y', (name) => {
    const { sampleRate, channels } = read(`odd-shapes/${name}`);
    // Stamps rounded to two samples over 600 rows fix the rate to about one part in ten thousand.
    expect(Math.abs(sampleRate / 200 - 1)).toBeLessThan(2e-4);
    expect(channels.map((channel) => `${channel.name} ${channel.unit}`)).toEqual([
      'x m/s²',
      'y m/s²',
      'z m/s²',
    ]);
    const [x, y, z] = channels.map(({ samples }) => amplitude(samples, 37 / sampleRate));
    expect(y).toBeGreaterThan(0.5);
    expect(y).toBeGreaterThan(2 * x!);
    expect(y).toBeGreaterThan(2 * z!);
  });

  it('one time of two is used, and the other said to be unused', () => {
    expect(read('odd-shapes/03-epoch-ns-axes-reversed.csv').sampling.notes.join()).toContain('was not used');
  });

  it('a magnitude is no fourth axis', () => {
    for (const name of ['06-units-row.csv', '20-quoted-sci.csv']) {
      expect(read(`odd-shapes/${name}`).sampling.columns.at(-1)!.role).toBe('magnitude');
    }
  });

  it('without a time it asks for the rate, and reads three axes with it', () => {
    expect(refusal('odd-shapes/07-no-header-no-time.txt').code).toBe('needs-sample-rate');
    const given = read('odd-shapes/07-no-header-no-time.txt', { sampleRate: 200 });
    expect([given.channels.length, given.sampling.rateFrom]).toEqual([3, 'given']);
  });

  it('coarse stamps are said to have been counted', () => {
    expect(read('odd-shapes/08-duplicate-stamps.csv').sampling.notes.join()).toContain(
      'taken by their count: 200 Hz',
    );
    const clock = read('odd-shapes/18-clock-time-damaged.csv');
    expect(clock.sampling.stampStep).toBeCloseTo(0.1, 9);
    expect(clock.sampling.notes.join()).toContain('taken by their count: 20 Hz');
  });

  it('a gap of 0.2 s is reported', () => {
    expect(read('odd-shapes/09-gap.csv').sampling.gaps).toEqual([{ start: 250, count: 40 }]);
  });

  it('bad cells are counted with their first lines, and unsorted rows are told', () => {
    expect(read('odd-shapes/10-missing-and-words.csv').sampling.badCells).toEqual({
      count: 17,
      lines: [2, 99, 153, 196, 293],
    });
    expect(read('odd-shapes/11-rows-out-of-order.csv').sampling.unsortedRows).toBeGreaterThan(500);
  });

  it('both sensors are offered by name', () => {
    expect(
      read('odd-shapes/12-two-sensors-interleaved.csv').sampling.sensors!.map(({ name }) => name),
    ).toEqual(['acc', 'gyro']);
  });

  it.each([
    ['14-positions.csv', 'positions'],
    ['15-spectrum.csv', 'spectrum'],
    ['16-empty.csv', 'empty'],
    ['17-header-only.csv', 'no-rows'],
  ])('%s is refused as %s', (name, code) => {
    expect(refusal(`odd-shapes/${name}`).code).toBe(code);
  });

  it('clipping on y is reported', () => {
    const { clipping } = read('odd-shapes/19-clipped.csv').sampling;
    expect(clipping.map(({ channel, level }) => [channel, level])).toEqual([
      ['y', 2],
      ['y', -2],
    ]);
  });
});

describe.skipIf(!existsSync(data))('recordings beside the checkout: a fan', () => {
  const names = ['1-speed-050', '1-speed-100', '2-speed-050', '2-speed-100', '3-speed-050', '3-speed-100'];
  it.each(names)(
    'weights-%s is 50 Hz in m/s², gravity on x, clipped at 8 g only where three samples stand there',
    (name) => {
      const { sampleRate, channels, sampling } = read(`fan-unbalance/weights-${name}.csv`);
      expect(sampleRate).toBeCloseTo(50, 6);
      expect(sampling.gravity).toBe('present');
      expect(channels[0]!.samples.reduce((sum, sample) => sum + sample, 0) / 3000).toBeGreaterThan(9);
      for (const { level } of sampling.clipping) expect(Math.abs(level) / (8 * 9.80665)).toBeCloseTo(1, 2);
      expect(sampling.clipping.length > 0).toBe(name === '1-speed-100');
    },
  );
});

describe.skipIf(!existsSync(data))('recordings beside the checkout: a washing machine', () => {
  const recording = existsSync(data) ? read('washer-phone/recording.csv') : undefined;

  it('203.4 Hz from the count, with its equal stamps told and nothing lost', () => {
    const { sampleRate, channels, sampling } = recording!;
    expect(Math.abs(sampleRate - 203.4)).toBeLessThan(0.2);
    expect(channels.map(({ samples }) => samples.length)).toEqual([103492, 103492, 103492]);
    expect(sampling).toMatchObject({ equalStamps: 1902, gaps: [], timeBase: 'counts', gravity: 'removed' });
    expect(sampling.stampStep).toBeCloseTo(0.001, 9);
    expect(sampling.columns[4]!.role).toBe('magnitude');
  });

  it('the third order on z and the first on x have the heights that an independent program read', () => {
    const { sampleRate, channels } = recording!;
    const stretch = (k: number): Float64Array =>
      channels[k]!.samples.subarray(Math.round(385 * sampleRate), Math.round(430 * sampleRate));
    const peak = (samples: Float64Array, hertz: number): number => {
      // The speed wanders a little, so the best of short stretches and near frequencies is the order's height.
      let best = 0;
      for (let from = 0; from + 1024 <= samples.length; from += 512) {
        for (let step = -10; step <= 10; step++) {
          best = Math.max(
            best,
            amplitude(samples.subarray(from, from + 1024), (hertz * (1 + step / 1000)) / sampleRate),
          );
        }
      }
      return best;
    };
    const third = peak(stretch(2), 3 * 19.15);
    const first = peak(stretch(0), 19.15);
    expect(third).toBeGreaterThan(0.5);
    expect(third).toBeLessThan(0.8);
    expect(first).toBeGreaterThan(0.25);
    expect(first).toBeLessThan(0.4);
  });
});
