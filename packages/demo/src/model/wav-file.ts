/**
 * Samples as a WAV file of 32-bit floats, so that nothing is rounded away.
 *
 * @param name - file name
 * @param sound - sampling rate in Hz, and blocks of one channel in order, which are taken as they are
 */
export function wavFile(
  name: string,
  sound: { readonly sampleRate: number; readonly blocks: readonly Float32Array<ArrayBuffer>[] },
): File {
  const count = sound.blocks.reduce((sum, block) => sum + block.length, 0);
  return new File([header(count * 4, sound.sampleRate), ...sound.blocks], name, { type: 'audio/wav' });
}

/** Format 3 of the RIFF specification: IEEE float. */
function header(bytes: number, sampleRate: number): ArrayBuffer {
  const view = new DataView(new ArrayBuffer(44));
  const text = (at: number, letters: string) => {
    Array.from(letters).forEach((letter, index) => {
      view.setUint8(at + index, letter.charCodeAt(0));
    });
  };
  text(0, 'RIFF');
  view.setUint32(4, 36 + bytes, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 3, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 4 * sampleRate, true);
  view.setUint16(32, 4, true);
  view.setUint16(34, 32, true);
  text(36, 'data');
  view.setUint32(40, bytes, true);
  return view.buffer;
}
