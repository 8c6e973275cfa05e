import type { Recording } from '../recording/types.js';
import { peaksOf } from '../spectrum/peaks-of.js';
import { recordingSpectra } from '../spectrum/recording-spectra.js';
import { foldedFrequency } from './folded-frequency.js';

/** A line of a recording, of whichever channel shows it best. */
export interface Line {
  /** Hz */
  readonly frequency: number;
  /** Hz */
  readonly error: number;
  /** How much of a line it is: 0.3 at the edge of the noise, 1 from 15 dB above it. */
  readonly weight: number;
  /** Whether hum of the mains would show there, so that no shaft is needed to explain it. */
  readonly onMains: boolean;
}

/** No more lines than this are weighed: the strongest. */
const MOST = 16;
/** For each channel. */
const FALSE_ALARM_RATE = 0.005;
/** Hz: mains, and what it makes of iron. */
const MAINS: readonly number[] = [50, 60, 100, 120, 150, 180];
/** Hz, by which mains wander. */
const MAINS_REACH = 0.15;

/** Lines that any channel shows below `highest` (Hz), those within their resolution taken as one, strongest first. */
export function speedEvidence(recording: Recording, highest: number): Line[] {
  const peaks = recordingSpectra(recording, { padding: 1, caller: 'estimateSpeed' })
    .flatMap((spectrum) => peaksOf(spectrum, { falseAlarmRate: FALSE_ALARM_RATE }))
    .filter(({ frequency }) => frequency <= highest)
    .sort((a, b) => b.prominence - a.prominence);
  const lines: Line[] = [];
  for (const peak of peaks) {
    // A speed that wanders moves a line by a few parts in a thousand, whatever the noise says.
    const error = Math.hypot(peak.frequencyError, 0.002 * peak.frequency);
    if (lines.some((line) => Math.abs(line.frequency - peak.frequency) < 3 * Math.hypot(error, line.error)))
      continue;
    lines.push({
      frequency: peak.frequency,
      error,
      weight: Math.min(1, Math.max(0.3, peak.prominence / 15)),
      onMains: MAINS.some(
        (mains) =>
          Math.abs(foldedFrequency(mains, recording.sampleRate) - peak.frequency) <
          MAINS_REACH + peak.frequencyError,
      ),
    });
    if (lines.length === MOST) break;
  }
  return lines;
}
