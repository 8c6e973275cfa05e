import type { Recording } from '@sternline/core';

/** Sound as a browser decoded it. */
export interface DecodedSound {
  readonly name: string;
  /** Hz */
  readonly sampleRate: number;
  /** −1 … 1, one list a channel. */
  readonly channels: readonly Float32Array[];
  readonly rateFrom: 'header' | 'given';
  readonly notes: readonly string[];
}

/**
 * A recording around decoded sound.
 *
 * @param sound - its channels, all of one length
 * @returns the recording, without gaps
 */
export function soundRecording({ name, sampleRate, channels, rateFrom, notes }: DecodedSound): Recording {
  const names = channels.length === 1 ? ['sound'] : channels.length === 2 ? ['left', 'right'] : [];
  return {
    name,
    sampleRate,
    channels: channels.map((samples, index) => ({
      name: names[index] ?? `channel ${index + 1}`,
      unit: 'full scale',
      samples: new Float64Array(samples),
    })),
    sampling: {
      kind: 'sound',
      duration: (channels[0]?.length ?? 0) / sampleRate,
      rateFrom,
      jitter: 0,
      stampStep: 0,
      gaps: [],
      equalStamps: 0,
      unsortedRows: 0,
      badCells: { count: 0, lines: [] },
      clipping: [],
      columns: [],
      notes,
    },
  };
}
