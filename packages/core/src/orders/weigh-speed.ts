import type { ExpectedOrder } from './expected-orders.js';
import { foldedFrequency } from './folded-frequency.js';
import type { Line } from './speed-evidence.js';

export interface WeighOptions {
  readonly expected: readonly ExpectedOrder[];
  /** Hz */
  readonly sampleRate: number;
  /** Hz, band in which lines could be seen. */
  readonly band: readonly [number, number];
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
/** Chance that a recording holds hum at a given mains frequency; our judgement. */
const ON_MAINS = 0.1;

/**
 * How well one shaft frequency explains the lines of a recording.
 *
 * Every expected order is there with its chance q or absent with 1 − q; every line that no order explains is one of a few
 * strangers that fall anywhere in the band, each with probability density 2 / band over its own width.
 */
export function weighSpeed(frequency: number, lines: readonly Line[], options: WeighOptions): WeighedSpeed {
  let fitted = frequency;
  // A proposal comes from one line; its family pins it down, and may gain a member by that.
  for (let round = 0; round < 2; round++) fitted = fit(fitted, match(fitted, lines, options), options);
  const matches = match(fitted, lines, options);
  const [lowest, highest] = options.band;
  let score = 0;
  for (const { order, chance, line } of matches) {
    const actual = order * fitted;
    // A folded line has come through whatever stands before the converter, so it is less to be expected.
    const likely = actual > options.sampleRate / 2 ? chance / 2 : chance;
    if (line === undefined) score += Math.log(1 - likely);
    else score += line.weight * Math.log(likely / strangeness(line, actual, highest - lowest));
  }
  return {
    frequency: fitted,
    score,
    orders: matches.filter(({ line }) => line !== undefined).map(({ order }) => order),
  };
}

/** How many strangers are to be expected within reach of a line. */
function strangeness(line: Line, actual: number, band: number): number {
  return (STRANGERS * 2 * reachOf(line, actual)) / band + (line.onMains ? ON_MAINS : 0);
}

interface Match extends ExpectedOrder {
  readonly line: Line | undefined;
}

/** Which line, if any, each order within the band falls on; each line serves once, the likelier order first. */
function match(
  frequency: number,
  lines: readonly Line[],
  { expected, sampleRate, band }: WeighOptions,
): Match[] {
  const free = new Set(lines);
  return expected.flatMap(({ order, chance, mayFold }) => {
    const actual = order * frequency;
    const apparent = foldedFrequency(actual, sampleRate);
    if (!mayFold && actual > sampleRate / 2) return [];
    if (apparent < band[0] || apparent > band[1]) return [];
    const line = lines.find((other) => Math.abs(other.frequency - apparent) < reachOf(other, actual));
    if (line !== undefined && !free.delete(line)) return [];
    return [{ order, chance, mayFold, line }];
  });
}

/** Hz by which a line may miss its order: its own error, and a little for a speed that wanders between channels. */
function reachOf(line: Line, actual: number): number {
  return 3 * line.error + 0.001 * actual;
}

/** Weighted least squares of the lines on their orders. */
function fit(frequency: number, matches: readonly Match[], { sampleRate }: WeighOptions): number {
  let moment = 0;
  let weight = 0;
  for (const { order, line } of matches) {
    if (line === undefined) continue;
    const information = (order / Math.hypot(line.error, 0.001 * line.frequency)) ** 2;
    moment += information * (unfold(line.frequency, order * frequency, sampleRate) / order);
    weight += information;
  }
  return weight > 0 ? moment / weight : frequency;
}

/** The frequency near `actual` that the sampling shows at `apparent`. */
function unfold(apparent: number, actual: number, sampleRate: number): number {
  const centre = sampleRate * Math.round(actual / sampleRate);
  return actual >= centre ? centre + apparent : centre - apparent;
}
