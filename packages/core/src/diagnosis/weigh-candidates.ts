import type { Candidate } from './evidence.js';
import { CAUSE_WEIGHTS } from './cause-weights.js';
import type { Traits } from './traits.js';
import type { Finding } from './types.js';

/** The most that one recording is trusted with. */
const MOST = 0.95;
/**
 * Log-odds are stretched by this much: what the causes, each fitted by itself, leave of the pooled calibration on the seeds that
 * the weights were fitted on.
 */
const STRETCH = 1.2;
/** Below this a cause is not worth a look. */
const LEAST = 0.05;

/**
 * Turns what a recording shows into findings, most confident first.
 *
 * confidence = 1 / (1 + exp(−1.2 (b + Σ wᵢ tᵢ)))
 */
export function weighCandidates(candidates: readonly Candidate[], traits: Traits): Finding[] {
  return candidates
    .map((candidate) => findingOf(candidate, confidenceOf(candidate, traits)))
    .filter(({ confidence }) => confidence >= LEAST)
    .sort((a, b) => b.confidence - a.confidence);
}

function confidenceOf({ cause, judged, adjustment = 0 }: Candidate, traits: Traits): number {
  if (judged !== undefined) return judged;
  const { bias, weights } = CAUSE_WEIGHTS[cause];
  const odds = Object.entries(weights).reduce(
    (sum, [trait, weight]) => sum + weight * traits[trait as keyof Traits],
    bias + adjustment,
  );
  return Math.min(MOST, 1 / (1 + Math.exp(-STRETCH * odds)));
}

function findingOf(candidate: Candidate, confidence: number): Finding {
  const { cause, evidence, check, outcomes, rivals, caution } = candidate;
  const meanings = outcomes.map(({ result, means }) => `If ${result}, ${means}.`).join(' ');
  return { cause, confidence, evidence, nextCheck: `${check} ${meanings}`, outcomes, rivals, caution };
}
