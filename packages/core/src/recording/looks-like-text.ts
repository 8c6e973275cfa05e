/**
 * True for what reads as text: UTF-16 with its mark or its zeros, or hardly any control character.
 *
 * @param head - the first bytes of a file
 */
export function looksLikeText(head: Uint8Array): boolean {
  const [first, second] = head;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return true;
  if (zerosAlternate(head)) return true;
  let controls = 0;
  for (const code of head) if (code < 9 || (code > 13 && code < 32 && code !== 27)) controls++;
  return controls <= head.length / 200;
}

/** Digits and separators in UTF-16: every other byte is zero. */
function zerosAlternate(head: Uint8Array): boolean {
  if (head.length < 4) return false;
  const zeros = [0, 0];
  head.forEach((code, i) => {
    if (code === 0) zeros[i & 1] = (zeros[i & 1] ?? 0) + 1;
  });
  const [even = 0, odd = 0] = zeros;
  const half = head.length / 2;
  return (even > 0.7 * half && odd < 0.05 * half) || (odd > 0.7 * half && even < 0.05 * half);
}
