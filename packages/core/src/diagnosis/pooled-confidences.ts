import type { Evidence } from './evidence.js';
import type { LineTrial } from './trials-types.js';
import type { Cause, Diagnosis } from './types.js';

/** What a recording that does not show a cause at all says of it. */
const NOT_SEEN = 0.02;

/** A resonance shows only near its speed, so that the trial which shows it best speaks for it. */
const LOCAL: readonly Cause[] = ['whirl', 'torsional-resonance'];

/**
 * Confidence in each cause from the trials one by one: mean of the log-odds over those under the first trial's conditions.
 *
 * The phone, its place and the line are the same in all, so that what misleads one recording misleads the others: they are no
 * independent witnesses, and their odds are not multiplied.
 */
export function pooledConfidences(
  read: readonly { readonly trial: LineTrial; readonly evidence: Evidence; readonly diagnosis: Diagnosis }[],
): Map<Cause, number> {
  const first = read[0]?.trial.conditions;
  const own = read.filter(
    ({ trial: { conditions } }) =>
      conditions.propeller === first?.propeller && conditions.medium === first.medium,
  );
  const causes = new Set(own.flatMap(({ diagnosis }) => diagnosis.findings.map(({ cause }) => cause)));
  return new Map(
    [...causes].map((cause) => {
      const odds = own.map(({ diagnosis: { findings } }) => {
        const found = findings.find((finding) => finding.cause === cause)?.confidence ?? NOT_SEEN;
        return Math.log(found / (1 - found));
      });
      const mean = LOCAL.includes(cause)
        ? Math.max(...odds)
        : odds.reduce((sum, one) => sum + one, 0) / odds.length;
      return [cause, 1 / (1 + Math.exp(-mean))];
    }),
  );
}
