/**
 * How often the likeliest speed was right where the weighing gave it this chance: pairs of chance and share, from 2000 seeded
 * trials (seeds 2000 to 3999 of the reading trials; the published tables are made from other seeds).
 */
const WITHIN: readonly (readonly [number, number])[] = [
  [0.001, 0.1],
  [0.027, 0.22],
  [0.1, 0.34],
  [0.177, 0.62],
  [0.3, 0.66],
  [0.45, 0.7],
  [0.55, 0.81],
  [0.65, 0.88],
  [0.74, 0.94],
  [0.86, 0.95],
  [0.96, 0.99],
];

/** The same where the range reaches beyond half the sampling rate, so that every line may be the image of another. */
const BEYOND: readonly (readonly [number, number])[] = [
  [0.001, 0.1],
  [0.102, 0.33],
  [0.217, 0.38],
  [0.315, 0.4],
  [0.446, 0.66],
  [0.827, 0.83],
  [0.98, 0.9],
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
