import {
  diagnose,
  estimateSpeed,
  exampleLine,
  orderAmplitudes,
  readDelimited,
  simulateTrial,
  type Recording,
  type ShaftLine,
  type SimulatedTrial,
  type SimulationOptions,
} from '@sternline/core';
import { createRandom, type Random } from '../../packages/core/src/numerics/random.js';

/*
 * Trials made by the simulator, each from its seed: the phone, what it was like to run, and what was wrong. They are made by the
 * laws of the simulate room, which the readings know nothing of.
 */

const TURN = 2 * Math.PI;

export type Fault = 'nothing' | 'even' | 'unbalance' | 'joint' | 'loose' | 'mains' | 'panel';

export interface Trial {
  readonly seed: number;
  readonly kind: 'motion' | 'sound';
  readonly fault: Fault;
  /** Hz */
  readonly sampleRate: number;
  /** Hz, mean over the recording. */
  readonly shaft: number;
  /** Share by which the speed wanders either way. */
  readonly wander: number;
  /** s */
  readonly jitter: number;
  readonly line: ShaftLine | undefined;
  /** rad/s */
  readonly range: readonly [number, number];
  readonly recording: Recording;
  readonly truth: SimulatedTrial['truth'];
}

const MOTION_RATES = [53, 60, 60, 100, 100, 125, 200, 200, 400, 500];
const SOUND_RATES = [8000, 8000, 16000, 48000];
const FAULTS: readonly Fault[] = [
  'nothing',
  'even',
  'unbalance',
  'unbalance',
  'joint',
  'loose',
  'mains',
  'panel',
];

export function makeTrial(seed: number): Trial {
  const random = createRandom(50_000 + seed);
  const kind = random.uniform() < 0.8 ? 'motion' : 'sound';
  const sampleRate = pick(random, kind === 'motion' ? MOTION_RATES : SOUND_RATES);
  const moving = kind === 'motion';
  const fault = pick(random, FAULTS);
  const shaft = moving ? between(random, 10, 70) : between(random, 20, 160);
  const wander = random.uniform() < 0.4 ? 0.008 * random.uniform() : 0;
  const jitter = moving && random.uniform() < 0.4 ? (0.3 * random.uniform()) / sampleRate : 0;
  const duration = moving ? 8 + 16 * random.uniform() : 2 + 2 * random.uniform();
  const line = lineOf(fault, random);
  const options: SimulationOptions = {
    kind,
    sampleRate,
    duration,
    seed,
    speed: wander > 0 ? wandering(shaft, wander, { duration, random }) : TURN * shaft,
    noise: (moving ? 0.01 : 0.0005) * 20 ** random.uniform(),
    hullMass: fault === 'nothing' ? 1e6 : 3 + 9 * random.uniform(),
    propeller: random.uniform() < 0.25 ? 'off' : 'fitted',
    resolution: moving ? pick(random, [0, 0.002, 0.02, 0.1]) : 1 / 32768,
    stampJitter: jitter,
    unbalance: fault === 'unbalance' ? 1e-5 * 10 ** (2 * random.uniform()) : 0,
    ...extras(fault, { shaft, random, kind }),
  };
  const { recording, stamps, truth } = simulateTrial(line, options);
  return {
    seed,
    kind,
    fault,
    sampleRate,
    shaft,
    wander,
    jitter,
    line: random.uniform() < 0.5 ? line : undefined,
    range: [TURN * shaft * (0.25 + 0.6 * random.uniform()), TURN * shaft * (1.15 + 1.8 * random.uniform())],
    recording: readBack(recording, { stamps, jitter }),
    truth,
  };
}

function pick<T>(random: Random, values: readonly T[]): T {
  return values[Math.floor(values.length * random.uniform())]!;
}

function between(random: Random, from: number, to: number): number {
  return from * (to / from) ** random.uniform();
}

function lineOf(fault: Fault, random: Random): ShaftLine {
  const line = exampleLine();
  const angle = fault === 'joint' ? 0.3 * random.uniform() : 0.06 * random.uniform();
  const [motor, ...rest] = line.shafts;
  const driven = rest[0]!;
  return {
    ...line,
    shafts: [{ ...motor!, elevation: driven.elevation + angle, plan: driven.plan }, ...rest],
  };
}

function wandering(
  shaft: number,
  wander: number,
  { duration, random }: { duration: number; random: Random },
): { time: number; speed: number }[] {
  const period = duration * (0.4 + 2 * random.uniform());
  const phase = TURN * random.uniform();
  return Array.from({ length: 41 }, (_, i) => {
    const time = (duration * i) / 40;
    return { time, speed: TURN * shaft * (1 + wander * Math.sin((TURN * time) / period + phase)) };
  });
}

function extras(
  fault: Fault,
  { shaft, random, kind }: { shaft: number; random: Random; kind: 'motion' | 'sound' },
): Partial<SimulationOptions> {
  const size = (kind === 'motion' ? 0.3 : 0.006) * (0.3 + random.uniform());
  const tone = (frequency: number, share: number) => ({ frequency, amplitude: share * size });
  if (fault === 'mains') return { tones: [tone(50, 1), tone(100, random.uniform())] };
  if (fault === 'panel') return { tones: [tone(between(random, 15, 200), 1)] };
  if (fault !== 'loose') return {};
  return { tones: [1, 2, 3, 4, 5, 6].map((order) => tone(order * shaft, 0.2 + random.uniform())) };
}

/** The recording as a phone's file gives it: stamps that jitter, and a reader that has to make the best of them. */
function readBack(
  recording: Recording,
  { stamps, jitter }: { stamps: Float64Array; jitter: number },
): Recording {
  if (jitter === 0) return recording;
  const rows = Array.from(stamps, (stamp, n) =>
    [stamp.toFixed(6), ...recording.channels.map(({ samples }) => samples[n]!.toFixed(5))].join(','),
  );
  return readDelimited(`time (s),x (m/s^2),y (m/s^2),z (m/s^2)\n${rows.join('\n')}\n`);
}

export interface Reading {
  readonly trial: Omit<Trial, 'recording' | 'line'> & { readonly hinted: boolean };
  readonly estimate: { readonly confidence: number; readonly right: boolean; readonly claimed: boolean };
  /** Relative error of the speed that the orders give where it was told within 1 %; NaN where none was seen. */
  readonly speedError: number;
  /** Orders seen where they are and apart from others: error over truth, and over the stated error. */
  readonly amplitudes: readonly {
    readonly relative: number;
    readonly normal: number;
    readonly prominence: number;
  }[];
  /** Orders that were put in at five times the noise or more and could be seen; how many were. */
  readonly there: number;
  readonly found: number;
  readonly findings: number;
}

export function readTrial(trial: Trial): Reading {
  const { recording, line, range, shaft, truth, seed } = trial;
  const hints = line === undefined ? {} : { line };
  const { speed, confidence } = estimateSpeed(recording, { range, ...hints });
  const given = TURN * shaft * (1 + 0.01 * Math.sin(seed));
  const orders = [...new Set([1, 2, 3, ...truth.orders.map(({ order }) => order)])].sort((a, b) => a - b);
  const measured = orderAmplitudes({ recording, speed: given, orders });
  const loose = trial.fault === 'loose';
  const readable = truth.orders.flatMap(({ order, amplitude }) => {
    const found = measured.orders.find((other) => other.order === order);
    if (found === undefined || loose || found.folded || !found.reachable || found.inseparableFrom.length > 0)
      return [];
    const best = found.channels.reduce((a, b) => (b.amplitude > a.amplitude ? b : a));
    return [{ amplitude, best }];
  });
  const strong = readable.filter(
    ({ amplitude, best }) => trial.fault !== 'nothing' && amplitude > 5 * best.floor,
  );
  const { recording: _, line: __, ...rest } = trial;
  return {
    trial: { ...rest, hinted: line !== undefined },
    estimate: {
      confidence,
      right: Math.abs(speed / (TURN * shaft) - 1) < 0.02 && trial.fault !== 'nothing',
      claimed: Number.isFinite(speed),
    },
    speedError: measured.speedFrom === 'recording' ? measured.speed / (TURN * shaft) - 1 : NaN,
    amplitudes: readable
      .filter(({ best }) => best.seen)
      .map(({ amplitude, best }) => ({
        relative: best.amplitude / amplitude - 1,
        normal: (best.amplitude - amplitude) / best.amplitudeError,
        prominence: best.amplitude / best.floor,
      })),
    there: strong.length,
    found: strong.filter(({ best }) => best.seen).length,
    findings: diagnose({ recording, speed: given, ...hints }).findings.length,
  };
}
