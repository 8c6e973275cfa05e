import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWav, RecordingError } from '@sternline/core';
import fixtures from '../../reference/recording/wav.json';
import odd from '../../reference/recording/odd-wav.json';

function bytesOf(base64: string): Uint8Array {
  return new Uint8Array(Buffer.from(base64, 'base64'));
}

function ascii(text: string): number[] {
  return Array.from(text, (letter) => letter.charCodeAt(0));
}

function u32(value: number): number[] {
  return [value & 255, (value >>> 8) & 255, (value >>> 16) & 255, value >>> 24];
}

function chunk(id: string, body: readonly number[], size = body.length): number[] {
  return [...ascii(id), ...u32(size), ...body, ...(body.length % 2 === 1 ? [0] : [])];
}

const FORMAT = [1, 0, 1, 0, ...u32(8000), ...u32(16000), 2, 0, 16, 0];
/** 0, 16384, −16384, 32767 as 16-bit samples: by hand. */
const SOUND = [0, 0, 0, 64, 0, 192, 255, 127];
const HEARD = [0, 0.5, -0.5, 32767 / 32768];

function file(...chunks: readonly (readonly number[])[]): Uint8Array {
  const body = chunks.flat();
  return Uint8Array.from([...ascii('RIFF'), ...u32(4 + body.length), ...ascii('WAVE'), ...body]);
}

function refused(bytes: Uint8Array): RecordingError {
  try {
    readWav(bytes);
  } catch (error) {
    if (error instanceof RecordingError) return error;
    throw error;
  }
  throw new Error('was read');
}

describe('readWav on files of independent writers (tests/reference/recording/make_wav.py, make_odd_wav.py)', () => {
  it.each([...fixtures.files, ...odd.files])('$name', ({ base64, sampleRate, channels, name }) => {
    const recording = readWav(bytesOf(base64));
    expect(recording.sampleRate).toBe(sampleRate);
    expect(recording.channels).toHaveLength(channels.length);
    channels.forEach((expected, i) => {
      expect(recording.channels[i]!.samples).toHaveLength(expected.length);
      // Both sides divide the same whole number by the same power of two, or pass a float through: no rounding at all.
      expected.forEach((value, k) => {
        expect(recording.channels[i]!.samples[k], `${name} ${i} ${k}`).toBe(value);
      });
    });
    expect(recording.sampling.notes).toEqual([]);
  });

  it.each([
    ['ALAW', 'A-law'],
    ['ULAW', 'µ-law'],
    ['MS_ADPCM', 'Microsoft ADPCM'],
    ['IMA_ADPCM', 'IMA ADPCM'],
    ['GSM610', 'GSM 6.10'],
  ])('refuses %s by its name', (subtype, name) => {
    const error = refused(bytesOf(fixtures.refused.find((entry) => entry.name.includes(subtype))!.base64));
    expect(error.code).toBe('compressed');
    expect(error.message).toBe(
      `readWav: byte 20: the sound is stored as ${name}, not as plain samples. Save it as WAV (PCM), 16 or 24 bit, with a sound editor.`,
    );
  });
});

describe('readWav on headers as they occur', () => {
  it('reads a plain file, from a Uint8Array within a buffer and from an ArrayBuffer', () => {
    const bytes = file(chunk('fmt ', FORMAT), chunk('data', SOUND));
    const padded = new Uint8Array([9, 9, 9, ...bytes]).subarray(3);
    for (const given of [bytes, padded, bytes.buffer as ArrayBuffer]) {
      expect([...readWav(given).channels[0]!.samples]).toEqual(HEARD);
    }
    expect(readWav(bytes, { name: 'bench' }).name).toBe('bench');
    expect(readWav(bytes).sampling).toMatchObject({
      kind: 'sound',
      duration: 4 / 8000,
      rateFrom: 'header',
      jitter: 0,
    });
  });

  it('passes over unknown chunks, odd ones with and without their padding', () => {
    const odd = file(
      chunk('LIST', [1, 2, 3]),
      chunk('fmt ', FORMAT),
      chunk('junk', [7]),
      chunk('data', SOUND),
    );
    const unpadded = file(
      [...ascii('junk'), ...u32(3), 1, 2, 3],
      chunk('fmt ', FORMAT),
      chunk('data', SOUND),
    );
    expect([...readWav(odd).channels[0]!.samples]).toEqual(HEARD);
    expect([...readWav(unpadded).channels[0]!.samples]).toEqual(HEARD);
  });

  it('reads a format that stands after the sound', () => {
    expect([...readWav(file(chunk('data', SOUND), chunk('fmt ', FORMAT))).channels[0]!.samples]).toEqual(
      HEARD,
    );
  });

  it.each([
    ['0', 0, 'states no sound at all'],
    ['left open', 0xffffffff, 'leaves the length open'],
    ['too long', 5000, 'states 5000 bytes of sound and 8 are there'],
  ])('mends a length that is %s', (_, size, note) => {
    const { channels, sampling } = readWav(file(chunk('fmt ', FORMAT), chunk('data', SOUND, size)));
    expect([...channels[0]!.samples]).toEqual(HEARD);
    expect(sampling.notes.join()).toContain(note);
  });

  it('leaves out a frame that is cut off, and says so', () => {
    const { channels, sampling } = readWav(
      file(chunk('fmt ', FORMAT), [...ascii('data'), ...u32(8), ...SOUND.slice(0, 7)]),
    );
    expect([...channels[0]!.samples]).toEqual(HEARD.slice(0, 3));
    expect(sampling.notes).toHaveLength(2);
  });

  it('tells clipping and dead silence', () => {
    const loud = Array.from({ length: 400 }, (_, i) =>
      Math.max(-32768, Math.min(32767, Math.round(60000 * Math.sin(i * 0.31)))),
    );
    const sound = [...loud, ...Array.from({ length: 2000 }, () => 0), ...loud].flatMap((value) => [
      value & 255,
      (value >> 8) & 255,
    ]);
    const { sampling } = readWav(file(chunk('fmt ', FORMAT), chunk('data', sound)));
    expect(sampling.clipping.map(({ level }) => level)).toEqual([32767 / 32768, -1]);
    expect(sampling.clipping[0]!.count).toBe(2 * loud.filter((value) => value === 32767).length);
    expect(sampling.stuck).toEqual([{ channel: 'sound', start: 400, count: 2001 }]);
    expect(sampling.notes).toHaveLength(2);
  });

  it('finds no clipping in a full-scale sine', () => {
    const sine = Array.from({ length: 4000 }, (_, i) => Math.round(32000 * Math.sin(i * 0.7123)));
    const sound = sine.flatMap((value) => [value & 255, (value >> 8) & 255]);
    expect(readWav(file(chunk('fmt ', FORMAT), chunk('data', sound))).sampling.clipping).toEqual([]);
  });

  it('sets floats that are no number to 0 and counts them', () => {
    const floats = new Float32Array([0.25, NaN, Infinity, -0.5]);
    const format = [3, 0, 1, 0, ...u32(8000), ...u32(32000), 4, 0, 32, 0];
    const { channels, sampling } = readWav(
      file(chunk('fmt ', format), chunk('data', [...new Uint8Array(floats.buffer)])),
    );
    expect([...channels[0]!.samples]).toEqual([0.25, 0, 0, -0.5]);
    expect(sampling.badCells.count).toBe(2);
  });
});

describe('readWav refuses, and says what, where and what to do', () => {
  const format = (change: Record<number, number>): Uint8Array =>
    file(
      chunk(
        'fmt ',
        FORMAT.map((value, i) => change[i] ?? value),
      ),
      chunk('data', SOUND),
    );

  it.each<[string, Uint8Array, string, string]>([
    ['an empty file', new Uint8Array(0), 'empty', 'the file is empty. Record it again.'],
    [
      'junk before the header',
      Uint8Array.from([1, 2, 3, ...file(chunk('fmt ', FORMAT))]),
      'not-wav',
      'byte 3: a WAV file begins here, after 3 bytes',
    ],
    ['text', Uint8Array.from(ascii('t,x,y,z\n0,1,2,3\n')), 'not-wav', 'Read text with readDelimited'],
    ['Ogg', Uint8Array.from(ascii('OggS............')), 'compressed', 'this is no WAV file but Ogg.'],
    ['MP4', Uint8Array.from([0, 0, 0, 24, ...ascii('ftypM4A ........')]), 'compressed', 'MP4, M4A or 3GP'],
    ['AMR', Uint8Array.from(ascii('#!AMR\n..........')), 'compressed', 'Convert it to WAV (PCM)'],
    [
      'another RIFF',
      Uint8Array.from([...ascii('RIFF'), ...u32(4), ...ascii('AVI ')]),
      'not-wav',
      'kind "AVI "',
    ],
    ['no format', file(chunk('data', SOUND)), 'bad-header', 'no format chunk'],
    ['no sound', file(chunk('fmt ', FORMAT)), 'no-rows', 'no samples'],
    ['no channels', format({ 2: 0 }), 'bad-header', 'byte 22: the header states no channels.'],
    ['no rate', format({ 4: 0, 5: 0 }), 'bad-header', 'byte 24: the header states a sampling rate of 0 Hz.'],
    ['48 bits', format({ 14: 48 }), 'unsupported', 'byte 34: the header states samples of 48 bits.'],
    ['an unknown format', format({ 0: 0x34, 1: 0x12 }), 'compressed', 'format 0x1234'],
  ])('%s', (_, bytes, code, text) => {
    const error = refused(bytes);
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });

  it('a value that is no file', () => {
    expect(() => readWav('RIFF' as unknown as Uint8Array)).toThrow(
      'readWav: bytes must be a Uint8Array or an ArrayBuffer, got "RIFF"',
    );
  });
});

describe('readWav on damaged bytes', () => {
  it('reads or refuses each, and never gives a sample that is no number', () => {
    const originals = fixtures.files.map(({ base64 }) => bytesOf(base64));
    const damage = fc.record({
      file: fc.nat(originals.length - 1),
      cut: fc.double({ min: 0, max: 1, noNaN: true }),
      hits: fc.array(fc.tuple(fc.nat(120), fc.nat(255)), { maxLength: 6 }),
    });
    fc.assert(
      fc.property(damage, ({ file: index, cut, hits }) => {
        const bytes = originals[index]!.slice(
          0,
          cut > 0.7 ? undefined : Math.ceil(cut * 1.5 * originals[index]!.length),
        );
        for (const [place, value] of hits) if (place < bytes.length) bytes[place] = value;
        try {
          const { channels, sampleRate } = readWav(bytes);
          expect(sampleRate).toBeGreaterThan(0);
          for (const { samples } of channels) expect(samples.every(Number.isFinite)).toBe(true);
        } catch (error) {
          if (!(error instanceof RecordingError)) throw error;
        }
      }),
      { numRuns: 2000, seed: 20260314 },
    );
  });
});

const folder = fileURLToPath(new URL('../../../../shared/data/motor-sound/', import.meta.url));

describe.skipIf(!existsSync(folder))('recordings beside the checkout: motor sound', () => {
  const names = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.wav')) : [];
  it.each(names)('%s is 2 s of stereo at 48 kHz', (name) => {
    const { sampleRate, channels, sampling } = readWav(readFileSync(folder + name));
    expect([sampleRate, channels.length, sampling.duration, sampling.kind]).toEqual([48000, 2, 2, 'sound']);
  });
});
