import {
  balanceByAmplitudes,
  splitCorrection,
  trialMass,
  verifyBalance,
  type AmplitudeBalance,
  type AvoidBand,
  type ShaftLine,
  type SplitCorrection,
  type TrialMass,
  type Verification,
} from '@sternline/core';
import { TRIAL_RUNS, type BalanceBook, type BalanceRun } from './advice.js';
import { judgeLine } from './judge-line.js';

/** What the readings come to. */
export interface BalanceResult {
  readonly balance: AmplitudeBalance;
  /** The correction laid on blades. */
  readonly split: SplitCorrection;
}

/** A balancing as far as it has come, with what was not entered filled in. */
export interface BalanceWalk {
  /** rad/s */
  readonly speed: number;
  /** kg */
  readonly rotorMass: number;
  /** m */
  readonly radius: number;
  readonly blades: number;
  readonly advised: TrialMass;
  /** N, with which the trial mass pulls at that speed; absent until it is weighed. */
  readonly pull?: number;
  /** The band to avoid that this speed lies in. */
  readonly band?: AvoidBand;
  /** What comes next. */
  readonly next: 'mass' | BalanceRun | 'done';
  readonly result?: BalanceResult;
  /** Why the readings come to nothing. */
  readonly problem?: string;
  readonly verification?: Verification;
}

/** rad, of the blades from blade 1. */
export function bladeAngles(blades: number): number[] {
  return Array.from({ length: blades }, (_, blade) => (2 * Math.PI * blade) / blades);
}

/**
 * Where a balancing stands: what to do next, and the correction once all four runs are in.
 *
 * @param book - what was entered
 * @param line - the line whose propeller is balanced
 * @param wantedSpeed - rad/s
 */
export function walkBalance(book: BalanceBook, line: ShaftLine, wantedSpeed: number): BalanceWalk {
  const speed = book.speed ?? safeSpeed(line, wantedSpeed);
  const rotorMass = book.rotorMass ?? turningMass(line);
  const radius = book.radius ?? (line.propeller?.diameter ?? 0.04) / 4;
  const blades = line.propeller?.blades ?? 4;
  const start = { speed, rotorMass, radius, blades, advised: trialMass({ rotorMass, speed, radius }) };
  const pull = book.mass === undefined ? {} : { pull: book.mass * radius * speed ** 2 };
  const band = bandAt(line, speed);
  return { ...start, ...pull, ...(band ? { band } : {}), ...settle(book, { radius, blades }) };
}

type Outcome = Pick<BalanceWalk, 'next' | 'result' | 'problem' | 'verification'>;

function settle(book: BalanceBook, { radius, blades }: Pick<BalanceWalk, 'radius' | 'blades'>): Outcome {
  const { mass, runs } = book;
  const [found, ...trials] = (['found', ...TRIAL_RUNS] as const).map((run) => runs[run]);
  if (mass === undefined) return { next: 'mass' };
  const missing = (['found', ...TRIAL_RUNS] as const).find((run) => runs[run] === undefined);
  if (missing || !found) return { next: missing ?? 'found' };
  const given = trials.map((reading, i) => ({
    mass,
    angle: book.angles[i] ?? 0,
    amplitude: reading?.amplitude ?? 0,
  }));
  try {
    const error = amplitudeErrorOf(book);
    const balance = balanceByAmplitudes({
      ...{ initial: found.amplitude, trials: given, radius },
      ...(error === undefined ? {} : { amplitudeError: error }),
    });
    const split = splitCorrection(balance, { positions: bladeAngles(Math.max(2, blades)), by: book.by });
    return { result: { balance, split }, ...verify(book, balance) };
  } catch (error) {
    return { next: 'found', problem: plainProblem(error) };
  }
}

function verify(book: BalanceBook, { expectedAmplitude }: AmplitudeBalance): Outcome {
  const { found, check } = book.runs;
  if (!found || !check) return { next: 'check' };
  const amplitudeError = amplitudeErrorOf(book);
  const verification = verifyBalance({
    ...{ before: found.amplitude, after: check.amplitude, expected: expectedAmplitude },
    ...(amplitudeError === undefined ? {} : { amplitudeError }),
  });
  return { next: 'done', verification };
}

/** Where recordings gave every run its error, their root mean square; else the misfit of the circles tells. */
function amplitudeErrorOf({ runs }: BalanceBook): number | undefined {
  const errors = (['found', ...TRIAL_RUNS] as const).map((run) => runs[run]?.error);
  const known = errors.filter((error) => error !== undefined);
  if (known.length < errors.length) return undefined;
  return Math.sqrt(known.reduce((sum, error) => sum + error ** 2, 0) / known.length);
}

// The core words an error for its caller; what stands behind the argument's name is for the reader.
function plainProblem(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  const [, condition] = /must be (.*?)(?:, got .*)?$/.exec(text) ?? [];
  return condition === undefined ? text : `It takes ${condition}.`;
}

/** Share of the first whirl to stay below while balancing. Common practice. */
const BELOW_WHIRL = 0.65;
/** Share by which a proposed speed stays off a band. */
const OFF_BAND = 0.95;

/** The wanted speed, or the next one below it that is well under the first whirl and clear of every band. */
function safeSpeed(line: ShaftLine, wantedSpeed: number): number {
  const { assessment } = judgeLine(line, wantedSpeed);
  if (!assessment) return wantedSpeed;
  const critical = assessment.criticalSpeeds
    .filter(({ excitation }) => excitation === 'unbalance')
    .map(({ speed }) => speed);
  const most = Math.min(wantedSpeed, BELOW_WHIRL * Math.min(Infinity, ...critical));
  const downwards = [...assessment.avoidBands].sort((a, b) => b.to - a.to);
  return downwards.reduce(
    (speed, { from, to }) => (speed >= from && speed <= to ? OFF_BAND * from : speed),
    most,
  );
}

/** The band that a speed lies in: there amplitudes do not follow the unbalance alone. */
function bandAt(line: ShaftLine, speed: number): AvoidBand | undefined {
  return judgeLine(line, speed).assessment?.avoidBands.find(({ from, to }) => speed >= from && speed <= to);
}

/** kg, of the last shaft with what sits on it. */
function turningMass({ shafts }: ShaftLine): number {
  const last = shafts.at(-1);
  if (!last) return 0.05;
  const area = (Math.PI / 4) * (last.outerDiameter ** 2 - last.innerDiameter ** 2);
  return last.discs.reduce((sum, { mass }) => sum + mass, area * last.length * last.material.density);
}
