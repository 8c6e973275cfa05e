/** Which mode, in words. */
export function ordinal(mode: number): string {
  return ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'][mode - 1] ?? `${mode}th`;
}

/** For the start of a sentence. */
export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
