import { sniffFile } from '@sternline/core';
import type { AnalysisChoices, ReadChoices } from './analysis-types.js';
import type { AnalysisClient } from './analysis-client.js';
import type { Opened } from './analysis-desk.js';
import { decodeMedia } from './decode-media.js';
import type { ReportProgress } from './progress.js';

/** Bytes that tell what a file is. */
const HEAD = 4096;

/** How a file is to be read, and by whom. */
export interface ReadFileOptions {
  readonly client: AnalysisClient;
  readonly read: ReadChoices;
  readonly analysis: AnalysisChoices;
  readonly report: ReportProgress;
  /** Stops what goes on before the client is asked. */
  readonly signal: AbortSignal;
}

/**
 * Reads a file that was dropped, chosen, pasted or just recorded: text, WAV and zip in the worker, other sound and video by
 * the browser.
 *
 * @param file - stays readable, so that it can be read again with other choices
 * @param options - who reads, and what the user told
 * @returns what was read and what it says, or what stands in the way
 */
export async function readFile(file: File, options: ReadFileOptions): Promise<Opened> {
  const { client, read, analysis, report, signal } = options;
  report({ share: 0, doing: `Opening ${file.name}` });
  const { reader, format, advice } = sniffFile(await bytesOf(file.slice(0, HEAD)));
  if (reader === 'none') return refused(file, { code: 'none', format, advice });
  if (reader === 'media') return await openMedia(file, options, { code: 'not-decoded', format, advice });
  const bytes = await bytesOf(file);
  signal.throwIfAborted();
  const opened = await client.open({ name: file.name, bytes }, { read, analysis }, report);
  const { outcome } = opened;
  const browserMayKnow = outcome.kind === 'stopped' && ['compressed', 'unsupported'].includes(outcome.code);
  return browserMayKnow ? ((await decoded(file, options)) ?? opened) : opened;
}

interface Refusal {
  readonly code: string;
  readonly format: string;
  readonly advice: string;
}

async function openMedia(file: File, options: ReadFileOptions, facts: Refusal): Promise<Opened> {
  return (await decoded(file, options)) ?? refused(file, facts);
}

async function decoded(
  file: File,
  { client, analysis, report, signal }: ReadFileOptions,
): Promise<Opened | undefined> {
  report({ share: 0.05, doing: `Decoding ${file.name}` });
  const sound = await decodeMedia({ name: file.name, bytes: await bytesOf(file) });
  signal.throwIfAborted();
  return sound && (await client.openSound(sound, analysis, report));
}

function refused({ name }: File, { code, format, advice }: Refusal): Opened {
  const cannot = code === 'none' ? '' : ', and this browser cannot decode its sound';
  const remedy = code === 'none' ? advice : WAV_INSTEAD;
  return { outcome: { kind: 'stopped', code, found: `${name} is ${format}${cannot}.`, remedy } };
}

const WAV_INSTEAD = 'Save it as WAV on the phone or with any sound editor, and choose that file.';

async function bytesOf(file: Blob): Promise<Uint8Array> {
  return new Uint8Array(await file.arrayBuffer());
}
