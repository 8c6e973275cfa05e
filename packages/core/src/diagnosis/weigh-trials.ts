import { CAUSE_BEHAVIOUR } from './cause-behaviour.js';
import { changeChances, effectChances, effectLikelihood } from './effect-chances.js';
import type { Behaviour, OrderGrowth } from './trials-types.js';
import type { Cause } from './types.js';

/** What the trials together say of one cause. */
export interface CauseCase {
  readonly cause: Cause;
  /** Causes of one group explain the same line, so that one more likely makes the others less so. */
  readonly group: string;
  /** From the recordings one by one. */
  readonly confidence: number;
  readonly growth: OrderGrowth | undefined;
  readonly behaviours: readonly Behaviour[];
  /** Likelihood of what else was seen, against that of any cause; 1 where nothing was. */
  readonly other: number;
}

/**
 * What the groups' shares are worth as confidence: logit = a logit + b, fitted on simulated sets of trials of their own seeds
 * (see docs/diagnosis-trials.md), and the most that any set of trials is trusted with.
 */
const SCALE = 1.61;
const SHIFT = 2.23;
const MOST = 0.95;

/** No table is so sure that one outcome could settle everything. */
const LEAST_LIKELIHOOD = 0.02;

/**
 * Shares out each group's confidence among its causes by Bayes' rule.
 *
 * P(c) = G pc Lc / Σ pj Lj, G = 1 − Π (1 − pj), L the likelihoods of growth and behaviour, pj at odds as single recordings gave
 *
 * @see David MacKay, "Information Theory, Inference, and Learning Algorithms", Cambridge 2003, §28.1 (comparing models)
 */
export function weighTrials(cases: readonly CauseCase[]): Map<Cause, number> {
  const weighed = new Map<Cause, number>();
  for (const group of new Set(cases.map((one) => one.group))) {
    const own = cases.filter((one) => one.group === group);
    const any = 1 - own.reduce((rest, { confidence }) => rest * (1 - confidence), 1);
    const weights = own.map((one) => (one.confidence / (1 - one.confidence)) * likelihood(one) * one.other);
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    // A group whose every cause behaves unlike itself loses as a whole.
    const fit = Math.min(1, Math.max(...own.map((one) => likelihood(one) * one.other)));
    const odds = (any / (1 - any)) * Math.sqrt(fit);
    own.forEach(({ cause }, i) => {
      weighed.set(cause, total > 0 ? scaled(((odds / (1 + odds)) * (weights[i] ?? 0)) / total) : 0);
    });
  }
  return weighed;
}

function scaled(share: number): number {
  const odds = Math.log(share / (1 - share));
  return Math.min(MOST, 1 / (1 + Math.exp(-(SCALE * odds + SHIFT))));
}

/** Against the best that any cause could do, so that 1 is "just as expected". */
function likelihood({ cause, growth, behaviours }: CauseCase): number {
  return behaviours.reduce(
    (product, behaviour) => product * behaviourLikelihood(cause, behaviour),
    growth === undefined ? 1 : growthLikelihood(cause, growth),
  );
}

/** Normal about what is expected, over the same curve at its top with the least spread of all causes but mains. */
function growthLikelihood(cause: Cause, { slope, standardError }: OrderGrowth): number {
  const [expected, spread] = CAUSE_BEHAVIOUR[cause].growth;
  const width = Math.hypot(spread, standardError);
  const narrowest = Math.hypot(0.5, standardError);
  const value = (narrowest / width) * Math.exp(-0.5 * ((slope - expected) / width) ** 2);
  return Math.max(LEAST_LIKELIHOOD, Math.min(1, value));
}

function behaviourLikelihood(cause: Cause, { test, ratio, error }: Behaviour): number {
  const table = CAUSE_BEHAVIOUR[cause];
  if (test === 'joint-turned') {
    const [changes, same] = changeChances(ratio, error);
    return Math.max(LEAST_LIKELIHOOD, changes * table.jointTurned + same * (1 - table.jointTurned));
  }
  const chances = effectChances(ratio, error);
  const likelihoods = test === 'propeller-off' ? table.propellerOff : table.inAir;
  return Math.max(LEAST_LIKELIHOOD, effectLikelihood(chances, likelihoods));
}
