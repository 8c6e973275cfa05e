import { checkFinite, checkNotNegative, checkPositive } from '../internal/checks.js';
import type { TrialRun } from './types.js';

interface Runs {
  readonly trials: readonly TrialRun[];
  readonly radius?: number | undefined;
  readonly amplitudeError?: number | undefined;
}

/** @throws RangeError for a trial run, radius or error out of its domain; `where` is the public function. */
export function checkRuns(where: string, { trials, radius, amplitudeError }: Runs): void {
  trials.forEach(({ mass, angle, amplitude }, i) => {
    checkPositive(`${where}: trials[${i}].mass`, mass);
    checkFinite(`${where}: trials[${i}].angle`, angle);
    checkNotNegative(`${where}: trials[${i}].amplitude`, amplitude);
  });
  if (radius !== undefined) checkPositive(`${where}: radius`, radius);
  if (amplitudeError !== undefined) checkNotNegative(`${where}: amplitudeError`, amplitudeError);
}
