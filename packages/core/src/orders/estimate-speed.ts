import { refusal } from '../internal/refuse.js';
import type { Recording } from '../recording/types.js';
import { calibrateConfidence } from './calibrate-confidence.js';
import { expectedOrders } from './expected-orders.js';
import { speedEvidence } from './speed-evidence.js';
import type { Line } from './speed-evidence.js';
import type { SpeedEstimate, SpeedEstimateOptions } from './types.js';
import { weighSpeed } from './weigh-speed.js';
import type { WeighedSpeed, WeighOptions } from './weigh-speed.js';

/** Speeds closer than this share are one candidate. */
const SAME = 0.015;
const MOST_CANDIDATES = 5;

/**
 * Shaft speed from the recording alone: the speeds within a range whose orders explain its lines, each with its chance.
 *
 * P(speed | lines) ∝ Π (orders there or absent as expected) · Π (lines left over being strangers)
 *
 * @param recording - a steady run
 * @param options - `range` in rad/s, and what is known of the line, which says which orders to expect
 * @returns the likeliest speed in rad/s with the chance that it is right, and its rivals
 * @throws RangeError for a range that is not two rising numbers greater than 0
 * @remarks Half and double speed explain almost the same lines; where only the expectation of a strong first order
 *   separates them, they stand among the candidates and the confidence says so. Where nothing stands above the
 *   noise the speed is NaN and the confidence 0. A narrow range is the best help. Confidence is calibrated over seeded trials of
 *   an invented line with phones of many rates (docs/reading-trials.md): there what came true lies
 *   within 0.07 of what was stated in every bin. A machine unlike them is not bound by that.
 * @example
 * ```ts
 * let state = 1;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const samples = Float64Array.from({ length: 4000 }, (_, n) =>
 *   Math.sin((2 * Math.PI * 22 * n) / 200) + 0.5 * Math.sin((2 * Math.PI * 44 * n) / 200) + noise());
 * const recording = { name: 'bench', sampleRate: 200, channels: [{ name: 'x', unit: 'm/s²', samples }],
 *   sampling: { gaps: [] } };
 * const { speed } = estimateSpeed(recording, { range: [50, 400] });
 * speed / (2 * Math.PI) // → 22.0 Hz
 * ```
 */
export function estimateSpeed(
  recording: Recording,
  { range, line = {} }: SpeedEstimateOptions,
): SpeedEstimate {
  const [lowest, highest] = checkRange(range);
  const expected = expectedOrders(line, recording.sampling.kind);
  const band = bandOf(recording, Math.max(...expected.map(({ order }) => order)) * highest);
  const lines = speedEvidence(recording, band[1]);
  const options = { expected, sampleRate: recording.sampleRate, band };
  const proposed = propose(lines, [lowest, highest], options);
  const weighed = separate(proposed.map((frequency) => weighSpeed(frequency, lines, options)));
  const reach = highest > recording.sampleRate / 2 ? 'beyond' : 'within';
  const candidates = calibrate(shareConfidence(weighed, { highest, lowest }), reach);
  const [best] = candidates;
  return { speed: best?.speed ?? NaN, confidence: best?.confidence ?? 0, candidates };
}

function checkRange(range: readonly number[]): [number, number] {
  const [from = NaN, to = NaN] = range;
  if (!(from > 0 && to > from && Number.isFinite(to))) {
    throw refusal('estimateSpeed: range', 'two rising finite numbers greater than 0', range.join(' and '));
  }
  return [from / (2 * Math.PI), to / (2 * Math.PI)];
}

/** Hz between which orders could be seen: a whole spectrum of segments from a quarter of the recording, 4 s at most. */
function bandOf({ channels, sampleRate }: Recording, highest: number): [number, number] {
  const duration = (channels[0]?.samples.length ?? 0) / sampleRate;
  return [Math.max(8 / duration, 0.5), Math.min(highest * 1.02, sampleRate / 2)];
}

/** Shaft frequencies (Hz) that make some line one of the expected orders, seen where it is or folded once. */
function propose(
  lines: readonly Line[],
  [lowest, highest]: readonly [number, number],
  options: WeighOptions,
): number[] {
  const { expected, sampleRate } = options;
  return lines.flatMap(({ frequency }) =>
    [frequency, sampleRate - frequency, sampleRate + frequency].flatMap((whole) =>
      expected
        .map(({ order }) => whole / order)
        .filter((proposed) => proposed >= lowest && proposed <= highest),
    ),
  );
}

/** Best first, each apart from the ones before it. */
function separate(weighed: WeighedSpeed[]): WeighedSpeed[] {
  const apart: WeighedSpeed[] = [];
  for (const candidate of weighed.sort((a, b) => b.score - a.score)) {
    if (apart.every((other) => Math.abs(candidate.frequency / other.frequency - 1) > SAME))
      apart.push(candidate);
  }
  return apart;
}

/**
 * Each speed holds the share of the range that its lines pin it to, about one in 500 of itself; "no order at all" holds as
 * much as the whole range.
 */
function shareConfidence(
  weighed: readonly WeighedSpeed[],
  { highest, lowest }: { highest: number; lowest: number },
): SpeedEstimate['candidates'] {
  const cell = (frequency: number): number => Math.min(1, (0.004 * frequency) / (highest - lowest));
  const weights = weighed.map(
    ({ score, frequency }) => Math.exp(Math.min(score, 300) * TEMPER) * cell(frequency) ** TEMPER,
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0.1);
  return weighed.slice(0, MOST_CANDIDATES).map(({ frequency, orders }, i) => ({
    speed: 2 * Math.PI * frequency,
    confidence: (weights[i] ?? 0) / total,
    orders,
  }));
}

/** The first holds its calibrated chance; the others share what is left as they did before. */
function calibrate(
  candidates: SpeedEstimate['candidates'],
  reach: 'within' | 'beyond',
): SpeedEstimate['candidates'] {
  const before = candidates[0]?.confidence ?? 0;
  const first = calibrateConfidence(before, reach);
  const rest = before < 1 ? (1 - first) / (1 - before) : 0;
  return candidates.map((candidate, i) => ({
    ...candidate,
    confidence: i === 0 ? first : Math.min(first, rest * candidate.confidence),
  }));
}

/** Below 1 because lines are not as independent as the product takes them; set from simulated trials. */
const TEMPER = 0.8;
