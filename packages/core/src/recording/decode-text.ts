import { refusal } from '../internal/refuse.js';

/** Present in every JavaScript runtime, though not in the language's own typings. */
declare const TextDecoder: new (
  label: string,
  options?: { readonly fatal?: boolean; readonly ignoreBOM?: boolean },
) => { decode(bytes: Uint8Array): string };

/**
 * Turns the bytes of a text file into text: by its byte order mark, else UTF-16 where every other byte is zero, else
 * UTF-8, else Windows-1252.
 *
 * @param bytes - the whole file
 * @returns the text, without a byte order mark
 * @throws RangeError where `bytes` is not a Uint8Array
 * @remarks Windows-1252 reads any byte, so damaged UTF-8 comes out with foreign letters rather than refused.
 * @example
 * decodeText(new Uint8Array([0xff, 0xfe, 0x6d, 0x00, 0x2f, 0x00, 0x73, 0x00, 0xb2, 0x00])) // → 'm/s²'
 * decodeText(new Uint8Array([0x6d, 0x2f, 0x73, 0xb2])) // → 'm/s²'
 * @see WHATWG, Encoding Standard, section 6 (byte order marks), https://encoding.spec.whatwg.org/
 */
export function decodeText(bytes: Uint8Array): string {
  if (!(bytes instanceof Uint8Array)) throw refusal('decodeText: bytes', 'a Uint8Array', bytes);
  const marked = byMark(bytes) ?? byZeros(bytes);
  if (marked !== undefined) return new TextDecoder(marked).decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function byMark(bytes: Uint8Array): string | undefined {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 'utf-8';
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return undefined;
}

/** Figures and separators in UTF-16 have a zero in every other byte: the low places of a big-endian file, the high ones else. */
function byZeros(bytes: Uint8Array): string | undefined {
  const length = Math.min(bytes.length, 4096) & ~1;
  const zeros = [0, 0];
  for (let i = 0; i < length; i++) if (bytes[i] === 0) zeros[i & 1] = (zeros[i & 1] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  if (odd > 0.35 * length && even < 0.05 * length) return 'utf-16le';
  if (even > 0.35 * length && odd < 0.05 * length) return 'utf-16be';
  return undefined;
}
