import type { Diagnosis, Finding } from '@sternline/core';
import { causeWords, confidenceWords } from './finding-words.js';

/**
 * The answer to "what is this buzz?" in one sentence.
 *
 * @param diagnosis - of a recording at a speed
 * @returns the strongest finding; else that lines stand there without a cause; else that nothing does
 */
export function answerSentence({ findings, peaks }: Diagnosis): string {
  const [first] = findings;
  if (first) return findingSentence(first);
  if (peaks.length === 0) return 'Nothing in this recording stands above its noise.';
  const lines = peaks.length === 1 ? 'One line stands' : `${peaks.length} lines stand`;
  return `${lines} above the noise, but none points to a cause at this speed.`;
}

/**
 * A finding in one sentence.
 *
 * @param finding - cause and confidence
 * @returns the cause, with how sure it is in words and in per cent
 */
export function findingSentence({ cause, confidence }: Finding): string {
  return `${causeWords(cause)}: ${confidenceWords(confidence)} (${Math.round(confidence * 100)} %).`;
}
