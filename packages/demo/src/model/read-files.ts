import type { AnalysisChoices, ReadChoices } from './analysis-types.js';
import type { AnalysisClient } from './analysis-client.js';
import type { Opened } from './analysis-desk.js';
import { decodeMedia } from './decode-media.js';
import { fileKind } from './file-kind.js';
import type { ReportProgress } from './progress.js';

/** How a file is to be read, and by whom. */
export interface ReadFileOptions {
  readonly client: AnalysisClient;
  readonly read: ReadChoices;
  readonly analysis: AnalysisChoices;
  readonly report: ReportProgress;
}

/**
 * Reads a file that was dropped, chosen or pasted: text and WAV in the worker, other sound and video by the browser.
 *
 * @param file - stays readable, so that it can be read again with other choices
 * @param options - who reads, and what the user told
 * @returns what was read and what it says, or what stands in the way
 */
export async function readFile(file: File, options: ReadFileOptions): Promise<Opened> {
  const { client, read, analysis, report } = options;
  report({ share: 0, doing: `Opening ${file.name}` });
  const bytes = await bytesOf(file);
  if (fileKind(bytes) === 'media') return await openMedia(file, options);
  const opened = await client.open({ name: file.name, bytes }, { read, analysis }, report);
  const { outcome } = opened;
  const browserMayKnow = outcome.kind === 'stopped' && ['compressed', 'unsupported'].includes(outcome.code);
  return browserMayKnow ? await openMedia(file, options, opened) : opened;
}

/** Where the browser cannot decode it either, what the reader said first says more. */
async function openMedia(file: File, options: ReadFileOptions, before?: Opened): Promise<Opened> {
  options.report({ share: 0.05, doing: `Decoding ${file.name}` });
  const outcome = await decodeMedia({ name: file.name, bytes: await bytesOf(file) });
  if (outcome.kind === 'stopped') return before ?? { outcome };
  const { recording } = outcome;
  const sent = { key: crypto.getRandomValues(new Uint32Array(2)).join('-'), recording };
  return { outcome, analysis: await options.client.analyse(sent, options.analysis, options.report) };
}

async function bytesOf(file: File): Promise<Uint8Array> {
  return new Uint8Array(await file.arrayBuffer());
}
