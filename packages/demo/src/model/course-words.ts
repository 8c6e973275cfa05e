import type { ResonanceSighting } from '@sternline/core';
import type { TrialCourse } from './analysis-types.js';
import type { Units } from './project.js';
import { shortFigure } from './short-figure.js';
import { formatFigure } from './units.js';

/**
 * What the shaft did through a recording, in sentences: whether its speed moved, and how that was told.
 *
 * @param course - of the recording
 * @param units - metric or inch
 */
export function courseSentences({ track, unfollowed, moved }: TrialCourse, units: Units): string[] {
  if (!track) return unfollowed === undefined ? [] : [unfollowed];
  const speeds = Float64Array.from(track.speed).sort();
  const [slow, fast] = [speeds[0], speeds.at(-1)].map((speed) => formatFigure(speed ?? 0, 'speed', units));
  const sure =
    track.speedFrom === 'given' || track.confidence === 1
      ? ''
      : ` (${Math.round(100 * track.confidence)} % sure)`;
  if (!moved) return [`The shaft ran steadily, between ${slow ?? ''} and ${fast ?? ''}${sure}.`];
  return [
    `The shaft speed moved from ${slow ?? ''} to ${fast ?? ''} in this recording${sure}.`,
    'What is said above holds for one speed; what follows holds for the run: read it first, or drag over a stretch of steady running above.',
  ];
}

/**
 * A resonance that was passed, in one sentence.
 *
 * @param sighting - as the core gives it
 * @param units - metric or inch
 */
export function resonanceSentence({ frequency, orders, rise }: ResonanceSighting, units: Units): string {
  const met = orders
    .map((order) => `${order}× at ${formatFigure((2 * Math.PI * frequency) / order, 'speed', units)}`)
    .join(', ');
  const several =
    orders.length > 1
      ? 'More than one order swells there, as only a resonance makes them'
      : 'One order swells there';
  return `Something rings at ${shortFigure(frequency)} Hz, ${shortFigure(rise, 2)} times what stands on either side: ${met}. ${several}.`;
}
