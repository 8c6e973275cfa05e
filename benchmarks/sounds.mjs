/** A shaft at 200 Hz with two orders in noise, seeded: the same every time. */
export function hum(seconds, rate) {
  let state = 1;
  const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
  return Float64Array.from({ length: seconds * rate }, (_, n) => {
    const turn = (2 * Math.PI * 200 * n) / rate;
    return 0.2 * Math.sin(turn) + 0.06 * Math.sin(2 * turn) + 0.2 * noise();
  });
}

/** A recording as plain data. */
export function recordingOf(channels, sampleRate, kind) {
  const unit = kind === 'sound' ? 'full scale' : 'm/s²';
  return {
    name: 'benchmark',
    sampleRate,
    channels: channels.map((samples, i) => ({ name: 'xyz'[i], unit, samples })),
    sampling: { kind, duration: channels[0].length / sampleRate, gaps: [], clipping: [], notes: [] },
  };
}
