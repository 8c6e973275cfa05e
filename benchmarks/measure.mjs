const ROUNDS = 400;

/** Seconds of the fastest of many runs: the least that the machine's other work disturbed. */
export function bestOf(run) {
  return Math.min(...times(run));
}

/** Seconds of the middle one. */
export function medianOf(run) {
  const sorted = times(run).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

function times(run) {
  for (let i = 0; i < ROUNDS / 2; i++) run();
  return Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    run();
    return (performance.now() - start) / 1000;
  });
}

export function microseconds(seconds) {
  return `${(seconds * 1e6).toFixed(0).padStart(6)} µs`;
}

/** The whole of a symmetric band, row by row. */
export function full({ size, halfBandwidth, values }) {
  const rows = Array.from({ length: size }, () => new Array(size).fill(0));
  for (let i = 0; i < size; i++) {
    for (let j = Math.max(0, i - halfBandwidth); j <= i; j++) {
      rows[i][j] = rows[j][i] = values[i * (halfBandwidth + 1) + halfBandwidth - (i - j)];
    }
  }
  return rows;
}
