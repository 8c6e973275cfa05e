import { refusal } from '../internal/refuse.js';
import { listText } from '../internal/list-text.js';
import { numberText } from '../internal/number-text.js';
import { type Recording, type Sampling } from './types.js';

/**
 * How well a recording was taken, in plain words: rate, even spacing, missing samples, clipping, steps, gain.
 *
 * @param recording - as {@link readDelimited}, {@link readWav} or {@link readZip} give it
 * @returns one sentence for each of these that applies, rate and length first
 * @throws RangeError where `recording` is none
 * @remarks It tells what the samples are worth. What was found and assumed while reading stands in
 *   `sampling.notes`; which orders can be seen at a shaft speed is told by {@link describeReach}.
 * @example
 * const text = 't (s),x (g),y (g),z (g)\n' + Array.from({ length: 200 }, (_, i) => `${i / 100},${i % 3 / 10},0.1,1.0`).join('\n');
 * const sentences = describeSampling(readDelimited(text));
 * sentences[0] // → '3 axes of acceleration at 100.0 Hz for 2.00 s: lines up to 50.0 Hz, told apart from 0.500 Hz on.'
 * sentences[1] // → 'The samples stand evenly in time, and none is missing.'
 */
export function describeSampling(recording: Recording): string[] {
  if (typeof recording !== 'object' || !Array.isArray(recording.channels))
    throw refusal('describeSampling: recording', 'a recording', recording);
  return [
    rateSentence(recording),
    evenSentence(recording),
    ...clippingSentences(recording.sampling),
    ...stuckSentences(recording),
    ...stepSentences(recording),
    ...gainSentences(recording.sampling),
  ];
}

function rateSentence({ channels, sampleRate, sampling }: Recording): string {
  const count = channels.length;
  const [first] = channels;
  const what =
    sampling.kind === 'sound'
      ? `Sound${count > 1 ? ` in ${count} channels` : ''}`
      : `${count} ${count === 1 ? 'axis' : 'axes'} of ${first?.unit === 'rad/s' ? 'turning rate' : 'acceleration'}`;
  const top = sampling.passband ?? sampleRate / 2;
  return `${what} at ${numberText(sampleRate, 4)} Hz for ${numberText(sampling.duration)} s: lines up to ${numberText(top)} Hz, told apart from ${numberText(1 / sampling.duration)} Hz on.`;
}

function evenSentence({ sampleRate, sampling }: Recording): string {
  const { gaps, jitter, rateFrom, timeBase = 'counts' } = sampling;
  const lost = gaps.reduce((sum, { count }) => sum + count, 0);
  const missing =
    lost === 0
      ? 'none is missing'
      : `${numberText(lost / sampleRate, 2)} s are missing in ${gaps.length === 1 ? 'one place' : `${gaps.length} places`}`;
  if (rateFrom !== 'stamps')
    return `The file has no time stamps: the rate is taken as stated, and ${missing === 'none is missing' ? 'gaps would not show' : missing}.`;
  if (timeBase === 'stamps')
    return `The samples were taken at uneven times, ${numberText(1000 * jitter, 2)} ms from even ones, and ${missing}.`;
  if (timeBase === 'piecewise') return `The sampling rate moved during the recording, and ${missing}.`;
  return jitter > 0.03 / sampleRate
    ? `The samples stand evenly, though their stamps stray by ${numberText(1000 * jitter, 2)} ms, and ${missing}.`
    : `The samples stand evenly in time, and ${missing}.`;
}

function clippingSentences({ clipping }: Sampling): string[] {
  const cut = [...new Set(clipping.map(({ channel }) => channel))];
  const count = clipping.reduce((sum, entry) => sum + entry.count, 0);
  return cut.length === 0
    ? []
    : [
        `Peaks are cut off on ${listText(cut)} (${count} samples): levels there read low, and false higher orders appear.`,
      ];
}

function stuckSentences({ channels, sampling }: Recording): string[] {
  const { stuck = [], heldRows = 0, kind } = sampling;
  const still = [...new Set(stuck.map(({ channel }) => channel))];
  const held = heldRows / Math.max(channels[0]?.samples.length ?? 0, 1);
  const what = kind === 'sound' ? 'are dead silent for a while' : 'do not move for a while or at all';
  return [
    ...(still.length === 0 ? [] : [`The samples of ${listText(still)} ${what}.`]),
    ...(held > 0.25
      ? [
          `The sensor gave a new value only in ${Math.round(100 * (1 - held))} % of the rows: its true rate is lower.`,
        ]
      : []),
  ];
}

function stepSentences({ channels, sampling }: Recording): string[] {
  const step = Math.max(0, ...(sampling.resolution ?? []).map((entry) => entry.step));
  if (step === 0) return [];
  if (sampling.kind === 'sound')
    return [
      soundSteps(
        channels.map(({ samples }) => samples),
        step,
      ),
    ];
  const unit = channels[0]?.unit ?? '';
  return [
    `The values go in steps of ${numberText(step, 2)} ${unit}: shaking of less than half a step may not show at all.`,
  ];
}

function soundSteps(channels: readonly Float64Array[], step: number): string {
  let peak = 0;
  for (const samples of channels)
    for (const value of samples) if (Math.abs(value) > peak) peak = Math.abs(value);
  const steps = peak / step;
  const bits = `The loudest sample stands at ${numberText(100 * peak, 2)} % of full scale, ${numberText(steps, 2)} steps of the file`;
  return steps < 200
    ? `${bits}: so soft a sound drowns in its own rounding; record closer or louder.`
    : `${bits}.`;
}

function gainSentences({ kind, levelPumping }: Sampling): string[] {
  if (levelPumping) {
    const { dip, recovery, pumped, events } = levelPumping;
    return [
      `Automatic gain was at work: after ${pumped} of ${events} loud events the level fell by about ${numberText(dip, 2)} dB and came back within ${numberText(recovery, 2)} s, so levels cannot be compared.`,
    ];
  }
  return kind === 'sound'
    ? ['Levels are relative: compare them only with the same phone, place and gain.']
    : [];
}
