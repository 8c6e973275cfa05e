import { numberText } from '../internal/number-text.js';
import { type LevelPumping } from './types.js';

/** The note on automatic gain; none where it does not show. */
export function levelPumpingNote(pumping: LevelPumping | undefined): string[] {
  if (!pumping) return [];
  const { channel, events, pumped, dip, recovery } = pumping;
  return [
    `Automatic gain was at work on ${channel}: after ${pumped} of ${events} loud events all that is heard fell by about ${numberText(dip, 2)} dB and came back within ${numberText(recovery, 2)} s. Switch it off in the recorder; levels here cannot be compared.`,
  ];
}
