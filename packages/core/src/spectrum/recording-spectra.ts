import type { Recording } from '../recording/types.js';
import { createFourierPlan } from './fourier-plan.js';
import { defaultSegmentLength, lineSpectrum } from './line-spectrum.js';
import type { LineSpectrum } from './line-spectrum.js';

/**
 * The spectrum of each channel, from which peaks and orders are both read; one plan serves all.
 *
 * @param options - `padding` 1 serves peaks; 4, with lines a quarter apart, serves orders that lie between lines as well
 */
export function recordingSpectra(
  { channels, sampleRate, sampling: { gaps } }: Recording,
  { padding, caller }: { readonly padding: 1 | 4; readonly caller: string },
): LineSpectrum[] {
  const total = channels[0]?.samples.length ?? 0;
  const segmentLength = defaultSegmentLength(total, { sampleRate, gaps });
  const plan = createFourierPlan(Math.min(padding, 2) * segmentLength);
  return channels.map(({ samples }) =>
    lineSpectrum(samples, sampleRate, { padding, segmentLength, plan, gaps, caller }),
  );
}
