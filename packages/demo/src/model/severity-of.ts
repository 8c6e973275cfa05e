import { severity } from '@sternline/core';
import type { Recording, Severity } from '@sternline/core';

/**
 * Vibration velocity beside the zones of the standard, where a recording permits it.
 *
 * @param recording - as read, or a part of it
 * @returns undefined for sound, for turning rates, and for motion too short or too slowly sampled
 */
export function severityOf(recording: Recording): Severity | undefined {
  if (!recording.channels.some(({ unit }) => unit === 'm/s²')) return undefined;
  try {
    return severity(recording);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
