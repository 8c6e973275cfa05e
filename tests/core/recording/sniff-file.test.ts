import { describe, expect, it } from 'vitest';
import { sniffFile } from '@sternline/core';

/** Latin-1 letters as bytes, then zeros, as binary files have them. */
function bytes(letters: string, zeros = 40): Uint8Array {
  return Uint8Array.from([
    ...Array.from(letters, (letter) => letter.charCodeAt(0)),
    ...new Uint8Array(zeros),
  ]);
}

describe('sniffFile', () => {
  // First bytes by each format's specification: RFC 4867 (AMR), ISO/IEC 14496-12 (ftyp), RFC 3533 (Ogg), RFC 9639 (FLAC),
  // RFC 9559 (Matroska), ISO 32000 (PDF), ISO/IEC 10918-5 (JPEG), PNG 12.12, RFC 1952 (gzip), ISO/IEC 11172-3 (MPEG frames).
  it.each([
    ['RIFF\x24\0\0\0WAVE', 'a WAV file', 'readWav'],
    ['RIFX\0\0\0\x24WAVE', 'a WAV file', 'readWav'],
    ['RIFF\x24\0\0\0AVI ', 'an AVI video', 'none'],
    ['PK\x03\x04', 'a zip archive', 'readZip'],
    ['#!AMR\n', 'an AMR sound file', 'none'],
    ['#!AMR-WB\n', 'an AMR sound file', 'none'],
    ['\0\0\0\x18ftyp3gp4', 'a 3GP recording', 'media'],
    ['\0\0\0\x18ftypM4A ', 'an M4A sound file', 'media'],
    ['\0\0\0\x18ftypisom', 'an MP4 recording', 'media'],
    ['\0\0\0\x18ftypheic', 'a HEIF picture', 'none'],
    ['ID3\x04\0', 'an MP3 sound file', 'media'],
    ['\xff\xfb\x90\x64', 'an MP3 sound file', 'media'],
    ['\xff\xf1\x50\x80', 'an AAC sound file', 'media'],
    ['OggS\0', 'an Ogg sound file', 'media'],
    ['fLaC\0', 'a FLAC sound file', 'media'],
    ['\x1a\x45\xdf\xa3', 'a WebM or Matroska recording', 'media'],
    ['%PDF-1.7\n', 'a PDF document', 'none'],
    ['\xff\xd8\xff\xe0', 'a JPEG picture', 'none'],
    ['\x89PNG\r\n', 'a PNG picture', 'none'],
    ['\x1f\x8b\x08', 'a gzip archive', 'none'],
    ['\x01\x02\x03\x04', 'a file of no known kind', 'none'],
  ])('%j is %s', (letters, format, reader) => {
    const facts = sniffFile(bytes(letters));
    expect([facts.format, facts.reader]).toEqual([format, reader]);
    expect(facts.advice).toMatch(/^[A-Z].*\.$/);
  });

  it.each([
    ['a csv', bytes('time,x,y,z\n0,0.1,0.2,9.8\n', 0)],
    ['words that begin as a sound file does', bytes('FORMAT;t;x\n;0;1\n', 0)],
    ['UTF-16 with its mark', Uint8Array.from([0xff, 0xfe, 0x74, 0, 0x3b, 0, 0x78, 0, 0x0a, 0])],
    ['UTF-16 without', bytes('t\0;\0x\0\n\x000\0;\x001\0\n\0', 0)],
    ['nothing', new Uint8Array()],
  ])('%s is text', (_, file) => {
    expect(sniffFile(file).reader).toBe('readDelimited');
  });

  it('says of AMR what to do', () => {
    expect(sniffFile(bytes('#!AMR\n')).advice).toContain('convert it to WAV');
  });

  it('tells a page from a table', () => {
    expect(sniffFile(bytes('<!DOCTYPE html><html>', 0)).format).toBe('a page or XML document');
  });

  it('refuses what is no bytes', () => {
    expect(() => sniffFile('x' as unknown as Uint8Array)).toThrow(
      'sniffFile: bytes must be a Uint8Array, got "x"',
    );
  });
});
