import { checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import { causeLine, ordersOf, type CauseLine } from './cause-line.js';
import { describeLimits } from './describe-limits.js';
import { describeTrials, trialLimits } from './describe-trials.js';
import type { Evidence } from './evidence.js';
import { findCandidates } from './find-candidates.js';
import { findFixedLines } from './find-fixed-lines.js';
import { gatherEvidence } from './gather-evidence.js';
import { measureTraits } from './measure-traits.js';
import { orderGrowth } from './order-growth.js';
import { pooledConfidences } from './pooled-confidences.js';
import { settleTrials } from './settle-trials.js';
import { trialPairs } from './trial-pairs.js';
import type { Behaviour, LineTrial, OrderGrowth, TrialsDiagnosis, TrialsInput } from './trials-types.js';
import type { Cause, Diagnosis, Finding } from './types.js';
import { weighCandidates } from './weigh-candidates.js';
import { weighTrials, type CauseCase } from './weigh-trials.js';

/** Below this a cause is not worth a look. */
const LEAST = 0.05;
/** What the same trial, run twice, differs by, and so does a ratio of two. */
const REPEATABILITY = 0.12;

/** One trial, read. */
interface ReadTrial {
  readonly trial: LineTrial;
  readonly evidence: Evidence;
  readonly diagnosis: Diagnosis;
}

/**
 * Weighs several trials of one line together: how its orders grow with speed, what taking the propeller off, turning the
 * joint or leaving the water does to them, and which lines stay put while the speed changes.
 *
 * P(c) ∝ odds of the single recordings × Π P(outcome | c), shared among the causes that explain the same line
 *
 * @param input - `trials`, each with its `recording`, `speed` in rad/s and `conditions`, all of one line with the phone in
 *   one place; the `line` and the name of the channel along the shaft, `axial`, if known
 * @returns findings, most confident first, with what speaks for each; growth of the orders with its standard error; lines at a
 *   fixed frequency; ratios of the tests; each trial's own diagnosis; and what is still open
 * @throws RangeError for no trials, a speed that is not greater than 0 or a recording without channels
 * @remarks Growth needs speeds 8 % apart or more under the same conditions; a test needs a trial with and one without at
 *   speeds within 6 %. An order that one speed lays on another by folding counts where some other speed sets it apart.
 * @example
 * ```ts
 * let state = 7;
 * const noise = () => (state = (16807 * state) % 2147483647) / 2147483647 - 0.5;
 * const trial = (hertz, amplitude, propeller) => ({
 *   recording: { name: propeller, sampleRate: 200, channels: [{ name: 'x', unit: 'm/s²', samples: Float64Array.from(
 *     { length: 3000 }, (_, n) => amplitude * Math.sin((2 * Math.PI * hertz * n) / 200) + 0.1 * noise()) }],
 *     sampling: { kind: 'motion', gaps: [], clipping: [] } },
 *   speed: 2 * Math.PI * hertz,
 *   conditions: { propeller, medium: propeller === 'off' ? 'air' : 'water' },
 * });
 * const { findings, growth } = diagnoseTrials({ trials: [trial(20, 0.36, 'fitted'), trial(30, 0.81, 'fitted'), trial(30, 0.1, 'off')] });
 * findings[0].cause // → 'unbalance'
 * growth[0].slope // → 2.0
 * ```
 */
export function diagnoseTrials(input: TrialsInput): TrialsDiagnosis {
  checkTrials(input);
  const read = input.trials.map((trial) => readTrial(trial, input));
  const all = read.map(({ evidence }) => evidence);
  const fixed = findFixedLines(all);
  const pooled = pooledConfidences(read);
  const cases = settleTrials(
    [...pooled].map(([cause, confidence]) => caseOf(read, { cause, confidence })),
    { evidence: all, fixed },
  );
  const weighed = weighTrials(cases);
  const findings = cases
    .flatMap((one): Finding[] => {
      const confidence = weighed.get(one.cause) ?? 0;
      const best = bestFinding(read, one.cause);
      return best === undefined || confidence < LEAST
        ? []
        : [{ ...best, confidence, evidence: [...describeTrials(one, fixed), ...best.evidence] }];
    })
    .sort((a, b) => b.confidence - a.confidence);
  return {
    findings,
    growth: growthOf(read),
    fixed,
    behaviours: cases.flatMap(({ behaviours }) => behaviours),
    trials: read.map(({ diagnosis }) => diagnosis),
    limits: trialLimits(input.trials),
  };
}

function checkTrials({ trials }: TrialsInput): void {
  if (trials.length === 0) throw refusal('diagnoseTrials: trials', 'at least one', trials);
  trials.forEach(({ speed, recording }, i) => {
    checkPositive(`diagnoseTrials: trials[${i}].speed`, speed);
    if (recording.channels.length > 0) return;
    throw refusal(`diagnoseTrials: trials[${i}].recording`, 'one with a channel or more', 'none');
  });
}

function readTrial(trial: LineTrial, { line, axial }: TrialsInput): ReadTrial {
  const evidence = gatherEvidence({
    recording: trial.recording,
    speed: trial.speed,
    ...(line === undefined ? {} : { line }),
    ...(axial === undefined ? {} : { axial }),
  });
  const findings = weighCandidates(findCandidates(evidence), measureTraits(evidence));
  const limits = describeLimits(evidence);
  return {
    trial,
    evidence,
    diagnosis: { orders: evidence.readings, peaks: evidence.peaks, findings, limits },
  };
}

function caseOf(
  read: readonly ReadTrial[],
  { cause, confidence }: { readonly cause: Cause; readonly confidence: number },
): CauseCase {
  const orders = ordersOf(cause, bladesOf(read), oddOrder(read));
  return {
    cause,
    confidence,
    group: '',
    other: 1,
    growth: orders.length === 0 ? undefined : growthAlong(read, orders),
    behaviours: orders.length === 0 ? [] : behavioursOf(read, { cause, orders }),
  };
}

function bladesOf(read: readonly ReadTrial[]): number {
  return read[0]?.evidence.line?.propeller?.blades ?? 0;
}

/** The strongest whole order from 3 that is no blade order. */
function oddOrder(read: readonly ReadTrial[]): number {
  const blades = bladesOf(read);
  const [strongest] = read
    .flatMap(({ evidence }) => evidence.readings)
    .filter(({ order, seen }) => seen && order >= 3 && order !== blades && order !== 2 * blades)
    .sort((a, b) => b.amplitude - a.amplitude);
  return strongest?.order ?? 3;
}

/** Growth under the first trial's conditions. */
function growthAlong(read: readonly ReadTrial[], orders: readonly number[]): OrderGrowth | undefined {
  const first = read[0]?.trial.conditions;
  const points = read
    .filter(
      ({ trial: { conditions } }) =>
        conditions.propeller === first?.propeller &&
        conditions.medium === first.medium &&
        (conditions.jointTurned ?? 0) === (first.jointTurned ?? 0),
    )
    .flatMap(({ evidence }) => {
      const line = causeLine(evidence, orders);
      return line === undefined ? [] : [{ speed: evidence.speed, ...line }];
    });
  return orderGrowth(orders[0] ?? 1, points);
}

function behavioursOf(
  read: readonly ReadTrial[],
  { cause, orders }: { readonly cause: Cause; readonly orders: readonly number[] },
): Behaviour[] {
  return trialPairs(read.map(({ trial }) => trial)).flatMap(({ test, ...at }) => {
    const [without, changed] = [at.without, at.with].map((i) => {
      const evidence = read[i]?.evidence;
      return evidence === undefined ? undefined : causeLine(evidence, orders);
    });
    return without === undefined || changed === undefined
      ? []
      : [{ cause, test, ...ratioOf(without, changed) }];
  });
}

function ratioOf(without: CauseLine, changed: CauseLine): { ratio: number; error: number } {
  const errors = [without, changed].map(({ amplitude, amplitudeError }) => amplitudeError / amplitude);
  return { ratio: changed.amplitude / without.amplitude, error: Math.hypot(REPEATABILITY, ...errors) };
}

function growthOf(read: readonly ReadTrial[]): OrderGrowth[] {
  const blades = bladesOf(read);
  const orders = [...new Set([1, 2, ...(blades > 1 ? [blades] : []), oddOrder(read)])];
  const seen = orders.filter((order) =>
    read.some(({ evidence }) => evidence.readings.some((one) => one.order === order && one.seen)),
  );
  return seen.flatMap((order) => growthAlong(read, [order]) ?? []);
}

/** Of the trial in which the cause stands clearest. */
function bestFinding(read: readonly ReadTrial[], cause: Cause): Finding | undefined {
  return read
    .flatMap(({ diagnosis }) => diagnosis.findings.filter((finding) => finding.cause === cause))
    .sort((a, b) => b.confidence - a.confidence)[0];
}
