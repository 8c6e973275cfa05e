import type { LineTrial, Behaviour } from './trials-types.js';

/** Two trials that differ in one thing alone. */
export interface TrialPair {
  readonly test: Behaviour['test'];
  /** Indices: as it was, and with the one thing changed. */
  readonly without: number;
  readonly with: number;
}

/** Trials at one speed, within what a hand on the throttle can hold. */
const SAME_SPEED = 0.06;

/** Every pair of trials at one speed that differ by the propeller, by a joint turned about half a turn, or by the water. */
export function trialPairs(trials: readonly LineTrial[]): TrialPair[] {
  return trials.flatMap((one, without) =>
    trials.flatMap((other, at) => {
      if (Math.abs(Math.log(other.speed / one.speed)) > SAME_SPEED) return [];
      const test = testBetween(one, other);
      return test === undefined ? [] : [{ test, without, with: at }];
    }),
  );
}

function testBetween(
  { conditions: a }: LineTrial,
  { conditions: b }: LineTrial,
): TrialPair['test'] | undefined {
  const turned = (b.jointTurned ?? 0) - (a.jointTurned ?? 0);
  const alike = a.propeller === b.propeller && a.medium === b.medium;
  if (Math.abs(turned) > 0.1) return alike && isHalfTurn(turned) ? 'joint-turned' : undefined;
  // Without a propeller the water makes no difference that a phone would feel.
  if (a.propeller === 'fitted' && b.propeller === 'off') return 'propeller-off';
  const fitted = a.propeller === 'fitted' && b.propeller === 'fitted';
  return fitted && a.medium === 'water' && b.medium === 'air' ? 'in-air' : undefined;
}

/** A half turn onwards, within a third of it either way. */
function isHalfTurn(angle: number): boolean {
  return angle > 0 && Math.abs((angle % (2 * Math.PI)) - Math.PI) < Math.PI / 3;
}
