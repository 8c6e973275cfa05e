/** What a key does to a spectrum, and in which direction. */
export interface SpectrumKey {
  readonly does: 'move' | 'pan' | 'peak' | 'end' | 'zoom' | 'reset';
  readonly sign: 1 | -1;
}

/**
 * What a key stands for on a spectrum.
 *
 * @param key - name of the key, and whether Shift is held
 * @returns the action; undefined for keys that are left to the browser
 */
export function spectrumKey(
  key: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'metaKey'>,
): SpectrumKey | undefined {
  if (key.ctrlKey || key.metaKey) return undefined;
  const known = KEYS[key.key];
  return known?.does === 'move' && key.shiftKey ? { ...known, does: 'pan' } : known;
}

const KEYS: Readonly<Record<string, SpectrumKey>> = {
  ArrowRight: { does: 'move', sign: 1 },
  ArrowLeft: { does: 'move', sign: -1 },
  PageUp: { does: 'peak', sign: 1 },
  PageDown: { does: 'peak', sign: -1 },
  Home: { does: 'end', sign: -1 },
  End: { does: 'end', sign: 1 },
  '+': { does: 'zoom', sign: 1 },
  '=': { does: 'zoom', sign: 1 },
  '-': { does: 'zoom', sign: -1 },
  '0': { does: 'reset', sign: 1 },
  Escape: { does: 'reset', sign: 1 },
};
