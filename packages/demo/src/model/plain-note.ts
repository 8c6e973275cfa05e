/**
 * A note of the library for someone at the page: without the clauses that name an option of a function call.
 *
 * @param note - one or more sentences
 * @returns what is left of them; the page's own fields stand in for the options
 */
export function plainNote(note: string): string {
  const kept = note.split(/(?<=[.;]) /).filter((clause) => !/\boptions?\.\w/.test(clause));
  return kept.join(' ').replace(/;$/, '.');
}
