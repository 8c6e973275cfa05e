/** Candidates that a path may move in one frame. */
const REACH = 16;
/** What a move of one candidate costs, times its square. */
const COST = 0.02;

/**
 * The path, one candidate a frame, with the highest sum of scores less what its moves cost (dynamic programming, after Viterbi).
 *
 * @param scores - for each frame one score a candidate
 * @returns candidate in each frame, and the mean score along the path
 */
export function likeliestPath(scores: readonly Float64Array[]): { path: Int32Array; mean: number } {
  const count = scores[0]?.length ?? 0;
  let best = Float64Array.from(scores[0] ?? []);
  const origins: Int32Array[] = [];
  for (const frame of scores.slice(1)) {
    const next = new Float64Array(count);
    const origin = new Int32Array(count);
    for (let j = 0; j < count; j++) {
      let [most, from] = [-Infinity, j];
      for (let i = Math.max(0, j - REACH); i <= Math.min(count - 1, j + REACH); i++) {
        const sum = (best[i] ?? 0) - COST * (i - j) ** 2;
        if (sum > most) [most, from] = [sum, i];
      }
      next[j] = most + (frame[j] ?? 0);
      origin[j] = from;
    }
    best = next;
    origins.push(origin);
  }
  const path = new Int32Array(scores.length);
  let at = best.reduce((most, value, j) => (value > (best[most] ?? 0) ? j : most), 0);
  let total = 0;
  for (let frame = scores.length - 1; frame >= 0; frame--) {
    path[frame] = at;
    total += scores[frame]?.[at] ?? 0;
    at = origins[frame - 1]?.[at] ?? at;
  }
  return { path, mean: total / Math.max(1, scores.length) };
}
