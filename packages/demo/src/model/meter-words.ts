/** dB under full scale at which a meter begins. */
const FAINTEST = -60;
/** m/s² between readings at which a meter of motion is full. */
const FULL = 30;

/**
 * A level as a meter shows it.
 *
 * @param kind - what is recorded
 * @param level - 0 … 1 of full scale for sound, m/s² for motion
 * @returns share of the meter, 0 … 1, and what to do about the level, in a few words
 */
export function levelWords(
  kind: 'sound' | 'motion',
  level: number,
): { readonly share: number; readonly words: string } {
  if (kind === 'motion') {
    return { share: Math.min(1, Math.sqrt(level / FULL)), words: level < 0.05 ? 'still' : 'moving' };
  }
  const decibels = level > 0 ? 20 * Math.log10(level) : -Infinity;
  const share = Math.min(1, Math.max(0, 1 - decibels / FAINTEST));
  if (level >= 0.98) return { share, words: 'too loud, it is cut off: move the phone away' };
  return { share, words: decibels < -50 ? 'very faint: move the phone nearer' : 'good' };
}
