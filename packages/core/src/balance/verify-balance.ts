import { checkNotNegative, checkPositive } from '../internal/checks.js';
import { numberText } from '../internal/number-text.js';
import type { Verification, VerificationInput } from './types.js';

/** Standard errors beyond which a difference is taken for one: 95 %. */
const SURE = 1.96;
/** Share of the first amplitude that no run repeats better than: what is left below it counts as gone, a change below it as none. Common practice. */
const REPEATABLE = 0.05;

/**
 * Whether the run with the correction on shows what was expected of it.
 *
 * ratio = after / before, σ_ratio = ratio √((σ/after)² + (σ/before)²)
 *
 * @param input - amplitudes of order 1 at one speed, `before` greater than 0; `expected` from the balance
 * @returns a verdict, the ratio with its error and in dB, and what to do next
 * @throws RangeError for a value out of its domain
 * @remarks 95 % of the readings of a correction that did nothing give 'no difference shown', and so does any change of up to 5 %:
 *   no run repeats better.
 * @example
 * const check = verifyBalance({ before: 8, after: 0.9, expected: 0.6, amplitudeError: 0.3 });
 * check.verdict // → 'as expected'
 * check.decibels // → -19.0
 */
export function verifyBalance(input: VerificationInput): Verification {
  const { before, after, expected, amplitudeError = 0 } = input;
  checkPositive('verifyBalance: before', before);
  checkNotNegative('verifyBalance: after', after);
  checkNotNegative('verifyBalance: expected', expected);
  checkNotNegative('verifyBalance: amplitudeError', amplitudeError);
  const verdict = judge({ before, after, expected, amplitudeError });
  const ratio = after / before;
  const percent = numberText(100 * ratio, 2);
  return {
    verdict,
    ratio,
    ratioError: (amplitudeError * Math.hypot(1, ratio)) / before,
    decibels: 20 * Math.log10(ratio),
    sentence: SENTENCES[verdict].replace('{percent}', percent),
  };
}

function judge({
  before,
  after,
  expected,
  amplitudeError,
}: Required<VerificationInput>): Verification['verdict'] {
  const reach = Math.max(SURE * amplitudeError * Math.SQRT2, REPEATABLE * before);
  if (after > before + reach) return 'worse';
  if (after >= before - reach) return 'no difference shown';
  // The expected amplitude is a root mean square of a random length: 95 % lie below √3 of it.
  const most = Math.hypot(Math.sqrt(3) * expected, SURE * amplitudeError);
  return after <= Math.max(most, REPEATABLE * before)
    ? 'as expected'
    : 'lower, but more is left than expected';
}

const SENTENCES: Readonly<Record<Verification['verdict'], string>> = {
  'as expected':
    'Order 1 is down to {percent} % of what it was, as the readings let expect. Fix the correction for good and run once more.',
  'lower, but more is left than expected':
    'Order 1 is down to {percent} % of what it was, but more is left than expected. Start again from here as a new first run with the correction on; what stays then is a bend, a hub off centre or the water, not the balance.',
  'no difference shown':
    'Order 1 stands at {percent} % of what it was: no difference shown. Check that the correction sits at the angle and radius meant; if it does, the readings scatter too much, or something other than unbalance shakes once a turn.',
  worse:
    'Order 1 rose to {percent} % of what it was. Take the correction off. Check the sense in which angles were counted, that the trial masses were off, and that the speed was the same.',
};
