import type { Recording } from '@sternline/core';
import type { SpectrumResolution } from './spectrum-resolution.js';

/**
 * What a recording is, in one sentence.
 *
 * @param recording - as read
 * @returns channels, rate, length
 */
export function readingSentence(recording: Recording): string {
  const { channels, sampleRate, sampling } = recording;
  const names = channels.map((channel) => channel.name);
  const quantity = QUANTITIES[channels[0]?.unit ?? 'm/s²'];
  const what = channels.length === 1 ? `${quantity}, one channel` : `${quantity} on ${listWords(names)}`;
  const from = RATE_SOURCES[sampling.rateFrom];
  return `${what}: ${durationWords(sampling.duration)} at ${rateWords(sampleRate)} samples a second (${from}).`;
}

const QUANTITIES = { 'm/s²': 'Acceleration', 'rad/s': 'Turning rate', 'full scale': 'Sound' } as const;

const RATE_SOURCES = {
  stamps: 'counted against the time stamps',
  header: 'stated by the file',
  given: 'as given',
} as const;

/**
 * How the drawn spectrum was made, in one sentence.
 *
 * @param resolution - how it was cut
 * @returns line spacing and averages
 */
export function resolutionSentence({ step, segments, overlap }: SpectrumResolution): string {
  const spacing = `Lines ${step.toPrecision(2).replace(/\.?0+$/, '')} Hz apart`;
  if (segments < 2) return `${spacing}, from the whole recording in one piece: nothing is averaged.`;
  return `${spacing}, averaged over ${segments} ${overlap > 0 ? 'half-overlapping ' : ''}pieces.`;
}

/**
 * A length of time as people say it.
 *
 * @param seconds - s
 * @returns such as `2.0 s` or `8 min 29 s`
 */
export function durationWords(seconds: number): string {
  if (seconds < 100) return `${seconds.toFixed(seconds < 10 ? 2 : 1)} s`;
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)} min ${whole % 60} s`;
}

function rateWords(rate: number): string {
  const text = rate >= 1000 ? rate.toFixed(0) : rate.toFixed(1).replace(/\.0$/, '');
  return text.replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

/** `x, y and z` */
export function listWords(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
