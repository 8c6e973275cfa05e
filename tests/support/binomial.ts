/**
 * How far a count of successes may lie from its expectation: `sigmas` standard deviations of the binomial distribution.
 * Four leaves one false alarm in 16 000 for a seeded test that is right.
 */
export function binomialBounds(trials: number, probability: number, sigmas = 4): [number, number] {
  const spread = sigmas * Math.sqrt(trials * probability * (1 - probability));
  return [trials * probability - spread, trials * probability + spread];
}
