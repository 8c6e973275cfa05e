import type { Channel, Recording, Sampling } from '@sternline/core';
import { asFields, asText, isPositive, type Fields } from './plain-data.js';
import { samplesFromText } from './samples-text.js';

/**
 * Checks plain data that should be a recording.
 *
 * @param value - anything; samples may be text of a project file or numbers
 * @returns the recording, or what is wrong with it, as the rest of a sentence
 */
export function readRecording(value: unknown): Recording | string {
  const fields = asFields(value);
  if (!fields) return 'it has no recording.';
  const sampleRate = fields['sampleRate'];
  if (!isPositive(sampleRate)) return 'its sampling rate is not a number greater than 0.';
  const channels = readChannels(fields['channels']);
  if (!channels) return 'its samples cannot be read.';
  const duration = (channels[0]?.samples.length ?? 0) / sampleRate;
  return {
    name: asText(fields['name']) || 'recording',
    sampleRate,
    channels,
    sampling: readSampling(asFields(fields['sampling']) ?? {}, duration),
  };
}

const PLAIN: Omit<Sampling, 'kind' | 'duration'> = {
  rateFrom: 'given',
  jitter: 0,
  stampStep: 0,
  gaps: [],
  equalStamps: 0,
  unsortedRows: 0,
  badCells: { count: 0, lines: [] },
  clipping: [],
  columns: [],
  notes: [],
};

// How it was taken is told, not computed with, except for gaps and clipping: what is of another kind than it should be
// is left at its plain value.
function readSampling(fields: Fields, duration: number): Sampling {
  const told = Object.entries(PLAIN).map(([name, plain]: [string, unknown]) => {
    const value = fields[name];
    return [name, kindOf(value) === kindOf(plain) ? value : plain];
  });
  return {
    ...(Object.fromEntries(told) as typeof PLAIN),
    ...readMore(fields),
    kind: fields['kind'] === 'sound' ? 'sound' : 'motion',
    duration,
  };
}

/** What tells more of how a recording was taken, where it was told. */
const MORE: Readonly<Record<string, string>> = {
  timeBase: 'string',
  passband: 'number',
  gravity: 'string',
  stuck: 'list',
  heldRows: 'number',
  doubledRows: 'number',
  resolution: 'list',
  sensors: 'list',
  entries: 'list',
  levelPumping: 'object',
};

function readMore(fields: Fields): Partial<Sampling> {
  const told = Object.entries(MORE).filter(([name, kind]) => kindOf(fields[name]) === kind);
  return Object.fromEntries(told.map(([name]) => [name, fields[name]]));
}

function kindOf(value: unknown): string {
  return Array.isArray(value) ? 'list' : typeof value;
}

const CHANNEL_UNITS: readonly Channel['unit'][] = ['m/s²', 'rad/s', 'full scale'];

function readChannels(value: unknown): Channel[] | undefined {
  if (!Array.isArray(value) || value.length === 0) return undefined;
  const channels = value.flatMap((entry: unknown): Channel[] => {
    const fields = asFields(entry);
    const unit = CHANNEL_UNITS.find((known) => known === fields?.['unit']);
    const samples = readSamples(fields?.['samples']);
    return unit && samples ? [{ name: asText(fields?.['name']), unit, samples }] : [];
  });
  return channels.length === value.length ? channels : undefined;
}

function readSamples(value: unknown): Float64Array | undefined {
  if (value instanceof Float64Array) return value;
  if (typeof value !== 'string') return undefined;
  try {
    return samplesFromText(value);
  } catch {
    return undefined;
  }
}
