import { get, set } from 'idb-keyval';
import type { Channel, Recording } from '@sternline/core';
import { letPageBreathe } from './let-page-breathe.js';

/** Samples in a piece: the browser copies what it keeps on the page's own thread, and a larger piece would hold it up. */
const PIECE = 2 ** 18;

/** A recording as the device keeps it: its samples lie in pieces beside it. */
interface KeptRecording extends Omit<Recording, 'channels'> {
  readonly channels: readonly (Omit<Channel, 'samples'> & { readonly count: number })[];
}

/**
 * Keeps a recording on the device, piece by piece.
 *
 * @param key - of the store; the pieces lie under keys that begin with it
 * @param recording - of any length
 */
export async function keepRecording(key: string, recording: Recording): Promise<void> {
  for (const [index, { samples }] of recording.channels.entries()) {
    for (let start = 0; start < samples.length; start += PIECE) {
      // A copy of the piece alone: a view would take the whole buffer along.
      await set(pieceKey(key, { index, start }), samples.slice(start, start + PIECE));
      await letPageBreathe();
    }
  }
  const { asStamped: _, ...sampling } = recording.sampling;
  const channels = recording.channels.map(({ name, unit, samples }) => ({
    name,
    unit,
    count: samples.length,
  }));
  await set(key, { ...recording, sampling, channels } satisfies KeptRecording);
}

/**
 * A recording that was kept.
 *
 * @param key - as it was kept under
 * @returns plain data that is still to be checked; undefined where there is none or pieces are missing
 */
export async function recallRecording(key: string): Promise<unknown> {
  const kept = await get<KeptRecording>(key);
  if (!kept) return undefined;
  const channels = [];
  for (const [index, { count, ...channel }] of kept.channels.entries()) {
    const samples = new Float64Array(count);
    for (let start = 0; start < count; start += PIECE) {
      const piece = await get<Float64Array>(pieceKey(key, { index, start }));
      if (!piece) return undefined;
      samples.set(piece, start);
    }
    channels.push({ ...channel, samples });
  }
  return { ...kept, channels };
}

function pieceKey(key: string, { index, start }: { readonly index: number; readonly start: number }): string {
  return `${key} ${index} ${start}`;
}
