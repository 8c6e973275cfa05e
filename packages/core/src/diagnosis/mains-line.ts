import { foldedFrequency } from '../orders/folded-frequency.js';

const MAINS: readonly number[] = [50, 100, 60, 120];

/** The multiple of a mains frequency (Hz) that shows at `frequency`, if any. */
export function mainsLine(
  frequency: number,
  { sampleRate, resolution }: { readonly sampleRate: number; readonly resolution: number },
): number | undefined {
  const near = Math.min(Math.max(resolution / 4, 0.15), 1);
  return MAINS.find((mains) => Math.abs(foldedFrequency(mains, sampleRate) - frequency) < near);
}
