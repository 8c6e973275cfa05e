import { type FittedTime } from './fit-time-base.js';
import { joinRuns } from './fill-missing.js';
import { resampleEvenly, evenLength } from './resample-evenly.js';
import { splineEvenly } from './spline-evenly.js';
import { type Channel, type Gap } from './types.js';

/** Channels on their uniform base. */
export interface EvenRows {
  readonly channels: readonly Channel[];
  readonly gaps: readonly Gap[];
  /** Hz */
  readonly passband: number;
}

interface Base {
  readonly fitted: FittedTime;
  readonly gaps: readonly Gap[];
}

/**
 * Brings channels onto a uniform base: untouched where the count of rows is the clock, interpolated else.
 *
 * @param channels - one sample for each place in the count
 * @param base - how the places lie in time, and which are missing
 */
export function ontoEvenBase(channels: readonly Channel[], { fitted, gaps }: Base): EvenRows {
  const { kind, times, period, longestPeriod } = fitted;
  if (kind === 'counts' || !times) return { channels, gaps, passband: 0.5 / period };
  if (kind === 'piecewise') {
    const moved = channels.map((channel) => ({
      ...channel,
      samples: resampleEvenly(channel.samples, { times, period }),
    }));
    return {
      channels: moved,
      gaps: gaps.map((gap) => moveGap(gap, times, period)),
      passband: 0.4 / longestPeriod,
    };
  }
  const keep = (_: number, i: number): boolean => i === 0 || (times[i] ?? 0) > (times[i - 1] ?? 0);
  const distinct = times.filter(keep);
  const moved = channels.map((channel) => ({
    ...channel,
    samples: splineEvenly(channel.samples.filter(keep), { times: distinct, period }),
  }));
  const long = pauses(distinct, { period, longest: 3 * longestPeriod });
  return {
    channels: moved,
    gaps: joinRuns([...gaps.map((gap) => moveGap(gap, times, period)), ...long]),
    passband: 0.25 / longestPeriod,
  };
}

function moveGap({ start, count }: Gap, times: Float64Array, period: number): Gap {
  const origin = times[0] ?? 0;
  const place = (i: number): number =>
    ((times[Math.min(Math.max(i, 0), times.length - 1)] ?? 0) - origin) / period;
  const from = Math.min(Math.floor(place(start - 1)) + 1, evenLength({ times, period }) - 1);
  return { start: from, count: Math.max(1, Math.ceil(place(start + count)) - from) };
}

function pauses(times: Float64Array, { period, longest }: { period: number; longest: number }): Gap[] {
  const found: Gap[] = [];
  for (let i = 1; i < times.length; i++) {
    if ((times[i] ?? 0) - (times[i - 1] ?? 0) <= longest) continue;
    const start = Math.floor(((times[i - 1] ?? 0) - (times[0] ?? 0)) / period) + 1;
    found.push({
      start,
      count: Math.max(1, Math.ceil(((times[i] ?? 0) - (times[0] ?? 0)) / period) - start),
    });
  }
  return found;
}
