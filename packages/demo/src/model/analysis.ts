import { describeReach, describeSampling, diagnose, sliceRecording } from '@sternline/core';
import type { Recording } from '@sternline/core';
import type { AnalysisChoices, SpeedSource, SpeedSuggestion, TrialAnalysis } from './analysis-types.js';
import { channelSpectra } from './channel-spectra.js';
import { channelLevels } from './channel-levels.js';
import { channelEnvelope } from './envelope.js';
import type { ReportProgress } from './progress.js';
import { severityOf } from './severity-of.js';
import { spectrumResolution } from './spectrum-resolution.js';
import { suggestSpeeds } from './suggest-speeds.js';

/** From here on the speed that a recording suggests is taken until the builder says otherwise. */
const CONVINCING = 0.5;
/** Less will do for a suggestion within this share of the wanted speed. */
const LIKELY = 0.2;
const NEAR = 0.1;

/**
 * Everything the page shows of one recording: its speed, findings, spectra, outline and reach.
 *
 * @param recording - the whole recording
 * @param choices - speed where it is known, wanted speed, line, part
 * @param report - told how far the work has come
 * @returns the analysis, of the part where one was chosen
 */
export function analyse(
  recording: Recording,
  choices: AnalysisChoices,
  report: ReportProgress = () => undefined,
): TrialAnalysis {
  const whole = { from: 0, to: recording.sampling.duration };
  const part = choices.part ?? whole;
  const envelopes = recording.channels.map((channel) => channelEnvelope(channel, recording));
  const seen = choices.part ? sliceRecording(recording, part) : recording;
  report({ share: 0.2, doing: 'Looking for the shaft speed' });
  const suggestions = suggestSpeeds(seen, choices);
  const { speed, speedFrom } = chooseSpeed(choices, suggestions);
  report({ share: 0.5, doing: 'Drawing up the spectra' });
  const resolution = spectrumResolution(
    { sampleRate: seen.sampleRate, samples: seen.channels[0]?.samples.length ?? 0 },
    speed / (2 * Math.PI),
  );
  const spectra = channelSpectra(seen, resolution);
  report({ share: 0.7, doing: 'Weighing the causes' });
  const line = choices.line ? { line: choices.line } : {};
  const diagnosis = diagnose({ recording: seen, speed, ...line });
  report({ share: 0.9, doing: 'Measuring levels' });
  return {
    ...{ speed, speedFrom, suggestions, diagnosis, spectra, resolution, envelopes, part },
    levels: channelLevels(seen),
    severity: severityOf(seen),
    quality: describeSampling(recording),
    reach: reachOf(seen, { speed, blades: choices.line?.propeller?.blades }),
  };
}

/** What the rate shows of the orders that a builder asks for first: shaft, joints, blades. */
function reachOf(
  { sampleRate, sampling }: Recording,
  { speed, blades }: { readonly speed: number; readonly blades: number | undefined },
): string[] {
  const orders = [...new Set([1, 2, ...(blades === undefined ? [] : [blades])])];
  return describeReach({ sampleRate, speed, orders, resolution: 2 / sampling.duration });
}

function chooseSpeed(
  choices: AnalysisChoices,
  suggestions: readonly SpeedSuggestion[],
): { speed: number; speedFrom: SpeedSource } {
  const { wantedSpeed } = choices;
  if (choices.speed !== undefined) return { speed: choices.speed, speedFrom: 'given' };
  const [best] = suggestions;
  // Half and double speed explain almost the same lines; of two likely ones the builder's aim decides.
  const near = suggestions.find(
    ({ speed, confidence }) => confidence >= LIKELY && Math.abs(speed / wantedSpeed - 1) <= NEAR,
  );
  if (near) return { speed: near.speed, speedFrom: 'recording' };
  if (best && best.confidence >= CONVINCING) return { speed: best.speed, speedFrom: 'recording' };
  return { speed: wantedSpeed, speedFrom: 'wanted' };
}
