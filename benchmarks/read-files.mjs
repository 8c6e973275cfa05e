/** Bytes of files made for the reading benchmarks: seeded, so that every run reads the same. */

/** A stream of numbers in [0, 1): Lehmer's generator with the multiplier of Park and Miller, CACM 31(10), 1988. */
function uniform(seed) {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

const HEAD = ['time (s)', 'ax (m/s²)', 'ay (m/s²)', 'az (m/s²)'];

/** Rows of a 400 Hz logger, 4 columns; `style` is 'plain', 'quoted', 'json' (lines) or 'list' (one JSON list). */
export function textFile(rows, style = 'plain') {
  const random = uniform(7);
  const lines = Array.from({ length: rows }, (_, i) => {
    const cells = [(i / 400).toFixed(6), ...[0, 0, 9.81].map((rest) => (rest + random() - 0.5).toFixed(6))];
    if (style === 'plain') return cells.join(',');
    if (style === 'quoted') return cells.map((cell) => `"${cell}"`).join(',');
    const [t, x, y, z] = cells;
    return `{"time":${t},"x":${x},"y":${y},"z":${z}}`;
  });
  if (style === 'json') return `${lines.join('\n')}\n`;
  if (style === 'list') return `[${lines.join(',\n')}]\n`;
  const head = style === 'quoted' ? HEAD.map((cell) => `"${cell}"`) : HEAD;
  return `${head.join(',')}\n${lines.join('\n')}\n`;
}

/** A WAV file of one channel, 16 bit, 48 kHz: a hum of 83 Hz with orders, and noise. */
export function wavFile(seconds) {
  const random = uniform(11);
  const frames = Math.round(48_000 * seconds);
  const bytes = Buffer.alloc(44 + 2 * frames);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + 2 * frames, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(48_000, 24);
  bytes.writeUInt32LE(96_000, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * frames, 40);
  for (let i = 0; i < frames; i++) {
    const turn = (2 * Math.PI * 83 * i) / 48_000;
    const value = 3000 * Math.sin(turn) + 1500 * Math.sin(2 * turn) + 900 * (random() - 0.5);
    bytes.writeInt16LE(Math.round(value), 44 + 2 * i);
  }
  return new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** Processor seconds of the cheapest of a few runs: other work on the machine counts little. */
export function fastest(run, rounds = 5) {
  run();
  return Math.min(
    ...Array.from({ length: rounds }, () => {
      const before = process.cpuUsage();
      run();
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1e6;
    }),
  );
}
