import {
  bandEnvelope,
  amplitudeSpectrum,
  findResonances,
  noLoadSpeed,
  sliceRecording,
  trackOrders,
} from '@sternline/core';
import type { OrderTrack, Recording, ResonanceSighting } from '@sternline/core';
import type { AnalysisChoices, CourseChoices, TrialCourse } from './analysis-types.js';
import type { ReportProgress } from './progress.js';
import { spectrumMap } from './spectrum-map.js';
import { spectrumResolution } from './spectrum-resolution.js';

/** s through which the shaft is followed; a run-up takes seconds. */
const LONGEST_RUN = 60;
/** Share of the speed by which a steady run wanders. */
const STEADY = 0.05;
/** From here on a speed that was followed is believed. */
const CONVINCING = 0.5;
/** Share by which the highest speed followed may differ from the one entered. */
const SAME_SPEED = 0.12;
/** Times the shaft frequency above which a ring is far from the orders that are looked for. */
const RINGS = 16;
/** s of sound in which blows are counted. */
const ENOUGH = 30;

/**
 * What happens through a recording: the map over time, the speed followed through it, orders against speed, resonances, blows.
 *
 * @param recording - the whole recording
 * @param choices - line, part, and speeds; `speed` is the highest of the run, where the builder knows it
 * @param report - told how far the work has come
 */
export function trialCourse(
  recording: Recording,
  choices: CourseChoices,
  report: ReportProgress = () => undefined,
): TrialCourse {
  const shaft = choices.readAt / (2 * Math.PI);
  report({ share: 0.1, doing: 'Drawing the map over time' });
  const maps = recording.channels.flatMap((channel) => spectrumMap(channel, recording, shaft) ?? []);
  report({ share: 0.5, doing: 'Following the shaft speed' });
  const seen = choices.part ? sliceRecording(recording, choices.part) : recording;
  const run = follow(seen, choices);
  report({ share: 0.9, doing: 'Looking for rattle' });
  return { maps, ...onWholeClock(run, choices.part?.from ?? 0), ...countBlows(seen, shaft) };
}

function onWholeClock(run: Run, begun: number): Run {
  const { track } = run;
  return track ? { ...run, track: { ...track, time: track.time.map((time) => time + begun) } } : run;
}

type Run = Pick<TrialCourse, 'track' | 'unfollowed' | 'moved' | 'resonances'>;

function follow(recording: Recording, choices: CourseChoices): Run {
  const none = { moved: false, resonances: [] };
  if (recording.sampling.duration > LONGEST_RUN) return { ...none, unfollowed: TOO_LONG };
  try {
    const track = followed(recording, choices);
    if (track.confidence < CONVINCING) return { ...none, unfollowed: doubt(track) };
    const moved = wandered(track) > STEADY;
    return { track, moved, resonances: moved ? resonancesOf(track, recording) : [] };
  } catch (error) {
    if (error instanceof RangeError) return { ...none, unfollowed: TOO_SHORT };
    throw error;
  }
}

/** Beyond half the rate an amplitude is not to be relied on, and a swell there may be another order's. */
function resonancesOf(track: OrderTrack, { sampleRate }: Recording): ResonanceSighting[] {
  return findResonances(track).filter(({ frequency }) => frequency < sampleRate / 2);
}

/** The speed that the builder entered, as the highest of the run, settles what the recording leaves open. */
function followed(recording: Recording, choices: CourseChoices): OrderTrack {
  const orders = ordersOf(choices);
  const line = choices.line ? { line: choices.line } : {};
  const track = trackOrders(recording, { orders, range: rangeOf(recording, choices), ...line });
  const multiple = multipleOf(track, choices.speed);
  if (multiple === undefined) return track;
  const told = Array.from(track.time, (time, index) => ({
    time,
    speed: multiple * (track.speed[index] ?? 0),
  }));
  return multiple === 1 ? { ...track, confidence: 1 } : trackOrders(recording, { orders, speed: told });
}

/** By what the speed that was followed must be taken for its highest to be the one entered: half and double look alike. */
function multipleOf({ speed }: OrderTrack, entered: number | undefined): number | undefined {
  if (entered === undefined) return undefined;
  const highest = quantile(speed, 0.97);
  return [1, 2, 0.5].find((multiple) => Math.abs((multiple * highest) / entered - 1) < SAME_SPEED);
}

const TOO_LONG = `It is longer than ${LONGEST_RUN} s: choose the stretch of a run-up or coast-down to follow the shaft through it.`;
const TOO_SHORT = 'It is too short or too torn to follow the shaft through it.';

function doubt({ speed, confidence }: OrderTrack): string {
  const [slow, fast] = [quantile(speed, 0.03), quantile(speed, 0.97)].map((value) =>
    String(Math.round((value * 3) / Math.PI) * 10).replace(/\B(?=(\d{3})+$)/g, '\u202f'),
  );
  return `What repeats in it would fit a shaft at ${slow ?? ''} to ${fast ?? ''} rpm, but just as well half or double that (${Math.round(100 * confidence)} % sure). Put in the highest speed of this run, and the shaft is followed through it.`;
}

function ordersOf({ line }: AnalysisChoices): number[] {
  const blades = line?.propeller?.blades;
  return [...new Set([1, 2, ...(blades === undefined ? [3, 4] : [blades])])];
}

/** rad/s that the shaft may have had; above half the rate it would be its own mirror image. */
function rangeOf(
  { sampleRate, sampling }: Recording,
  { line, readAt, wantedSpeed }: CourseChoices,
): readonly [number, number] {
  const lowest = 2 * Math.PI * Math.min(sampling.kind === 'sound' ? 8 : 3, sampleRate / 16);
  const reached = Math.max((line && noLoadSpeed(line)) ?? 0, 1.3 * readAt, 1.3 * wantedSpeed);
  const highest = Math.min(0.48 * sampleRate * 2 * Math.PI, Math.max(reached, 3 * lowest));
  return [lowest, highest];
}

/** Share of the middle speed between the slow and the fast end of the run. */
function wandered({ speed }: OrderTrack): number {
  return (quantile(speed, 0.95) - quantile(speed, 0.05)) / Math.max(quantile(speed, 0.5), 1e-9);
}

function quantile(values: Float64Array, share: number): number {
  return Float64Array.from(values).sort()[Math.round(share * (values.length - 1))] ?? 0;
}

/** Blows show in sound, in the band far above the orders. */
function countBlows(recording: Recording, shaft: number): Pick<TrialCourse, 'blows'> {
  const { sampleRate, sampling } = recording;
  const [channel] = recording.channels;
  const band = { from: Math.max(RINGS * shaft, sampleRate / 16), to: 0.42 * sampleRate };
  const enough = Math.min(ENOUGH, sampling.duration);
  if (
    !channel ||
    sampling.kind !== 'sound' ||
    band.to < 2 * band.from ||
    enough * shaft < 20 ||
    sampling.gaps.length > 0
  )
    return {};
  const samples = channel.samples.subarray(0, Math.floor(enough * sampleRate));
  const { segmentLength, overlap, step } = spectrumResolution({ sampleRate, samples: samples.length }, shaft);
  const { amplitude } = amplitudeSpectrum(bandEnvelope(samples, sampleRate, band), sampleRate, {
    segmentLength,
    overlap,
  });
  const shown = amplitude.slice(0, Math.ceil(band.from / step));
  return { blows: { channel: channel.name, unit: channel.unit, step, amplitude: shown, band } };
}
