import { describe, expect, it } from 'vitest';
import { audioRate } from '../../../packages/demo/src/model/audio-rate.js';

/** Bytes from texts and numbers, in order. */
function bytes(...parts: (string | number)[]): Uint8Array {
  return Uint8Array.from(
    parts.flatMap((part) =>
      typeof part === 'number' ? [part] : Array.from(part, (letter) => letter.charCodeAt(0)),
    ),
  );
}

describe('audioRate', () => {
  // RFC 9639, section 8.2: 16 + 16 + 24 + 24 bits, then 20 bits of sampling rate. 44100 = 0x0AC44.
  it('reads the stream information of FLAC', () => {
    const head = bytes('fLaC', 0, 0, 0, 34, ...new Array<number>(10).fill(0), 0x0a, 0xc4, 0x42);
    // FLAC keeps every sample, by its definition.
    expect(audioRate(head)).toEqual({ rate: 44_100, format: 'FLAC', lossless: true });
  });

  // RFC 7845, section 4: Opus is always decoded at 48 kHz, whatever rate went in.
  it('takes Ogg Opus for 48 kHz', () => {
    expect(audioRate(bytes('OggS', ...new Array<number>(24).fill(0), 'OpusHead', 1, 1))).toEqual({
      rate: 48_000,
      format: 'Ogg Opus',
    });
  });

  // Vorbis I specification, section 4.2.2: version (4 bytes), channels (1), rate (4, lowest first). 22050 = 0x5622.
  it('reads the identification header of Ogg Vorbis', () => {
    const head = bytes(
      'OggS',
      ...new Array<number>(24).fill(0),
      1,
      'vorbis',
      0,
      0,
      0,
      0,
      1,
      0x22,
      0x56,
      0,
      0,
    );
    expect(audioRate(head)).toEqual({ rate: 22_050, format: 'Ogg Vorbis' });
  });

  // ISO/IEC 14496-12, AudioSampleEntry: 28 bytes from the type to the 16.16 rate. 48000 = 0xBB80.
  it('reads the sound box of MPEG-4', () => {
    const head = bytes(
      0,
      0,
      0,
      24,
      'ftypM4A ',
      ...new Array<number>(12).fill(0),
      'mp4a',
      ...new Array<number>(24).fill(0),
    );
    expect(audioRate(Uint8Array.from([...head, 0xbb, 0x80, 0, 0]))).toEqual({
      rate: 48_000,
      format: 'MPEG-4',
    });
  });

  // ISO/IEC 11172-3: sync, version 1, layer III; index 0 is 44.1 kHz, 1 is 48 kHz. Version 2 halves them.
  it('reads the first frame of MPEG audio, after its tag', () => {
    expect(audioRate(bytes(0xff, 0xfb, 0x90, 0))).toEqual({ rate: 44_100, format: 'MPEG audio' });
    expect(audioRate(bytes('ID3', 4, 0, 0, 0, 0, 0, 2, 0, 0, 0xff, 0xf3, 0x94, 0))).toEqual({
      rate: 24_000,
      format: 'MPEG audio',
    });
  });

  // ISO/IEC 14496-3: the index stands in bits 18 to 21; 4 is 44.1 kHz.
  it('reads ADTS', () => {
    expect(audioRate(bytes(0xff, 0xf1, 0x50, 0x80))).toEqual({ rate: 44_100, format: 'AAC' });
  });

  it('says nothing of what it does not know', () => {
    expect(audioRate(bytes('#!AMR\n'))).toBeUndefined();
    expect(audioRate(new Uint8Array(0))).toBeUndefined();
  });
});
