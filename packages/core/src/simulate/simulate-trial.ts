import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { refusal } from '../internal/refuse.js';
import type { ShaftLine } from '../line/types.js';
import { createRandom, type Random } from '../numerics/random.js';
import type { Channel, Recording } from '../recording/types.js';
import { lineForcing, type Forcing } from './forcing.js';
import { speedProfile, type SpeedProfile } from './speed-profile.js';
import type { Resonance, SimulatedTrial, SimulationOptions, SimulationTruth } from './types.js';

/** Full scale for 1 m/s²: where a phone near the motor would stand; our assumption. */
const SOUND_GAIN = 0.02;

/** At most this many samples, so that a slip in the units cannot fill the memory. */
const MOST_SAMPLES = 1e8;

/**
 * A trial of a line as a phone would record it: orders of shaft speed that grow with speed and near the first whirl, tones that
 * stay put, noise, gravity, rounding, and time stamps that jitter. Nothing is filtered before sampling, as in many phones, so
 * what lies above half the rate folds.
 *
 * @param line - a checked line
 * @param options - speed in rad/s or a profile, duration in s, rate in Hz, a seed, and what is wrong with the line
 * @returns the recording on its true time base, the stamps that the phone would log, and what was put in
 * @throws RangeError where a figure is out of its domain
 * @remarks For testing and teaching: a made trial is no prediction of a level. The same seed gives the same trial.
 * @example
 * const { recording } = simulateTrial(exampleLine(), { speed: 400, duration: 4, sampleRate: 200, seed: 7 });
 * recording.channels[0].samples.length // → 800
 * recording.channels.map((channel) => channel.name) // → ['x', 'y', 'z']
 */
export function simulateTrial(line: ShaftLine, options: SimulationOptions): SimulatedTrial {
  const count = sampleCount(options);
  const random = createRandom(options.seed);
  const profile = speedProfile(options.speed);
  const parts = lineForcing(line, options).map((forcing) => makePart(forcing, options, random));
  const channels = options.kind === 'sound' ? soundChannels(parts, options) : motionChannels(parts, options);
  const { sampleRate } = options;
  const filled = channels.map((channel) => fillChannel(channel, { count, profile, random, options }));
  return {
    recording: asRecording(filled, options),
    stamps: makeStamps({ count, sampleRate, random, options }),
    truth: truthOf(channels, profile.speedAt(options.duration / 2)),
  };
}

/** One order as the hull feels it. */
interface Part {
  readonly order: number;
  readonly phase: number;
  /** m/s² at a shaft speed. */
  readonly level: (speed: number) => number;
  readonly axes: readonly [number, number, number];
}

interface Plan {
  readonly name: string;
  readonly unit: Channel['unit'];
  readonly rest: number;
  readonly noise: number;
  readonly tone: number;
  readonly parts: readonly {
    readonly order: number;
    readonly phase: number;
    readonly level: Part['level'];
  }[];
}

function sampleCount({ duration, sampleRate, noise = 0, hullMass = 1 }: SimulationOptions): number {
  checkPositive('simulateTrial: duration', duration);
  checkPositive('simulateTrial: sampleRate', sampleRate);
  checkPositive('simulateTrial: hullMass', hullMass);
  checkNotNegative('simulateTrial: noise', noise);
  const count = Math.floor(duration * sampleRate);
  if (count < 1 || count > MOST_SAMPLES) {
    throw refusal('simulateTrial: duration', `1 to ${MOST_SAMPLES} samples at this rate`, duration);
  }
  return count;
}

function makePart({ order, force, axes }: Forcing, options: SimulationOptions, random: Random): Part {
  const { hullMass = 6, resonances = [] } = options;
  const felt = (speed: number): number => 1 + resonances.reduce((sum, r) => sum + ring(r, order * speed), 0);
  return {
    order,
    axes,
    phase: 2 * Math.PI * random.uniform(),
    level: (speed) => (force(speed) / hullMass) * felt(speed),
  };
}

function ring({ frequency, damping, gain }: Resonance, pulsation: number): number {
  const ratio = pulsation / (2 * Math.PI * frequency);
  return (gain * ratio ** 2) / Math.hypot(1 - ratio ** 2, 2 * damping * ratio);
}

function motionChannels(parts: readonly Part[], options: SimulationOptions): Plan[] {
  const { gravity = [0, 0, 9.80665], noise = 0.03 } = options;
  return (['x', 'y', 'z'] as const).map((name, axis) => ({
    name,
    unit: 'm/s²',
    rest: gravity[axis] ?? 0,
    noise,
    tone: [0.3, 0.5, 1][axis] ?? 1,
    parts: parts.map(({ order, phase, level, axes }) => ({
      order,
      // The push turns with the shaft: athwart and up stand a quarter turn apart.
      phase: phase + (axis === 2 ? Math.PI / 2 : 0),
      level: (speed: number) => level(speed) * (axes[axis] ?? 0),
    })),
  }));
}

function soundChannels(parts: readonly Part[], { noise = 0.002 }: SimulationOptions): Plan[] {
  const levels = parts.map(({ order, phase, level }) => ({
    order,
    phase,
    level: (speed: number) => SOUND_GAIN * level(speed),
  }));
  return [{ name: 'sound', unit: 'full scale', rest: 0, noise, tone: 1, parts: levels }];
}

interface Filling {
  readonly count: number;
  readonly profile: SpeedProfile;
  readonly random: Random;
  readonly options: SimulationOptions;
}

function fillChannel(plan: Plan, { count, profile, random, options }: Filling): Channel {
  const { sampleRate, tones = [], resolution = 0 } = options;
  const samples = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const time = i / sampleRate;
    const speed = profile.speedAt(time);
    const angle = profile.angleAt(time);
    let value = plan.rest + plan.noise * random.normal();
    for (const { order, phase, level } of plan.parts) value += level(speed) * Math.cos(order * angle + phase);
    for (const tone of tones)
      value += plan.tone * tone.amplitude * Math.cos(2 * Math.PI * tone.frequency * time);
    samples[i] = resolution > 0 ? Math.round(value / resolution) * resolution : value;
  }
  return { name: plan.name, unit: plan.unit, samples };
}

function makeStamps({
  count,
  sampleRate,
  random,
  options: { stampJitter = 0, stampStep = 0 },
}: Omit<Filling, 'profile'> & { readonly sampleRate: number }): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => {
    const stamp = i / sampleRate + (stampJitter > 0 ? stampJitter * random.normal() : 0);
    return stampStep > 0 ? Math.round(stamp / stampStep) * stampStep : stamp;
  });
}

function asRecording(channels: readonly Channel[], options: SimulationOptions): Recording {
  const { kind = 'motion', sampleRate, duration, stampJitter = 0, stampStep = 0 } = options;
  return {
    name: options.name ?? 'simulated trial',
    sampleRate,
    channels,
    sampling: {
      kind,
      duration,
      rateFrom: 'given',
      jitter: stampJitter,
      stampStep,
      gaps: [],
      equalStamps: 0,
      unsortedRows: 0,
      badCells: { count: 0, lines: [] },
      clipping: [],
      columns: [],
      notes: [`Simulated from the line with seed ${options.seed}; not a recording.`],
    },
  };
}

function truthOf(channels: readonly Plan[], speed: number): SimulationTruth {
  const orders = (channels[0]?.parts ?? []).map(({ order }, i) => ({
    order,
    amplitude: Math.max(...channels.map((channel) => channel.parts[i]?.level(speed) ?? 0)),
  }));
  return { shaftFrequency: speed / (2 * Math.PI), orders };
}
