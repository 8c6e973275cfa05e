import type { ExpectedOrder } from './expected-orders.js';
import { foldedFrequency } from './folded-frequency.js';
import type { Line } from './speed-evidence.js';

export interface WeighOptions {
  readonly expected: readonly ExpectedOrder[];
  /** Hz */
  readonly sampleRate: number;
  /** Hz, band in which lines were looked for. */
  readonly band: number;
}

export interface WeighedSpeed {
  /** Hz, fitted to the lines that it explains. */
  readonly frequency: number;
  /** Logarithm of how likely the lines are with this shaft frequency, over all of them being strangers. */
  readonly score: number;
  readonly orders: readonly number[];
}

/** Lines that a recording is expected to hold which have nothing to do with the shaft: hull, mains, another machine. */
const STRANGERS = 2;

/**
 * How well one shaft frequency explains the lines of a recording.
 *
 * Every expected order is there with its chance q or absent with 1 − q; every line that no order explains is one of a few
 * strangers that fall anywhere in the band, each with probability density 2 / band over its own width.
 */
export function weighSpeed(frequency: number, lines: readonly Line[], options: WeighOptions): WeighedSpeed {
  const { expected, sampleRate, band } = options;
  let score = 0;
  let moment = 0;
  let weight = 0;
  const orders: number[] = [];
  const used = new Set<Line>();
  for (const { order, chance } of expected) {
    const actual = order * frequency;
    const apparent = foldedFrequency(actual, sampleRate);
    if (apparent > band || apparent < 0.01 * sampleRate) continue;
    const line = lines.find(
      (other) => Math.abs(other.frequency - apparent) < 3 * other.error + 0.002 * actual,
    );
    if (line === undefined) {
      score += Math.log(1 - chance);
      continue;
    }
    // A folded line has come through whatever stands before the converter, so it is less to be expected.
    const likely = actual > sampleRate / 2 ? chance / 2 : chance;
    orders.push(order);
    if (used.has(line)) continue;
    used.add(line);
    score += line.weight * Math.log((likely * band) / (STRANGERS * 6 * line.error));
    const unfolded = unfold(line.frequency, actual, sampleRate);
    const information = (order / line.error) ** 2;
    moment += information * (unfolded / order);
    weight += information;
  }
  return { frequency: weight > 0 ? moment / weight : frequency, score, orders };
}

/** The frequency near `actual` that the sampling shows at `apparent`. */
function unfold(apparent: number, actual: number, sampleRate: number): number {
  const centre = sampleRate * Math.round(actual / sampleRate);
  return actual >= centre ? centre + apparent : centre - apparent;
}
