/**
 * How often the likeliest speed was right where the weighing gave it this chance: pairs of chance and share, from 1000 seeded
 * trials (seeds 2000 to 2999 of the reading trials; the published tables are made from other seeds).
 */
const WITHIN: readonly (readonly [number, number])[] = [
  [0.001, 0.1],
  [0.029, 0.29],
  [0.121, 0.46],
  [0.357, 0.67],
  [0.656, 0.8],
  [0.853, 0.95],
  [0.984, 0.99],
];

/** The same where the range reaches beyond half the sampling rate, so that every line may be the image of another. */
const BEYOND: readonly (readonly [number, number])[] = [
  [0.001, 0.1],
  [0.172, 0.37],
  [0.396, 0.66],
  [0.716, 0.74],
  [0.98, 0.85],
];

/**
 * Chance that the likeliest speed is right, from the chance that the weighing gives it, straight between the pairs in the logarithm of odds.
 *
 * @param reach - whether the speeds asked for could show folded
 */
export function calibrateConfidence(chance: number, reach: 'within' | 'beyond'): number {
  const table = reach === 'within' ? WITHIN : BEYOND;
  if (!(chance > 0)) return 0;
  const x = logOdds(chance);
  for (let i = 0; i + 1 < table.length; i++) {
    const [a = 0, lower = 0] = table[i] ?? [];
    const [b = 1, upper = 1] = table[i + 1] ?? [];
    if (chance > b) continue;
    const share = Math.max(0, (x - logOdds(a)) / (logOdds(b) - logOdds(a)));
    const y = logOdds(lower) + share * (logOdds(upper) - logOdds(lower));
    return 1 / (1 + Math.exp(-y));
  }
  return table.at(-1)?.[1] ?? chance;
}

function logOdds(chance: number): number {
  return Math.log(chance / (1 - chance));
}
