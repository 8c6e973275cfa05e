export type FileKind = 'wave' | 'text' | 'media';

/** Bytes looked at. */
const HEAD = 4096;

/**
 * What a file holds, by its first bytes and not by its name.
 *
 * @param bytes - the file or its head
 * @returns 'wave' for WAV, 'text' for anything that reads as text (an empty file too), 'media' for the rest
 */
export function fileKind(bytes: Uint8Array): FileKind {
  const head = bytes.subarray(0, HEAD);
  const mark = String.fromCharCode(...head.subarray(0, 4));
  if (mark === 'RIFF' || mark === 'RF64' || mark === 'RIFX') return 'wave';
  if (hasMark(head) || zerosAlternate(head)) return 'text';
  const controls = head.filter((code) => code < 9 || (code > 13 && code < 32 && code !== 27)).length;
  return controls > head.length / 200 ? 'media' : 'text';
}

function hasMark(head: Uint8Array): boolean {
  const [first, second] = head;
  return (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
}

/** Digits and separators in UTF-16: every other byte is zero. */
function zerosAlternate(head: Uint8Array): boolean {
  if (head.length < 4) return false;
  const zeros = [0, 1].map(
    (parity) => head.filter((code, index) => index % 2 === parity && code === 0).length,
  );
  const half = head.length / 2;
  return zeros.some((count, parity) => count > 0.7 * half && (zeros[1 - parity] ?? 0) < 0.05 * half);
}
