/** The band between the lowest and highest samples of a channel, its mean taken off. */
export interface ChannelEnvelope {
  readonly channel: string;
  readonly lowest: Float32Array;
  readonly highest: Float32Array;
  /** s */
  readonly duration: number;
}

/**
 * The outline of a channel over time, for drawing: lowest and highest sample of each of many equal stretches.
 *
 * @param channel - name and samples
 * @param options - sampling rate in Hz; `stretches` at most this many, 1200 unless told
 * @returns the outline, about the mean
 */
export function channelEnvelope(
  channel: { readonly name: string; readonly samples: ArrayLike<number> },
  options: { readonly sampleRate: number; readonly stretches?: number },
): ChannelEnvelope {
  const { samples } = channel;
  const count = Math.max(1, Math.min(options.stretches ?? 1200, samples.length));
  const lowest = new Float32Array(count).fill(Infinity);
  const highest = new Float32Array(count).fill(-Infinity);
  let sum = 0;
  for (let index = 0; index < samples.length; index++) {
    const value = samples[index] ?? 0;
    const stretch = Math.floor((index * count) / samples.length);
    sum += value;
    if (value < (lowest[stretch] ?? 0)) lowest[stretch] = value;
    if (value > (highest[stretch] ?? 0)) highest[stretch] = value;
  }
  const mean = sum / Math.max(1, samples.length);
  return {
    channel: channel.name,
    lowest: lowest.map((value) => (Number.isFinite(value) ? value - mean : 0)),
    highest: highest.map((value) => (Number.isFinite(value) ? value - mean : 0)),
    duration: samples.length / options.sampleRate,
  };
}
