import { describe, expect, it } from 'vitest';
import { fileKind } from '../../../packages/demo/src/model/file-kind.js';

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string) =>
  Uint8Array.from(Array.from(text).flatMap((letter) => [letter.charCodeAt(0), 0]));

describe('fileKind', () => {
  it.each([
    ['plain text', utf8('t,x\n0,1\n'), 'text'],
    ['text with accents', utf8('Zeit (s);Beschl. x (m/s²)\n0,0;0,1\n'), 'text'],
    ['UTF-16 without a mark', utf16('time\tx\n0.0\t0.1\n'), 'text'],
    ['UTF-16 with a mark', Uint8Array.from([0xff, 0xfe, ...utf16('t')]), 'text'],
    ['nothing at all', new Uint8Array(0), 'text'],
    ['WAV', utf8('RIFF....WAVEfmt '), 'wave'],
    ['MPEG-4', Uint8Array.from([0, 0, 0, 24, ...utf8('ftypM4A '), 0, 0, 2, 0, 1, 2, 3, 4]), 'media'],
  ])('takes %s for what it is', (_, bytes, kind) => {
    expect(fileKind(bytes)).toBe(kind);
  });
});
