import type { OrderTrack, ResonanceSighting } from '@sternline/core';
import type { TrialCourse } from './analysis-types.js';
import type { Units } from './project.js';
import { shortFigure } from './short-figure.js';
import { formatFigure } from './units.js';

/**
 * The answer for a recording through which the speed moved: no one speed describes it.
 *
 * @param course - of the recording
 * @param units - metric or inch
 * @returns what the shaft did, and what rang most on the way; undefined where the speed did not move
 */
export function runAnswer({ track, moved, resonances }: TrialCourse, units: Units): string | undefined {
  if (!track || !moved) return undefined;
  const [strongest] = resonances;
  const [order = 1] = strongest?.orders ?? [];
  const rang = strongest
    ? `Something rings at ${shortFigure(strongest.frequency)} Hz: ${order}× meets it at ${formatFigure((2 * Math.PI * strongest.frequency) / order, 'speed', units)}.`
    : 'Nothing rang on the way.';
  return `The shaft speed moved from ${speedsOf(track, units)}, so no one speed describes this recording. ${rang}`;
}

/**
 * How the shaft was followed through a recording, in sentences.
 *
 * @param course - of the recording
 * @param units - metric or inch
 */
export function courseSentences({ track, unfollowed, moved }: TrialCourse, units: Units): string[] {
  if (!track) return unfollowed === undefined ? [] : [unfollowed];
  const sure = track.confidence === 1 ? '' : ` (${Math.min(99, Math.round(100 * track.confidence))} % sure)`;
  if (!moved) return [`The shaft ran steadily, from ${speedsOf(track, units)}${sure}.`];
  return [
    `The shaft was followed from ${speedsOf(track, units)}${sure}. Causes are weighed for one speed only: to read them, drag over a stretch of steady running.`,
  ];
}

/** `1 090 to 4 210 rpm`, lowest and highest. */
function speedsOf({ speed }: OrderTrack, units: Units): string {
  const sorted = Float64Array.from(speed).sort();
  const [slow, fast] = [sorted[0], sorted.at(-1)].map((value) => formatFigure(value ?? 0, 'speed', units));
  return `${slow ?? ''} to ${fast ?? ''}`;
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
