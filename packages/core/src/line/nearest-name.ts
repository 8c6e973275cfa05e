/**
 * The known name that a mistyped one most likely meant, if one is near enough.
 *
 * @param name - as it was typed
 * @param known - the names that exist
 * @returns the nearest by edit distance, case and separators apart; undefined beyond one edit in three letters
 */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  const typed = letters(name);
  const ranked = known
    .map((candidate) => ({ candidate, distance: nearness(typed, letters(candidate)) }))
    .filter(({ candidate, distance }) => distance <= Math.max(1, Math.floor(letters(candidate).length / 3)))
    .sort((a, b) => a.distance - b.distance);
  return ranked[0]?.candidate;
}

function letters(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

/** Edits between two words; a word cut short counts one, since people shorten what they type. */
function nearness(typed: string, candidate: string): number {
  if (typed.length >= 3 && candidate.startsWith(typed)) return Math.min(1, candidate.length - typed.length);
  return editDistance(typed, candidate);
}

/** Insertions, deletions, substitutions and swaps of neighbours that turn one word into the other. */
function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1] ? 0 : 1;
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      const swap = swapped ? (beforeLast[j - 2] ?? Infinity) + 1 : Infinity;
      row.push(Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same, swap));
    }
    beforeLast = last;
    last = row;
  }
  return last[to.length] ?? 0;
}
