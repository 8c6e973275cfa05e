import { refusal } from '../internal/refuse.js';
import type { Gap, Recording } from '../recording/types.js';

/**
 * The part of a recording between two times.
 *
 * @param recording - left as it is
 * @param part - `from` and `to`, s from its first sample; what lies outside the recording is cut off
 * @returns a recording of its own, with the gaps that fall into it
 * @throws RangeError where fewer than two samples are left
 * @remarks Clipping, jitter and notes are those of the whole.
 * @example
 * ```ts
 * const samples = Float64Array.from({ length: 500 }, (_, n) => n);
 * const recording = { name: 'run', sampleRate: 100, channels: [{ name: 'x', unit: 'm/s²', samples }],
 *   sampling: { gaps: [] } };
 * sliceRecording(recording, { from: 1, to: 3 }).channels[0].samples.length // → 200
 * sliceRecording(recording, { from: 1, to: 3 }).channels[0].samples[0] // → 100
 * ```
 */
export function sliceRecording(
  recording: Recording,
  { from, to }: { readonly from: number; readonly to: number },
): Recording {
  const { sampleRate, channels, sampling } = recording;
  const total = channels[0]?.samples.length ?? 0;
  const start = Math.max(0, Math.round(from * sampleRate));
  const end = Math.min(total, Math.round(to * sampleRate));
  if (!(end - start >= 2)) {
    throw refusal(
      'sliceRecording: from and to',
      'times with two samples or more between them',
      [from, to].join(' and '),
    );
  }
  return {
    ...recording,
    channels: channels.map((channel) => ({ ...channel, samples: channel.samples.slice(start, end) })),
    sampling: {
      ...sampling,
      duration: (end - start) / sampleRate,
      gaps: sampling.gaps.flatMap((gap) => cutGap(gap, start, end)),
    },
  };
}

function cutGap(gap: Gap, start: number, end: number): Gap[] {
  const first = Math.max(gap.start, start);
  const last = Math.min(gap.start + gap.count, end);
  return last > first ? [{ start: first - start, count: last - first }] : [];
}
