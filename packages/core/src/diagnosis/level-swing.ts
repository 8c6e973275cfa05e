import type { ComparedSide } from './compared-side.js';

/** dB between the segment louder than nine tenths of all and the one louder than one tenth, of the channel that swings most. */
export function levelSwing({ recording, plan: { starts, length } }: ComparedSide): number {
  if (starts.length < 2) return 0;
  return Math.max(
    0,
    ...recording.channels.map(({ samples }) => {
      const levels = starts
        .map((start) => meanSquare(samples.subarray(start, start + length)))
        .filter((level) => level > 0)
        .sort((a, b) => a - b);
      const at = (share: number): number => levels[Math.round(share * (levels.length - 1))] ?? 1;
      return levels.length < 2 ? 0 : 10 * Math.log10(at(0.9) / at(0.1));
    }),
  );
}

function meanSquare(segment: Float64Array): number {
  const mean = segment.reduce((sum, x) => sum + x, 0) / segment.length;
  return segment.reduce((sum, x) => sum + (x - mean) ** 2, 0) / segment.length;
}
